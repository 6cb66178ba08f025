package org.benchwright.language;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

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
        try (InputStream page = RemarkPages.class.getResourceAsStream("/" + code.page())) {
            if (page == null) {
                throw new IllegalStateException("no page " + code.page());
            }
            return new String(page.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException("the page comes with the program", unreadable);
        }
    }
}
