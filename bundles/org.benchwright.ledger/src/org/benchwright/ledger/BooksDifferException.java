package org.benchwright.ledger;

/** The books of a bench and of the ledger that it shares are not the beginning one of the other. */
public class BooksDifferException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public BooksDifferException(String words) {
        super(words);
    }
}
