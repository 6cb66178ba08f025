package org.benchwright.ledger;

/** The ledger was written by a newer release with another format. */
public class LedgerVersionException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public LedgerVersionException(String words) {
        super(words);
    }
}
