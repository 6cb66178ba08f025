package org.benchwright.ledger.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The words of this bundle that people read. The ledger knows no locale: others may show words of their own for a {@code FaultKind}. */
public final class Messages {

    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("org.benchwright.ledger.internal.messages", Locale.ROOT,
            Messages.class.getClassLoader());

    private Messages() {
    }

    /** The text under {@code key}, its places filled with {@code values} exactly as they print. */
    public static String text(String key, Object... values) {
        Object[] printed = new Object[values.length];
        for (int i = 0; i < values.length; i++) {
            printed[i] = String.valueOf(values[i]);
        }
        return new MessageFormat(BUNDLE.getString(key), Locale.ROOT).format(printed);
    }

    /** What {@code failure} says, or its kind when it says nothing. */
    public static String plain(Exception failure) {
        return failure.getMessage() == null ? failure.getClass().getSimpleName() : failure.getMessage();
    }
}
