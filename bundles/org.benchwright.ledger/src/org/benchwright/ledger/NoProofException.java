package org.benchwright.ledger;

/** What was asked for can't be proved from this ledger; the message says why. */
public class NoProofException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public NoProofException(String words) {
        super(words);
    }
}
