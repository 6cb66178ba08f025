package org.benchwright.ledger;

/** A text is not a proof or checkpoint file of a form that this release knows. */
public class ProofFormatException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public ProofFormatException(String words) {
        super(words);
    }

    public ProofFormatException(String words, Throwable cause) {
        super(words, cause);
    }
}
