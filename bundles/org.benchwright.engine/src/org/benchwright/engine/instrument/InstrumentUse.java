package org.benchwright.engine.instrument;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What an instrument does in a range. */
public enum InstrumentUse {
    /** It reads a quantity. */
    READS,
    /** It gives one. */
    GIVES;

    /** The word that is shown and that procedures use. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The one with that word. */
    public static Optional<InstrumentUse> find(String word) {
        return Arrays.stream(values()).filter(use -> use.word().equals(word)).findFirst();
    }
}
