package org.benchwright.present.internal;

import org.benchwright.engine.RefusedException;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.TakenElsewhereException;
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

    /** Does it. */
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

    /** Does it. */
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

    /** Something that the workshop looks up. */
    @FunctionalInterface
    public interface Reading<T> {
        /** Does it. */
        T done() throws StoreException;
    }

    /** Looks it up. */
    public static <T> T read(Reading<T> reading) throws CannotStoreException {
        try {
            return reading.done();
        } catch (StoreException e) {
            throw cannotStore(e);
        }
    }
}
