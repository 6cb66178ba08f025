package org.benchwright.present;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

import org.benchwright.core.Cancellation;
import org.benchwright.engine.RefusedException;
import org.benchwright.present.internal.Asked;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.Sharing;
import org.benchwright.workshop.StoreException;

/** A bench's part in a ledger that benches share, for both faces. */
public final class SharedBench {

    private final Sharing sharing;

    private SharedBench(Sharing sharing) {
        this.sharing = sharing;
    }

    /**
     * What is set up beside a ledger; empty where it is shared with nobody.
     *
     * @param environment may hold the password
     */
    public static Optional<SharedBench> of(Path ledger, Map<String, String> environment, Bench.Clocks clocks) throws CannotStoreException {
        BenchTime time = clocks.time();
        return Asked.read(() -> Sharing.of(ledger, environment, time).map(SharedBench::new));
    }

    /**
     * How things stand.
     *
     * @param waiting events that wait to be forwarded
     * @param since   instant of the first of them
     * @param reached when everything was forwarded last
     * @param trouble what was in the way at the last try, in words
     * @param stops   tests that are not forwarded any further, in words
     */
    public record State(long waiting, Optional<Instant> since, Optional<Instant> reached, Optional<String> trouble, List<String> stops) {

        public State {
            stops = List.copyOf(stops);
        }

        private static State of(Sharing.State state) {
            return new State(state.waiting(), state.since(), state.reached(), state.trouble(), state.stops());
        }
    }

    /** Where the shared ledger is. */
    public String place() {
        return sharing.url();
    }

    /** How things stand, as the bench itself knows; asks nobody. */
    public State state() throws CannotStoreException {
        return Asked.read(() -> State.of(sharing.state()));
    }

    /**
     * Forwards everything, once.
     *
     * @return how many events
     * @throws EntryRefusedException if the bench's books are not those of the shared ledger
     */
    public long forward() throws EntryRefusedException, CannotStoreException {
        return asked(sharing::forward);
    }

    /**
     * Forwards on and on, and waits where it can't.
     *
     * @param told         hears how things stand, in the thread that forwards
     * @param cancellation ends it
     * @throws InterruptedException if the waiting thread is interrupted
     * @throws CannotStoreException if how things stand can't be read
     */
    public void keepOn(Consumer<State> told, Cancellation cancellation) throws InterruptedException, CannotStoreException {
        try {
            sharing.keepOn(state -> told.accept(State.of(state)), cancellation);
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }

    /**
     * Puts this bench's books into the shared ledger.
     *
     * @return how many entries
     * @throws EntryRefusedException if the books there are not their beginning
     */
    public long lendBooks() throws EntryRefusedException, CannotStoreException {
        return asked(sharing::lendBooks);
    }

    /** Makes the shared ledger in its empty database. The password is blanked out. */
    public void install(String owner, char[] password) throws CannotStoreException {
        owned(password, () -> sharing.install(owner, password));
    }

    /** Brings the shared ledger up to this release's format. The password is blanked out. */
    public void migrate(String owner, char[] password) throws CannotStoreException {
        owned(password, () -> sharing.migrate(owner, password));
    }

    /**
     * Takes the bytes of withdrawn attachments out of the shared ledger, which is verified first. The password is blanked out.
     *
     * @return of how many
     * @throws EntryRefusedException if it is not sound
     */
    public long erase(String owner, char[] password) throws EntryRefusedException, CannotStoreException {
        try {
            return asked(() -> sharing.erase(owner, password));
        } finally {
            Arrays.fill(password, ' ');
        }
    }

    /** Copies the shared ledger into a file that must not be there. */
    public void copyTo(Path file) throws CannotStoreException {
        owned(new char[0], () -> sharing.copyTo(file));
    }

    private interface Asking {
        long done() throws RefusedException, StoreException;
    }

    private static long asked(Asking asking) throws EntryRefusedException, CannotStoreException {
        try {
            return asking.done();
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }

    private interface Owning {
        void done() throws StoreException;
    }

    private static void owned(char[] password, Owning work) throws CannotStoreException {
        try {
            work.done();
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        } finally {
            Arrays.fill(password, ' ');
        }
    }
}
