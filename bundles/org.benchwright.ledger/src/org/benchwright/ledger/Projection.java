package org.benchwright.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.ProjectionFile;
import org.benchwright.ledger.internal.ProjectionReader;
import org.benchwright.ledger.internal.ProjectionRows;
import org.benchwright.ledger.internal.ProjectionWriter;
import org.benchwright.ledger.internal.SqliteErrors;

/**
 * Tests as figures count them, in tables of their own: a cache beside the ledger that may be deleted at any time and is no evidence.
 * Verification works it out again and compares. It remembers up to which event of which ledger it goes; whoever fills it compares that
 * first and empties it when the ledger tells otherwise.
 */
public final class Projection implements AutoCloseable {

    private final Connection connection;
    private final Path file;

    private Projection(Connection connection, Path file) {
        this.connection = connection;
        this.file = file;
    }

    /**
     * Up to where a projection goes.
     *
     * @param position the position of the last event in it
     * @param link     that event's link: another ledger has another one there
     * @param rules    the version of the rules by which events became rows
     */
    public record Mark(long position, String link, int rules) {
    }

    /** The cache that belongs to a ledger. */
    public static Path besides(Path ledger) {
        Path file = BenchFolder.file(ledger);
        return file.resolveSibling(file.getFileName() + ".figures");
    }

    /** Opens the cache; makes it, and makes it anew when it isn't one of this release. Where the place can't be written to, it is in memory. */
    public static Projection open(Path file) throws LedgerException {
        try {
            return new Projection(ProjectionFile.open(file), file);
        } catch (SQLException failure) {
            throw SqliteErrors.translate(failure, file);
        }
    }

    /**
     * The cache for looking at it only; nothing if there is none, or it isn't one of this release.
     *
     * @throws LedgerDamagedException if it says to be one of this release and has other tables
     */
    public static Optional<Projection> openReadOnly(Path file) throws LedgerException {
        try {
            return ProjectionFile.openReadOnly(file).map(connection -> new Projection(connection, file));
        } catch (SQLException failure) {
            throw SqliteErrors.translate(failure, file);
        }
    }

    /** An empty projection in memory. */
    public static Projection inMemory() throws LedgerException {
        Path nowhere = Path.of("figures");
        try {
            return new Projection(ProjectionFile.inMemory(), nowhere);
        } catch (SQLException failure) {
            throw SqliteErrors.translate(failure, nowhere);
        }
    }

    /** Whether its indexes say what its tables say; figures are counted along indexes, without a look at the tables. */
    public boolean consistent() throws LedgerException {
        return reading(ProjectionFile::consistent);
    }

    /** Up to where it goes; empty when nothing is in it. */
    public Optional<Mark> mark() throws LedgerException {
        return reading(ProjectionReader::mark);
    }

    /** Empties it. */
    public void clear() throws LedgerException {
        reading(ProjectionWriter::clear);
    }

    /**
     * Puts tests in, in the place of what was there of them; all or nothing.
     *
     * @param mark up to where it goes now; empty while more has to follow: a projection without one is begun again
     */
    public void put(List<ProjectedTest> tests, Optional<Mark> mark) throws LedgerException {
        reading(open -> ProjectionWriter.put(open, tests, mark));
    }

    /** Ids of all tests that are in it. */
    public Set<String> ids() throws LedgerException {
        return reading(ProjectionRows::tests);
    }

    /** A test as it was put in. */
    public Optional<ProjectedTest> test(String id) throws LedgerException {
        return reading(open -> ProjectionRows.test(open, id));
    }

    /**
     * Departures or nonconformities of all tests: those that wait for an auditor, oldest first, and behind them the others, latest first.
     *
     * @param nonconformities false for departures
     * @param waitingOnly     only what waits for an auditor
     */
    public List<ProjectionCounts.Deviated> deviations(boolean nonconformities, boolean waitingOnly) throws LedgerException {
        return reading(open -> ProjectionRows.deviations(open, nonconformities, waitingOnly));
    }

    /** Tests that were drawn for a review which is due, the longest waiting first. */
    public List<ProjectionCounts.ReviewDue> reviewsDue() throws LedgerException {
        return reading(ProjectionRows::reviewsDue);
    }

    /** How many tests stand how, by person and station. */
    public List<ProjectionCounts.Tests> tests(ProjectionFilter filter) throws LedgerException {
        return reading(open -> new ProjectionReader(open, filter).tests());
    }

    /** What was found, rehearsals and faulty records left out. */
    public List<ProjectionCounts.Found> causes(ProjectionFilter filter) throws LedgerException {
        return reading(open -> new ProjectionReader(open, filter).causes());
    }

    /** How soaks ended, rehearsals and faulty records left out; shortest first. */
    public List<ProjectionCounts.Soaks> soaks(ProjectionFilter filter) throws LedgerException {
        return reading(open -> new ProjectionReader(open, filter).soaks());
    }

    /**
     * How long units were out there, and how that ended.
     *
     * @param today the day up to which those count that are still out there, in days since 1970
     * @param most  days beyond which no difference is made
     */
    public List<ProjectionCounts.Field> field(ProjectionFilter filter, long today, int most) throws LedgerException {
        return reading(open -> new ProjectionReader(open, filter).field(today, most));
    }

    /** The time from the first test to the last one, rehearsals and faulty records left out; nothing without two. */
    public Optional<Duration> span(ProjectionFilter filter) throws LedgerException {
        return reading(open -> new ProjectionReader(open, filter).span());
    }

    /** What was measured, rehearsals and faulty records left out. */
    public List<ProjectionCounts.Measured> measured(ProjectionFilter filter) throws LedgerException {
        return reading(open -> new ProjectionReader(open, filter).measured());
    }

    /** The latest readings of one measurement, oldest first. */
    public List<ProjectionCounts.Read> readings(ProjectionFilter filter, ProjectionCounts.Measured measurement, int atMost)
            throws LedgerException {
        return reading(open -> new ProjectionReader(open, filter).readings(measurement, atMost));
    }

    /** Reads every row of the table of tests and adds the lengths of its cells up: what a plain scan costs. */
    public long scan() throws LedgerException {
        return reading(ProjectionReader::scan);
    }

    private interface Work<T> {
        T on(Connection open) throws SQLException;
    }

    private <T> T reading(Work<T> work) throws LedgerException {
        try {
            return work.on(connection);
        } catch (SQLException failure) {
            LedgerException translated = SqliteErrors.translate(failure, file);
            // Nobody has to go back to a copy of what can be made anew.
            throw translated instanceof LedgerDamagedException ? new LedgerDamagedException(Messages.text("cacheOdd", file), failure) : translated;
        }
    }

    @Override
    public void close() throws LedgerException {
        reading(open -> {
            open.close();
            return Boolean.TRUE;
        });
    }
}
