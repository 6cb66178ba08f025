package org.benchwright.present;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;

import org.benchwright.engine.RefusedException;
import org.benchwright.present.internal.Asked;
import org.benchwright.workshop.BenchEndpoints;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.StoreException;
import org.benchwright.workshop.WatchListener;
import org.benchwright.workshop.WatchRound;

/** A watch over all units on soak of one bench, for whoever lets it run: it finds them in the ledger, and writes into it what it sees. */
public final class Watching implements AutoCloseable {

    private static final Duration LONGEST_RUN = Duration.ofMinutes(10);

    private final BenchLedger ledger;
    private final WatchRound round;

    private Watching(BenchLedger ledger, WatchRound round) {
        this.ledger = ledger;
        this.round = round;
    }

    /** Hears what the watch tells; called by its threads. */
    public interface Listener {
        /**
         * Something was written down, or could not be.
         *
         * @param kind   {@code sees}, {@code silent}, {@code stopped}, {@code faltered}, {@code condition}, {@code done} or {@code trouble}
         * @param urgent true if somebody should come
         * @param test   the test's id
         * @param serial the unit's serial number
         * @param words  what, in plain words
         */
        void told(String kind, boolean urgent, String test, String serial, String words);
    }

    /**
     * Begins a watch. Where units are reached stands in the file {@code watch.units} of the bench folder.
     *
     * @param file     the ledger's file; a watch makes none
     * @param more     endpoints by serial numbers, besides those in the file
     * @param listener hears what it tells
     * @throws EntryRefusedException if it is not understood where units are reached
     * @throws CannotStoreException  if there is no ledger, or it can't be opened
     */
    public static Watching begin(Path file, Bench.Clocks clocks, Map<String, String> more, Listener listener)
            throws EntryRefusedException, CannotStoreException {
        return Asked.read(() -> {
            BenchLedger ledger = BenchLedger.openExisting(file);
            try {
                BenchEndpoints endpoints = BenchEndpoints.read(ledger.endpointsFile());
                for (Map.Entry<String, String> one : more.entrySet()) {
                    endpoints = endpoints.with(one.getKey(), one.getValue());
                }
                WatchRound round = ledger.watch(endpoints, clocks.clock(), clocks.ticker(), LONGEST_RUN,
                        (kind, test, serial, words) -> listener.told(word(kind), urgent(kind), test, serial, words));
                return new Watching(ledger, round);
            } catch (RefusedException e) {
                ledger.close();
                throw new EntryRefusedException(e.getMessage(), e);
            }
        });
    }

    /** The same in every language: a command of the workshop's own is told it. */
    private static String word(WatchListener.Kind kind) {
        return switch (kind) {
            case SEES -> "sees";
            case SILENT -> "silent";
            case STOPPED -> "stopped";
            case FALTERED -> "faltered";
            case CONDITION -> "condition";
            case DONE -> "done";
            case TROUBLE -> "trouble";
        };
    }

    private static boolean urgent(WatchListener.Kind kind) {
        return switch (kind) {
            case SILENT, STOPPED, DONE, TROUBLE -> true;
            case SEES, FALTERED, CONDITION -> false;
        };
    }

    /**
     * Looks which units are on soak now.
     *
     * @return the serial numbers of those that are watched
     * @throws CannotStoreException if the ledger can't be read; what is watched goes on
     */
    public List<String> look() throws CannotStoreException {
        return Asked.read(() -> {
            round.look();
            return round.serials();
        });
    }

    /** Ends the watch: what was seen so far is written down, and that it sees no more. */
    @Override
    public void close() throws CannotStoreException {
        round.close();
        try {
            ledger.close();
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }
}
