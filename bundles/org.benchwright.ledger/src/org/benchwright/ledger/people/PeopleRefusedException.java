package org.benchwright.ledger.people;

import org.benchwright.ledger.LedgerException;

/** An entry in the book of people that its signer may not make, or that does not fit what is there. Nothing was entered. */
public final class PeopleRefusedException extends LedgerException {

    private static final long serialVersionUID = 1L;

    /** @param words what was refused, and what to do */
    public PeopleRefusedException(String words) {
        super(words);
    }
}
