package org.benchwright.ledger;

/** Bytes were to be taken away that no signed event withdrew. */
public final class WithdrawalMissingException extends LedgerException {

    private static final long serialVersionUID = 1L;

    /** @param message for people */
    public WithdrawalMissingException(String message) {
        super(message);
    }
}
