package org.benchwright.workshop.internal;

import java.util.List;

import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.SignedBook;
import org.benchwright.ledger.TestId;

/** How a book is read to rely on it. */
@FunctionalInterface
public interface BooksRead {

    /** From its first event to its last. */
    BooksRead WHOLE = SignedBook::read;

    /**
     * All events of a book, in order.
     *
     * @throws org.benchwright.ledger.LedgerDamagedException when a link or a signature is false
     */
    List<LedgerEntry> of(Ledger ledger, TestId book) throws LedgerException;
}
