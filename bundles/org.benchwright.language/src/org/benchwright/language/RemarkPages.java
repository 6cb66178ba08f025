package org.benchwright.language;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** The pages that explain the remarks; they come with the language, so that any editor can open them. */
public final class RemarkPages {

    private RemarkPages() {
    }

    /**
     * The page of a code.
     *
     * @param code a code
     * @return its text in Markdown
     */
    public static String text(RemarkCode code) {
        return at(code.page()).orElseThrow(() -> new IllegalStateException("no page " + code.page()));
    }

    /**
     * A page among those of the remarks, their contents included.
     *
     * @param path where it lies, such as {@code docs/remarks/README.md}
     * @return its text in Markdown; empty if there is no such page
     */
    public static Optional<String> at(String path) {
        if (!path.startsWith("docs/remarks/")) {
            return Optional.empty();
        }
        try (InputStream page = RemarkPages.class.getResourceAsStream("/" + path)) {
            return page == null ? Optional.empty() : Optional.of(new String(page.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException unreadable) {
            throw new UncheckedIOException("the page comes with the program", unreadable);
        }
    }
}
