package org.benchwright.cli.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The texts of this bundle that people read; looked up when they are shown. */
enum Message {
    ;

    private static final String BUNDLE = "org.benchwright.cli.internal.messages";

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     */
    String text(String... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), Message.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
