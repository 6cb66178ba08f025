package org.benchwright.ledger;

/** Another program held the ledger for longer than we were told to wait. */
public class LedgerBusyException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public LedgerBusyException(String words) {
        super(words);
    }

    public LedgerBusyException(String words, Throwable cause) {
        super(words, cause);
    }
}
