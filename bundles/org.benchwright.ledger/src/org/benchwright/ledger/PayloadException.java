package org.benchwright.ledger;

/** The payload is not a JSON object that the ledger can keep. */
public class PayloadException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public PayloadException(String words) {
        super(words);
    }

    public PayloadException(String words, Throwable cause) {
        super(words, cause);
    }
}
