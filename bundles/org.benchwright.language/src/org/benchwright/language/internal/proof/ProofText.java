package org.benchwright.language.internal.proof;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The words of what a procedure proves. */
public final class ProofText {

    private static final ResourceBundle.Control PLAIN = ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    private ProofText() {
    }

    /** The text of a key with its arguments put in. */
    public static String of(String key, Object... arguments) {
        String pattern = ResourceBundle.getBundle("org.benchwright.language.internal.proof.words", Locale.getDefault(),
                ProofText.class.getClassLoader(), PLAIN).getString(key);
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
