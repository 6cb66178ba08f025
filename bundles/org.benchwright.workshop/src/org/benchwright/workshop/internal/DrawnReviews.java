package org.benchwright.workshop.internal;

import java.util.List;
import java.util.Optional;

import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.KnownBooks;
import org.benchwright.engine.revision.ReviewPlan;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.StoreException;

/**
 * Which sealed tests were drawn for a review: by the plan that their bench knew when it opened them, and the link of their own seal. Remembers the
 * books of one ledger; may be used from several threads.
 */
public final class DrawnReviews {

    private static final String PLANNED = "reviews-planned";

    private final boolean unchanging;
    private Optional<RevisionHistory> books = Optional.empty();
    private Optional<List<LedgerEntry>> plans = Optional.empty();

    /** Asks the ledger for every test whether its books have grown. */
    DrawnReviews() {
        this(false);
    }

    /** @param unchanging whether the books count as they are found first, as for whoever verifies */
    DrawnReviews(boolean unchanging) {
        this.unchanging = unchanging;
    }

    /** Whether a test with these entries was drawn; one that is not sealed never is. */
    synchronized boolean drawn(Ledger ledger, TestId test, TestRun run, List<LedgerEntry> entries) throws StoreException {
        Optional<KnownBooks> known = run.opening().books().filter(stood -> stood.people() > 0 && stood.revisions() > 0);
        if (run.rehearsal() || known.isEmpty() || !planned(ledger, known.get())) {
            return false;
        }
        Optional<ReviewPlan> plan = books(ledger).at(known.get()).reviews();
        return plan.isPresent() && entries.stream().filter(entry -> entry.kind().equals(EventKinds.SEALED)).findFirst()
                .filter(seal -> plan.get().draws(test.value(), seal.link().digest())).isPresent();
    }

    /** Most benches plan none, and then the books need not be read for it. */
    private boolean planned(Ledger ledger, KnownBooks known) throws StoreException {
        return LedgerWork.of(() -> {
            if (plans.isEmpty() || !unchanging) {
                plans = Optional.of(ledger.entries(TestId.REVISIONS, PLANNED));
            }
            return plans.get().stream().anyMatch(entry -> entry.sequence() <= known.revisions());
        });
    }

    /** The books, read again when they have grown. */
    private RevisionHistory books(Ledger ledger) throws StoreException {
        return LedgerWork.of(() -> {
            if (books.isEmpty() || !unchanging && (books.get().size() != ledger.lastSequence(TestId.REVISIONS)
                    || books.get().register().size() != ledger.lastSequence(TestId.PEOPLE))) {
                books = Optional.of(RevisionHistory.asFound(ledger));
            }
            return books.get();
        });
    }
}
