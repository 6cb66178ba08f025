package org.benchwright.ledger;

/** There is no room left for the ledger to grow. */
public class LedgerFullException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public LedgerFullException(String words, Throwable cause) {
        super(words, cause);
    }
}
