package org.benchwright.ledger;

/** A stored event or document can't be read; verification tells more. */
public class LedgerDamagedException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public LedgerDamagedException(String words) {
        super(words);
    }

    public LedgerDamagedException(String words, Throwable cause) {
        super(words, cause);
    }
}
