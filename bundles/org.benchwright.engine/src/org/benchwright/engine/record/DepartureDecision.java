package org.benchwright.engine.record;

import java.util.Arrays;
import java.util.Optional;

/** What an auditor can decide about a departure. */
public enum DepartureDecision {
    /** It does no harm to what the test says. */
    ACCEPTED("accepted"),
    /** The test is to be carried out again. */
    REPEAT("repeat"),
    /** The test is void. */
    VOID("void");

    private final String word;

    DepartureDecision(String word) {
        this.word = word;
    }

    /** The word that is shown and typed. */
    public String word() {
        return word;
    }

    /** The one with that word. */
    public static Optional<DepartureDecision> find(String word) {
        return Arrays.stream(values()).filter(each -> each.word.equals(word)).findFirst();
    }
}
