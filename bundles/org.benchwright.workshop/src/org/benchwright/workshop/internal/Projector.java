package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.Projection;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.StoreException;

/** Brings a projection up to date with its ledger: tests with events after its mark are derived again, all of them if the mark doesn't fit. */
public final class Projector {

    /** Raised whenever {@link Projected} reads something else out of a test. */
    static final int RULES = 8;
    private static final int BATCH = 500;

    private final Ledger ledger;
    private final Projection projection;
    private final KeptTests kept = new KeptTests();

    /** What is new since the mark. */
    private static final class News {
        private final Set<TestId> tests = new LinkedHashSet<>();
        private Optional<LedgerEntry> last = Optional.empty();

        void add(LedgerEntry entry) {
            if (entry.test().isTest()) {
                tests.add(entry.test());
            }
            last = Optional.of(entry);
        }
    }

    /**
     * @param ledger     where events come from
     * @param projection where rows go
     */
    public Projector(Ledger ledger, Projection projection) {
        this.ledger = ledger;
        this.projection = projection;
    }

    /**
     * Does it.
     *
     * @throws StoreException if a plan can't be read, or it was cancelled
     */
    public void update(Progress progress, Cancellation cancellation) throws LedgerException, StoreException {
        Optional<Projection.Mark> mark = projection.mark();
        if (mark.isPresent() && !(mark.get().rules() == RULES && fits(ledger, mark.get()))) {
            mark = Optional.empty();
        }
        if (mark.isEmpty()) {
            projection.clear();
        }
        News news = new News();
        ledger.scan(mark.map(Projection.Mark::position).orElse(0L) + 1, news::add, cancellation);
        List<ProjectedTest> batch = new ArrayList<>();
        progress.begin(Message.FIGURES_DERIVED.text(), news.tests.size());
        for (TestId test : news.tests) {
            if (cancellation.requested()) {
                throw new StoreException(Message.FIGURES_CANCELLED.text(), new InterruptedException());
            }
            batch.add(projected(test));
            progress.advance(1);
            if (batch.size() == BATCH) {
                projection.put(batch, Optional.empty());
                batch.clear();
            }
        }
        progress.end();
        if (news.last.isPresent()) {
            LedgerEntry last = news.last.get();
            projection.put(batch, Optional.of(new Projection.Mark(last.position(), last.link().hex(), RULES)));
        }
    }

    /** Whether the event at the mark is the one that was there. */
    static boolean fits(Ledger ledger, Projection.Mark mark) throws LedgerException {
        List<LedgerEntry> at = new ArrayList<>();
        ledger.scan(mark.position(), at::add, () -> !at.isEmpty());
        return !at.isEmpty() && at.get(0).position() == mark.position() && at.get(0).link().hex().equals(mark.link());
    }

    private ProjectedTest projected(TestId test) throws StoreException {
        try {
            return Projected.of(kept.read(ledger, test));
        } catch (FaultyRecordException faulty) {
            // Verification says what is wrong with it; here it is only told that it was left out.
            return Projected.faulty(test);
        }
    }
}
