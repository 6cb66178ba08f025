package org.benchwright.ledger;

/** A document was to be kept whose bytes had been withdrawn from this ledger: they don't come back. */
public final class WithdrawnDocumentException extends LedgerException {

    private static final long serialVersionUID = 1L;

    /** @param message for people */
    public WithdrawnDocumentException(String message) {
        super(message);
    }
}
