package org.benchwright.ledger.people;

import org.benchwright.ledger.LedgerException;

/** A key that is not given out, or a password that is not taken. */
public final class KeyRefusedException extends LedgerException {

    private static final long serialVersionUID = 1L;

    /** @param words what was refused, and what to do */
    public KeyRefusedException(String words) {
        super(words);
    }

    /** As above, with what showed it. */
    public KeyRefusedException(String words, Throwable cause) {
        super(words, cause);
    }
}
