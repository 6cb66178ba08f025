package org.benchwright.workshop.internal;

import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.Projection;
import org.benchwright.ledger.TestId;

/** Compares the cache beside a ledger with what its tests come to, as far as the cache says that it goes. */
final class ProjectionCheck {

    private final Projection projection;
    private final Projection.Mark mark;
    private final Set<String> unknown;

    private ProjectionCheck(Projection projection, Projection.Mark mark) throws LedgerException {
        this.projection = projection;
        this.mark = mark;
        this.unknown = new TreeSet<>(projection.ids());
    }

    /** A check of that cache; none where it belongs to other events or rules, and would be made anew when it is used. */
    static Optional<ProjectionCheck> of(Projection projection, Ledger ledger) throws LedgerException {
        Optional<Projection.Mark> mark = projection.mark().filter(found -> found.rules() == Projector.RULES);
        return mark.isPresent() && Projector.fits(ledger, mark.get()) ? Optional.of(new ProjectionCheck(projection, mark.get())) : Optional.empty();
    }

    /**
     * Whether it says something else of a test.
     *
     * @param position place of the test's last event
     * @param right    what the test comes to
     */
    boolean differs(TestId test, long position, ProjectedTest right) throws LedgerException {
        boolean there = unknown.remove(test.value());
        if (position > mark.position()) {
            return false;
        }
        boolean same = there && projection.test(test.value()).equals(Optional.of(right));
        return !same && unmoved();
    }

    /** Tests in it that the ledger does not have; asked when all of the ledger's were compared. */
    Set<String> unknown() throws LedgerException {
        return unmoved() ? unknown : Set.of();
    }

    /** Somebody who works meanwhile brings the cache up to date: then it goes further than what is compared with it. */
    private boolean unmoved() throws LedgerException {
        return projection.mark().equals(Optional.of(mark));
    }
}
