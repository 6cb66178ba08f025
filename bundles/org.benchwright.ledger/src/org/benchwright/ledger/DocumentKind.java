package org.benchwright.ledger;

import java.util.Arrays;
import java.util.Optional;

/** What a kept document is. */
public enum DocumentKind {

    /** Text of a procedure, as approved. */
    PROCEDURE_TEXT("procedure-text"),
    /** The plan compiled from a procedure. */
    PLAN("plan"),
    /** Photo, file or long text that somebody attached. */
    ATTACHMENT("attachment");

    private final String word;

    DocumentKind(String word) {
        this.word = word;
    }

    /** Name in the store, never to change. */
    public String word() {
        return word;
    }

    /** The kind with that name in the store. */
    public static Optional<DocumentKind> find(String word) {
        return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }
}
