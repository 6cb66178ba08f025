package org.benchwright.ledger.internal;

import org.benchwright.core.Texts;

/** The words of this bundle that people read. The ledger knows no locale: others may show words of their own for a {@code FaultKind}. */
public final class Messages {

    private static final Texts TEXTS = Texts.fixed(Messages.class, "messages");

    private Messages() {
    }

    /** The text under {@code key}, its places filled with {@code values} exactly as they print. */
    public static String text(String key, Object... values) {
        return TEXTS.plain(key, values);
    }

    /** What {@code failure} says, or its kind when it says nothing. */
    public static String plain(Exception failure) {
        return failure.getMessage() == null ? failure.getClass().getSimpleName() : failure.getMessage();
    }
}
