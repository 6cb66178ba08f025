package org.benchwright.ledger;

/** The shared ledger is not to be reached: network, server or its address. What was acknowledged is kept; the same may be tried again. */
public class LedgerUnreachableException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public LedgerUnreachableException(String words) {
        super(words);
    }

    public LedgerUnreachableException(String words, Throwable cause) {
        super(words, cause);
    }
}
