package org.benchwright.engine.internal;

/** The words about returns from the field. */
public final class ReturnWords {

    private ReturnWords() {
    }

    /** The words under {@code key} with what they are about put in. */
    public static String of(String key, Object... arguments) {
        return Words.of(key, arguments);
    }
}
