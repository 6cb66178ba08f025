package org.benchwright.language.internal.inspect;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** How a remark tells of a place in another file. */
enum ElsewhereText {
    IN_FILE;

    private static final String BUNDLE = "org.benchwright.language.internal.inspect.words";

    String text(String... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), ElsewhereText.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
