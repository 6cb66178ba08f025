package org.benchwright.ledger;

import java.util.Arrays;
import java.util.Optional;

/** What a signature says its signer did (in the spirit of 21 CFR 11.50). */
public enum Meaning {

    PREPARED("prepared"),
    APPROVED("approved"),
    CARRIED_OUT("carried out"),
    RELEASED("released"),
    DECIDED("decided"),
    REVIEWED("reviewed"),
    HANDED_OVER("handed over"),
    RECEIVED_BACK("received back"),
    AMENDED("amended"),
    SUPERSEDED("superseded"),
    RECALLED("recalled"),
    VOIDED("voided"),
    /** Somebody entered something about people or their keys. */
    REGISTERED("registered"),
    WITHDRAWN("withdrawn"),
    /** A unit came in, or it was said anew how. */
    RECEIVED("received"),
    /** Something in a unit was replaced or mended. */
    REPAIRED("repaired");

    private final String word;

    Meaning(String word) {
        this.word = word;
    }

    /** The word that is signed, printed and shown. */
    public String word() {
        return word;
    }

    /** The meaning with that word. */
    public static Optional<Meaning> find(String word) {
        return Arrays.stream(values()).filter(meaning -> meaning.word.equals(word)).findFirst();
    }
}
