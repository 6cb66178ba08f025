package org.benchwright.present.internal;

import java.nio.file.Path;

import org.benchwright.engine.RefusedException;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.StoreException;

/** What the workshop is asked to do, and its refusals in the words of this room. */
public final class Asked {

    private Asked() {
    }

    /** Something that the workshop does. */
    @FunctionalInterface
    public interface Work<T> {
        /** Does it. */
        T done() throws RefusedException, OvertakenException, StoreException, FaultyRecordException, EntryRefusedException;
    }

    /** Something that the workshop does, and nothing comes back of it. */
    @FunctionalInterface
    public interface Deed {
        /** Does it. */
        void done() throws RefusedException, OvertakenException, StoreException, FaultyRecordException, EntryRefusedException;
    }

    /**
     * Does it.
     *
     * @throws EntryRefusedException   if the workshop refuses it
     * @throws TakenElsewhereException if somebody else was faster
     * @throws CannotStoreException    if the ledger can't be read or written, or a record is not sound
     */
    public static <T> T of(Work<T> work) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            return work.done();
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        } catch (OvertakenException e) {
            throw new TakenElsewhereException(e.getMessage(), e);
        } catch (StoreException | FaultyRecordException e) {
            throw cannotStore(e);
        }
    }

    /** As {@link #of}, for what nothing comes back of. */
    public static void to(Deed deed) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        of(() -> {
            deed.done();
            return true;
        });
    }

    /** What can't be read or written, or is a record that is not sound, for those who look at a screen. */
    public static CannotStoreException cannotStore(Exception e) {
        String words = e instanceof FaultyRecordException ? Message.RECORD_NOT_SOUND.text(e.getMessage()) : e.getMessage();
        return new CannotStoreException(words, e);
    }

    /**
     * Something that the workshop looks up.
     *
     * @param <T> what comes out
     * @param <X> how else it can end
     */
    @FunctionalInterface
    public interface Reading<T, X extends Exception> {
        /** Does it. */
        T done() throws StoreException, FaultyRecordException, X;
    }

    /** Looks it up. */
    public static <T, X extends Exception> T read(Reading<T, X> reading) throws CannotStoreException, X {
        try {
            return reading.done();
        } catch (StoreException | FaultyRecordException e) {
            throw cannotStore(e);
        }
    }

    /**
     * Something that is looked up in a ledger.
     *
     * @param <T> what comes out
     * @param <X> how else it can end
     */
    @FunctionalInterface
    public interface LedgerReading<T, X extends Exception> {
        /** Does it. */
        T in(BenchLedger open) throws StoreException, FaultyRecordException, X;
    }

    /**
     * Looks it up.
     *
     * @param ledger the ledger's file; there is one
     */
    public static <T, X extends Exception> T read(Path ledger, LedgerReading<T, X> reading) throws CannotStoreException, X {
        try (BenchLedger open = BenchLedger.openReadOnly(ledger)) {
            return reading.in(open);
        } catch (StoreException | FaultyRecordException e) {
            throw cannotStore(e);
        }
    }
}
