package org.benchwright.workshop.internal;

import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.StoreException;

/**
 * Something that is done with a ledger; that it fails is told in this room's own exception, with the same words.
 *
 * @param <T> what comes out
 * @param <X> how else it can end
 */
@FunctionalInterface
public interface LedgerWork<T, X extends Exception> {

    /** Does it. */
    T done() throws LedgerException, StoreException, X;

    /**
     * Something of which nothing comes out.
     *
     * @param <X> how else it can end
     */
    @FunctionalInterface
    interface Deed<X extends Exception> {

        /** Does it. */
        void done() throws LedgerException, StoreException, X;
    }

    /** What the work comes to. */
    static <T, X extends Exception> T of(LedgerWork<T, X> work) throws StoreException, X {
        try {
            return work.done();
        } catch (LedgerException e) {
            throw failed(e);
        }
    }

    /** Does the work. */
    static <X extends Exception> void to(Deed<X> deed) throws StoreException, X {
        try {
            deed.done();
        } catch (LedgerException e) {
            throw failed(e);
        }
    }

    /**
     * What work comes to in which somebody else may be faster.
     *
     * @param overtaken what to say then
     */
    static <T, X extends Exception> T unlessOvertaken(Message overtaken, LedgerWork<T, X> work) throws OvertakenException, StoreException, X {
        try {
            return work.done();
        } catch (SequenceConflictException conflict) {
            throw new OvertakenException(overtaken.text(), conflict);
        } catch (LedgerException e) {
            throw failed(e);
        }
    }

    /** A failure of the ledger in the words of this room. */
    static StoreException failed(LedgerException failure) {
        return new StoreException(failure.getMessage(), failure);
    }
}
