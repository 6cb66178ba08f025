package org.benchwright.present;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** The files that come with the program to be read: pages, decisions, and the pictures that pages show. */
public final class ManualFile {

    private ManualFile() {
    }

    /**
     * What a page says.
     *
     * @param path where it lies in the source, such as {@code docs/watch.md}
     * @return its text in Markdown; empty if it does not come with the program
     */
    public static Optional<String> text(String path) {
        return bytes(path, ".md").map(page -> new String(page, StandardCharsets.UTF_8));
    }

    /**
     * A picture.
     *
     * @param path where it lies in the source, such as {@code docs/screens/look.png}
     * @return the bytes of its PNG file; empty if it does not come with the program
     */
    public static Optional<byte[]> picture(String path) {
        return bytes(path, ".png");
    }

    private static Optional<byte[]> bytes(String path, String kind) {
        if (!path.endsWith(kind)) {
            return Optional.empty();
        }
        try (InputStream file = ManualFile.class.getResourceAsStream("/" + path)) {
            return file == null ? Optional.empty() : Optional.of(file.readAllBytes());
        } catch (IOException unreadable) {
            throw new UncheckedIOException("the manual comes with the program", unreadable);
        }
    }
}
