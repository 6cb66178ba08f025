package org.benchwright.workshop.internal;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.engine.event.Fact;
import org.benchwright.ledger.DocumentReference;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.StoreException;

/** What a person has read of hazards before, in whichever test by the same plan. */
public final class KnownHazards {

    private static final String ACKNOWLEDGED = "hazard-acknowledged";
    /** As many tests by one plan as somebody can have in hand at once, and more. */
    private static final int MOST_TESTS = 60;
    /** A unit stays on the bench for days. */
    private static final Duration MOST_AGE = Duration.ofDays(14);

    private final Ledger ledger;
    private final EventCodec codec = new EventCodec();

    /** @param ledger where tests are kept */
    public KnownHazards(Ledger ledger) {
        this.ledger = ledger;
    }

    /**
     * Where a person has read a hazard in the shift before that instant, the latest in the latest test.
     *
     * @param plan the plan that both tests have in common
     */
    public Optional<Fact.HazardKnown> find(Digest plan, String hazard, Actor person, Instant now, Duration shift)
            throws StoreException {
        int looked = 0;
        List<LedgerEntry> page = byPlan(plan, Long.MAX_VALUE);
        while (!page.isEmpty()) {
            for (LedgerEntry opening : page) {
                if (looked == MOST_TESTS || opening.instant().isBefore(now.minus(MOST_AGE))) {
                    return Optional.empty();
                }
                if (samePlan(opening, plan)) {
                    looked++;
                    Optional<Fact.HazardKnown> here = lastIn(opening.test(), hazard, person, now.minus(shift), now);
                    if (here.isPresent()) {
                        return here;
                    }
                }
            }
            page = byPlan(plan, page.get(page.size() - 1).position());
        }
        return Optional.empty();
    }

    /** The next tests that name the plan, the latest first; rehearsals and others that only mention it may be among them. */
    private List<LedgerEntry> byPlan(Digest plan, long before) throws StoreException {
        return LedgerWork.of(() -> ledger.openingsNaming(DocumentReference.of(plan), before, MOST_TESTS));
    }

    private Optional<Fact.HazardKnown> lastIn(TestId test, String hazard, Actor person, Instant since, Instant now) throws StoreException {
        return readings(test).stream().filter(entry -> !entry.instant().isBefore(since) && !entry.instant().isAfter(now) && isReading(entry, hazard, person))
                .reduce((earlier, later) -> later).map(entry -> new Fact.HazardKnown(hazard, test.value(), entry.sequence(), entry.instant()));
    }

    private boolean isReading(LedgerEntry entry, String hazard, Actor person) {
        return entry.kind().equals(ACKNOWLEDGED) && entry.actor().equals(person)
                && codec.readable(entry).filter(new Fact.HazardAcknowledged(hazard)::equals).isPresent();
    }

    /** What a record says of an earlier reading is so: for verification. */
    boolean holds(Fact.HazardKnown known, Actor person, Digest plan, long before) throws StoreException {
        Optional<TestId> test = TestId.parse(known.test()).filter(TestId::isTest);
        List<LedgerEntry> entries = test.isEmpty() ? List.of() : entries(test.get());
        return entries.stream().anyMatch(entry -> entry.sequence() == known.event() && entry.position() < before
                && entry.instant().equals(known.instant()) && isReading(entry, known.hazard(), person)) && samePlan(entries.get(0), plan);
    }

    private boolean samePlan(LedgerEntry first, Digest plan) {
        return codec.opened(first).filter(opened -> opened.plan().equals(plan) && !opened.rehearsal()).isPresent();
    }

    private List<LedgerEntry> readings(TestId test) throws StoreException {
        return LedgerWork.of(() -> ledger.entries(test, ACKNOWLEDGED));
    }

    private List<LedgerEntry> entries(TestId test) throws StoreException {
        return LedgerWork.of(() -> ledger.entries(test));
    }
}
