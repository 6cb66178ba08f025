package org.benchwright.ledger;

/** The test is sealed and the event is not one that may follow a seal, or is not signed. */
public class SealedTestException extends LedgerException {

    private static final long serialVersionUID = 1L;

    public SealedTestException(String words) {
        super(words);
    }
}
