package org.benchwright.ledger;

/** The ledger, or the place it lies in, can't be written to. */
public class LedgerReadOnlyException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public LedgerReadOnlyException(String words) {
        super(words);
    }

    public LedgerReadOnlyException(String words, Throwable cause) {
        super(words, cause);
    }
}
