package org.benchwright.workshop.internal;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Digest;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.StoreException;

/**
 * Where a bench was proved with a known-good unit: an accepted test at the same station, no rehearsal, by a procedure that proves the bench,
 * and neither recalled nor void by then.
 */
public final class ProvedBenches {

    private static final String CONCLUDED = "concluded";
    private static final Set<String> TAKEN_BACK = Set.of("recalled", "voided");
    private static final int PAGE = 60;
    /** A known-good unit is not on the bench for longer than that. */
    private static final Duration LONGEST_TEST = Duration.ofDays(7);

    private final Ledger ledger;
    private final EventCodec codec = new EventCodec();
    private final PlanCodec plans = new PlanCodec();
    private final Map<Digest, Optional<Duration>> validities = new HashMap<>();

    /** @param ledger where tests are kept */
    public ProvedBenches(Ledger ledger) {
        this.ledger = ledger;
    }

    /**
     * What proves the bench now: the latest test at the station that was to prove it and is over, if it was accepted and has not aged. One
     * that was not accepted tells that something is wrong, whatever an earlier one said.
     *
     * @param within how long ago it may be at most
     */
    public Optional<Fact.BenchProved> find(String station, Instant now, Duration within) throws StoreException {
        return last(station, now.minus(within), Long.MAX_VALUE).flatMap(End::proved)
                .filter(found -> !found.instant().isAfter(now) && !found.until().isBefore(now) && !found.instant().plus(within).isBefore(now));
    }

    /** What a record says of a proof is so: for verification. */
    boolean holds(Fact.BenchProved told, String station, long before) throws StoreException {
        return last(station, told.instant(), before).flatMap(End::proved).filter(told::equals).isPresent();
    }

    /**
     * How a test ended that was to prove the bench.
     *
     * @param position where in the ledger
     * @param proved   what it says, if it was accepted
     */
    private record End(long position, Optional<Fact.BenchProved> proved) {
    }

    /** The last one before a place of the ledger; tests that were opened long before {@code since} are not looked at. */
    private Optional<End> last(String station, Instant since, long before) throws StoreException {
        Instant earliest = since.minus(LONGEST_TEST);
        Optional<End> last = Optional.empty();
        List<LedgerEntry> page = openings(station, before);
        while (!page.isEmpty()) {
            for (LedgerEntry opening : page) {
                if (opening.instant().isBefore(earliest)) {
                    return last;
                }
                Optional<End> end = end(opening, station, before);
                if (end.isPresent() && (last.isEmpty() || end.get().position() > last.get().position())) {
                    last = end;
                }
            }
            page = openings(station, page.get(page.size() - 1).position());
        }
        return last;
    }

    private Optional<End> end(LedgerEntry opening, String station, long before) throws StoreException {
        Optional<Fact.Opened> opened = codec.opened(opening).filter(first -> !first.rehearsal() && first.station().equals(station));
        Optional<Duration> validity = opened.isEmpty() ? Optional.empty() : validity(opened.get().plan());
        if (validity.isEmpty()) {
            return Optional.empty();
        }
        List<LedgerEntry> entries = entries(opening.test()).stream().filter(entry -> entry.position() < before).toList();
        boolean takenBack = entries.stream().anyMatch(entry -> TAKEN_BACK.contains(entry.kind()));
        return entries.stream().filter(entry -> entry.kind().equals(CONCLUDED)).findFirst().map(entry -> new End(entry.position(),
                takenBack || !accepted(entry) ? Optional.empty() : Optional.of(new Fact.BenchProved(opening.test().value(), entry.sequence(),
                        entry.instant(), entry.instant().plus(validity.get())))));
    }

    private boolean accepted(LedgerEntry entry) {
        return codec.readable(entry).filter(body -> body instanceof Derived.Concluded end && end.verdict() == Verdict.ACCEPTED).isPresent();
    }

    /** How long a test by that plan proves the bench; empty if it doesn't, or the plan can't be read. */
    private Optional<Duration> validity(Digest plan) throws StoreException {
        if (!validities.containsKey(plan)) {
            validities.put(plan, readValidity(plan));
        }
        return validities.get(plan);
    }

    private Optional<Duration> readValidity(Digest plan) throws StoreException {
        try {
            Optional<byte[]> kept = ledger.document(plan);
            return kept.isEmpty() ? Optional.empty() : plans.plan(kept.get()).provesBenchFor();
        } catch (UndecodableException unreadable) {
            return Optional.empty();
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        }
    }

    private List<LedgerEntry> openings(String station, long before) throws StoreException {
        return LedgerWork.of(() -> ledger.openingsNaming(station, before, PAGE));
    }

    private List<LedgerEntry> entries(TestId test) throws StoreException {
        return LedgerWork.of(() -> ledger.entries(test));
    }
}
