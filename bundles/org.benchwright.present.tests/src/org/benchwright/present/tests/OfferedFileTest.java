package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.CRC32;

import javax.imageio.ImageIO;

import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.internal.OfferedFile;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.tests.SamplePhoto;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is taken as a photo or a paper, and what is told of what isn't. */
class OfferedFileTest {

    private static final String BROKEN = "plate.jpg is no photo that can be looked at whole.";

    @TempDir
    private Path folder;

    private OfferedFile offered(String name, byte[] content) throws IOException {
        return new OfferedFile(Files.write(folder.resolve(name), content));
    }

    private static String refusal(Executable taking) {
        return assertThrows(EntryRefusedException.class, taking).getMessage();
    }

    /** A picture in which each pixel is another one, as in a photo. */
    private static byte[] picture(String format) throws IOException {
        BufferedImage picture = new BufferedImage(240, 160, BufferedImage.TYPE_INT_RGB);
        Random random = new Random(5);
        for (int i = 0; i < 240 * 160; i++) {
            picture.setRGB(i % 240, i / 240, random.nextInt(1 << 24));
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(picture, format, out);
        return out.toByteArray();
    }

    private static byte[] box(String name, byte[] content) {
        return ByteBuffer.allocate(8 + content.length).putInt(8 + content.length).put(name.getBytes(StandardCharsets.ISO_8859_1)).put(content).array();
    }

    private static byte[] heif() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(box("ftyp", "heic\0\0\0\0mif1heic".getBytes(StandardCharsets.ISO_8859_1)));
        out.writeBytes(box("meta", new byte[40]));
        out.writeBytes(box("mdat", new byte[500]));
        return out.toByteArray();
    }

    private static byte[] webp() {
        byte[] frames = new byte[200];
        return ByteBuffer.allocate(12 + frames.length).order(ByteOrder.LITTLE_ENDIAN).put("RIFF".getBytes(StandardCharsets.ISO_8859_1))
                .putInt(4 + frames.length).put("WEBP".getBytes(StandardCharsets.ISO_8859_1)).put(frames).array();
    }

    private static byte[] of(String format) throws IOException {
        return switch (format) {
            case "heic" -> heif();
            case "webp" -> webp();
            default -> picture(format);
        };
    }

    @ParameterizedTest
    @ValueSource(strings = {"jpg", "png", "gif", "bmp", "tif", "heic", "webp"})
    void aWholePictureIsAPhotoWhateverItsName(String format) throws IOException {
        byte[] whole = of(format);
        assertDoesNotThrow(offered("plate.jpg", whole)::requirePhoto);
        assertDoesNotThrow(offered("plate", whole)::requirePhoto);
        assertDoesNotThrow(offered("plate." + format, whole)::requirePhotoOrPaper);
    }

    /** As one that a camera was still writing, or of which a card gave back a part. */
    @ParameterizedTest
    @CsvSource({"jpg, 0.5", "jpg, 0.95", "png, 0.5", "png, 0.9", "gif, 0.5", "tif, 0.5", "heic, 0.5", "heic, 0.99", "webp, 0.5"})
    void aPartOfOneIsNone(String format, double part) throws IOException {
        byte[] whole = of(format);
        OfferedFile cut = offered("plate.jpg", Arrays.copyOf(whole, (int) (whole.length * part)));
        assertEquals(BROKEN, refusal(cut::requirePhoto).substring(0, BROKEN.length()));
        assertEquals(BROKEN, refusal(cut::requirePhotoOrPaper).substring(0, BROKEN.length()));
    }

    @Test
    void whatIsNoPictureIsTakenAsAPaperOnly() throws IOException {
        for (byte[] content : new byte[][] {{1}, {(byte) 0xff, (byte) 0xd8}, "%PDF-1.7\n".getBytes(StandardCharsets.ISO_8859_1), new byte[4096], box("ftyp", new byte[30])}) {
            assertEquals(BROKEN, refusal(offered("plate.jpg", content)::requirePhoto).substring(0, BROKEN.length()));
            assertEquals(BROKEN, refusal(offered("plate.jpg", content)::requirePhotoOrPaper).substring(0, BROKEN.length()));
            refusal(offered("delivery-note.pdf", content)::requirePhoto);
            assertDoesNotThrow(offered("delivery-note.pdf", content)::requirePhotoOrPaper);
        }
        assertEquals("note.txt is empty. Copy it again.", refusal(offered("note.txt", new byte[0])::requirePhotoOrPaper));
    }

    /** Whoever keeps it says that it is too large; nobody waits until it is decoded, nor is it read into the memory. */
    @Test
    void whatIsTooLargeIsNotLookedAt() throws IOException {
        OfferedFile film = offered("plate.heic", new byte[0]);
        try (RandomAccessFile sparse = new RandomAccessFile(film.file().toFile(), "rw")) {
            sparse.setLength(Workshop.LARGEST_ATTACHMENT + 1);
        }
        assertDoesNotThrow(film::requirePhoto);
        assertDoesNotThrow(film::requirePhotoOrPaper);
    }

    /** Its head tells more pixels than fit into any memory. */
    @Test
    void aPictureThatClaimsToBeVastIsRefused() throws IOException {
        byte[] vast = SamplePhoto.of("vast");
        ByteBuffer.wrap(vast).putInt(16, 2_000_000_000).putInt(20, 2_000_000_000);
        CRC32 sum = new CRC32();
        sum.update(vast, 12, 17);
        ByteBuffer.wrap(vast).putInt(29, (int) sum.getValue());
        assertEquals(BROKEN, refusal(offered("plate.jpg", vast)::requirePhoto).substring(0, BROKEN.length()));
    }
}
