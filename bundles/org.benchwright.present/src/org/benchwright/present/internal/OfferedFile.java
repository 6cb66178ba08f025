package org.benchwright.present.internal;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.concurrent.atomic.AtomicBoolean;

import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;

import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.Photos;
import org.benchwright.workshop.Workshop;

/**
 * A file that somebody offers as a photo or a paper. What was not copied whole, or is no picture, is told while it can still be taken again:
 * in a record it would stay for ever.
 *
 * @param file which
 */
public record OfferedFile(Path file) {

    /** A picture is looked at in so many pixels each way: enough to have all of it decoded, and next to no memory. */
    private static final int LOOKED_AT = 64;
    /** More pixels than any camera has; whoever says so in a file means to fill the memory. */
    private static final long MOST_PIXELS = 1_000_000_000L;
    /** How the platform's reader of JPEG begins to warn of a file that ends too early; it draws the rest grey. */
    private static final String CUT = "Truncated File";

    /**
     * Takes a photo only.
     *
     * @throws EntryRefusedException if it is none, or can't be read whole
     */
    public void requirePhoto() throws EntryRefusedException {
        requireContent();
        if (Files.isRegularFile(file) && !isTooLarge() && !isPicture()) {
            throw new EntryRefusedException(HouseWords.NO_PHOTO.text(file.getFileName()));
        }
    }

    /**
     * Takes any paper, and a photo by its name only if it is one.
     *
     * @throws EntryRefusedException if it is empty, or named as a photo and none, or can't be read whole
     */
    public void requirePhotoOrPaper() throws EntryRefusedException {
        if (Photos.named(file)) {
            requirePhoto();
        } else {
            requireContent();
        }
    }

    /** Whether it is there, and not too large, is found out by whoever keeps it. */
    private void requireContent() throws EntryRefusedException {
        try {
            if (Files.isRegularFile(file) && Files.size(file) == 0) {
                throw new EntryRefusedException(HouseWords.EMPTY_FILE.text(file.getFileName()));
            }
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    /** Nobody waits for a film to be decoded, which is refused afterwards for its size. */
    private boolean isTooLarge() throws EntryRefusedException {
        try {
            return Files.size(file) > Workshop.LARGEST_ATTACHMENT;
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    private EntryRefusedException unreadable(IOException e) {
        return new EntryRefusedException(HouseWords.FILE_UNREADABLE.text(file.getFileName(), String.valueOf(e.getMessage())), e);
    }

    private boolean isPicture() throws EntryRefusedException {
        try (ImageInputStream stream = ImageIO.createImageInputStream(file.toFile())) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(stream);
            return readers.hasNext() ? decodes(readers.next(), stream) : new PictureBoxes(Files.readAllBytes(file)).whole();
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    private static boolean decodes(ImageReader reader, ImageInputStream stream) {
        AtomicBoolean cut = new AtomicBoolean();
        try {
            reader.setInput(stream, true, true);
            reader.addIIOReadWarningListener((source, warning) -> cut.compareAndSet(false, warning.startsWith(CUT)));
            int width = reader.getWidth(0);
            int height = reader.getHeight(0);
            if ((long) width * height > MOST_PIXELS) {
                return false;
            }
            ImageReadParam sparse = reader.getDefaultReadParam();
            int step = Math.max(1, Math.max(width, height) / LOOKED_AT);
            sparse.setSourceSubsampling(step, step, 0, 0);
            BufferedImage picture = reader.read(0, sparse);
            return picture.getWidth() > 0 && !cut.get();
        } catch (IOException | RuntimeException e) {
            // The platform's readers answer broken bytes with exceptions of any kind: each means that nobody can look at the picture.
            return false;
        } finally {
            reader.dispose();
        }
    }
}
