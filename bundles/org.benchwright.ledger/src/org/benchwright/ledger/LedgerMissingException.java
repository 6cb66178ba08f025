package org.benchwright.ledger;

/** There is no ledger at the place named. */
public class LedgerMissingException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public LedgerMissingException(String words) {
        super(words);
    }
}
