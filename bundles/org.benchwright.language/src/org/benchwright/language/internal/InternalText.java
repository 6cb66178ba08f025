package org.benchwright.language.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** Words that remarks are put together from. */
public enum InternalText {
    NO_SUCH_FILE, FOR_FAMILY, NO_FAMILY_LIKE, SEVERAL_FAMILIES;

    private static final String BUNDLE = "org.benchwright.language.internal.messages";

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     * @return the text in the language of the machine, or in English where there is none
     */
    public String text(String... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), InternalText.class.getClassLoader())
                .getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
