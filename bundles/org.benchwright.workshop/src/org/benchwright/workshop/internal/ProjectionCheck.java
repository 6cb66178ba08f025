package org.benchwright.workshop.internal;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.Projection;
import org.benchwright.ledger.TestId;

/** Compares the cache beside a ledger with what its tests come to, as far as the cache says that it goes. */
public final class ProjectionCheck implements AutoCloseable {

    private final Optional<Projection> projection;
    private final Optional<Projection.Mark> mark;
    private final Set<String> unknown;
    private final boolean readable;

    private ProjectionCheck(Optional<Projection> projection, Optional<Projection.Mark> mark, Set<String> unknown, boolean readable) {
        this.projection = projection;
        this.mark = mark;
        this.unknown = unknown;
        this.readable = readable;
    }

    /** Where there is no cache. */
    public static ProjectionCheck none() {
        return new ProjectionCheck(Optional.empty(), Optional.empty(), Set.of(), true);
    }

    /**
     * A check of the cache beside {@code ledger}. It compares nothing where there is none, and where it belongs to other events or rules and would be
     * made anew when it is used.
     */
    public static ProjectionCheck beside(Path ledger, Ledger events) {
        Optional<Projection> cache = Optional.empty();
        try {
            cache = Projection.openReadOnly(Projection.besides(ledger.toAbsolutePath()));
            if (cache.isEmpty()) {
                return none();
            }
            Optional<Projection.Mark> mark = cache.get().mark().filter(found -> found.rules() == Projector.RULES && fits(events, found));
            boolean consistent = mark.isEmpty() || cache.get().consistent();
            return new ProjectionCheck(cache, mark, mark.isPresent() ? new TreeSet<>(cache.get().ids()) : Set.of(), consistent);
        } catch (LedgerException unreadable) {
            return new ProjectionCheck(cache, Optional.empty(), Set.of(), false);
        }
    }

    /** An event that can't be read is a fault of the ledger, and told as one. */
    private static boolean fits(Ledger events, Projection.Mark mark) {
        try {
            return Projector.fits(events, mark);
        } catch (LedgerException faulty) {
            return false;
        }
    }

    /** Whether it could be read at all, and has the tables that this program makes, with indexes that say what they say. */
    public boolean readable() {
        return readable;
    }

    /**
     * Whether it says something else of a test.
     *
     * @param position place of the test's last event
     * @param right    what the test comes to
     */
    boolean differs(TestId test, long position, ProjectedTest right) throws LedgerException {
        if (mark.isEmpty()) {
            return false;
        }
        boolean there = unknown.remove(test.value());
        if (position > mark.get().position()) {
            return false;
        }
        boolean same = there && projection.orElseThrow().test(test.value()).equals(Optional.of(right));
        return !same && unmoved();
    }

    /** Tests in it that the ledger does not have; asked when all of the ledger's were compared. */
    Set<String> unknown() throws LedgerException {
        return mark.isPresent() && unmoved() ? unknown : Set.of();
    }

    /** Somebody who works meanwhile brings the cache up to date: then it goes further than what is compared with it. */
    private boolean unmoved() throws LedgerException {
        return projection.orElseThrow().mark().equals(mark);
    }

    @Override
    public void close() throws LedgerException {
        if (projection.isPresent()) {
            projection.get().close();
        }
    }
}
