package org.benchwright.ledger;

/** Something is where a copy was to be put; it was left as it is. */
public class LedgerPlaceTakenException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public LedgerPlaceTakenException(String words) {
        super(words);
    }

    public LedgerPlaceTakenException(String words, Throwable cause) {
        super(words, cause);
    }
}
