package org.benchwright.ledger;

/** The ledger could not do what was asked; its message says in plain words what happened and what to do. Nothing was written. */
public class LedgerException extends Exception {

    private static final long serialVersionUID = 1L;

    public LedgerException(String words) {
        super(words);
    }

    public LedgerException(String words, Throwable cause) {
        super(words, cause);
    }
}
