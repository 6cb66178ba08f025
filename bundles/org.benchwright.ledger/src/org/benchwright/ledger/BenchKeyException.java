package org.benchwright.ledger;

/** The bench key can't be had; the message says why and what to do. A key is never replaced without somebody's doing. */
public class BenchKeyException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public BenchKeyException(String words) {
        super(words);
    }

    public BenchKeyException(String words, Throwable cause) {
        super(words, cause);
    }
}
