package org.benchwright.ledger;

/** The file is not a ledger, or so damaged that it can't be told from another file. */
public class LedgerFormatException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public LedgerFormatException(String words) {
        super(words);
    }

    public LedgerFormatException(String words, Throwable cause) {
        super(words, cause);
    }
}
