package org.benchwright.language.internal.difference;

import java.util.Locale;

import org.benchwright.core.Texts;

/** The words of differences. */
final class DifferenceText {

    private static final Texts TEXTS = Texts.beside(DifferenceText.class, "words");

    private DifferenceText() {
    }

    static String of(String key, Object... arguments) {
        return TEXTS.text(key, arguments);
    }

    /** What a part of a plan is called; the part's own name in words where nothing better is known. */
    static String part(String component) {
        // Most parts are called by a plain English word already.
        return TEXTS.find("part." + component).orElseGet(() -> component.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT));
    }
}
