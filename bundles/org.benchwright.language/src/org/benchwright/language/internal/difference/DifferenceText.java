package org.benchwright.language.internal.difference;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;

/** The words of differences. */
final class DifferenceText {

    private static final ResourceBundle.Control PLAIN = ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    private DifferenceText() {
    }

    static String of(String key, Object... arguments) {
        return new MessageFormat(words().getString(key), Locale.ROOT).format(arguments);
    }

    /** What a part of a plan is called; the part's own name in words where nothing better is known. */
    static String part(String component) {
        try {
            return words().getString("part." + component);
        } catch (MissingResourceException plain) {
            // Most parts are called by a plain English word already.
            return component.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
        }
    }

    private static ResourceBundle words() {
        return ResourceBundle.getBundle("org.benchwright.language.internal.difference.words", Locale.getDefault(),
                DifferenceText.class.getClassLoader(), PLAIN);
    }
}
