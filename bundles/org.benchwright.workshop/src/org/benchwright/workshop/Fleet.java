package org.benchwright.workshop;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.core.Verdict;
import org.benchwright.engine.FieldReturn;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.Projection;
import org.benchwright.ledger.ProjectionCounts;
import org.benchwright.ledger.ProjectionFilter;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.workshop.internal.Projector;
import org.benchwright.workshop.internal.LedgerWork;

/**
 * All tests of a ledger as figures count them. They come out of a projection that is brought up to date when it is opened: a cache, derived
 * from the events and thrown away whenever it does not fit them. What is to be trusted is in the ledger.
 */
public final class Fleet implements AutoCloseable {

    private final Projection projection;

    private Fleet(Projection projection) {
        this.projection = projection;
    }

    /** How a test stands. */
    public enum State {
        ACCEPTED, REJECTED, UNDECIDED, OPEN, REHEARSAL, FAULTY, VOID;

        /** The verdict; empty while there is none. */
        public Optional<Verdict> verdict() {
            return ordinal() <= UNDECIDED.ordinal() ? Optional.of(Verdict.valueOf(name())) : Optional.empty();
        }
    }

    /**
     * Tests that are alike in all of this.
     *
     * @param technician who opened them
     * @param station    where
     * @param state      how they stand
     * @param first      whether they are the first of their units
     * @param count      how many
     */
    public record Group(String technician, String station, State state, boolean first, long count) {
    }

    /**
     * Something found.
     *
     * @param fault true for a line of the unit's fault log, false for a nonconformity
     * @param name  the code, or stage and step
     * @param tests in how many tests
     */
    public record Found(boolean fault, String name, long tests) {
    }

    /**
     * Soaks that ended alike, in witnessed time.
     *
     * @param afterSeconds the last time at which the units were seen working
     * @param bySeconds    the first at which they were seen stopped; empty when they never were
     * @param count        how many
     */
    public record Soaks(long afterSeconds, Optional<Long> bySeconds, long count) {
    }

    /**
     * Units that were out there alike.
     *
     * @param procedure by which procedure they were accepted
     * @param days      for how many days, 0 or more; all beyond the most asked for are one
     * @param ending    how that ended
     * @param fault     what was found in those that came back
     * @param count     how many
     */
    public record InField(String procedure, int days, Ending ending, Optional<FieldReturn.Fault> fault, long count) {
    }

    /** How the time of a unit out there ended. */
    public enum Ending {
        /** It is still there. */
        STILL_OUT,
        /** It came back. */
        CAME_BACK,
        /** It was tested again, but no return is on record. */
        TESTED_AGAIN
    }

    /**
     * A measurement that was made.
     *
     * @param procedure by which procedure
     * @param name      the check
     * @param unit      its unit of measure
     * @param count     how often
     */
    public record Measured(String procedure, String name, String unit, long count) {
    }

    /**
     * One reading with where it comes from.
     *
     * @param opened     when its test was opened
     * @param value      the number
     * @param serial     of which unit
     * @param technician by whom
     * @param station    where
     * @param instrument with which instrument
     */
    public record Read(Instant opened, double value, String serial, String technician, String station, String instrument) {
    }

    /** How a departure or nonconformity stands. */
    public enum Stand {
        /** Its test is not sealed yet. */
        TEST_OPEN,
        /** An auditor has to decide. */
        WAITING, DECIDED,
        /** Nobody decided before the record was void, recalled or superseded. */
        PASSED_OVER
    }

    /**
     * A departure or nonconformity.
     *
     * @param test          the test's id
     * @param serial        the unit's serial number
     * @param family        its family's name
     * @param procedure     by which procedure
     * @param sequence      number of the event that noted it
     * @param nonconformity false for a departure
     * @param stage         where; may be empty
     * @param step          where; may be empty
     * @param noted         when
     * @param words         what
     * @param stand         how it stands
     * @param decided       what was decided, if something was
     */
    public record Deviated(String test, String serial, String family, String procedure, long sequence, boolean nonconformity, String stage,
            String step, Instant noted, String words, Stand stand, Optional<Decided> decided) {
    }

    /**
     * A sealed test that an auditor has to review, since the sampling plan drew it.
     *
     * @param test       its id
     * @param serial     the unit's serial number
     * @param family     its family's name
     * @param procedure  by which procedure
     * @param technician who opened it
     * @param opened     when
     */
    public record ReviewDue(String test, String serial, String family, String procedure, String technician, Instant opened) {
    }

    /**
     * What was decided.
     *
     * @param word    the decision
     * @param reason  why
     * @param by      who signed
     * @param instant when
     */
    public record Decided(String word, String reason, String by, Instant instant) {
    }

    /**
     * Reads a ledger. Nothing in it is made or changed; beside it the cache is made or brought up to date, where that is allowed.
     *
     * @param progress     is told of tests that had to be derived
     * @param cancellation may stop that between tests
     * @throws StoreException if there is no ledger, or it can't be read; or if it was cancelled
     */
    public static Fleet of(Path ledger, Progress progress, Cancellation cancellation) throws StoreException {
        try (Ledger events = SqliteLedger.openReadOnly(ledger)) {
            Projection projection = Projection.open(Projection.besides(ledger.toAbsolutePath()));
            try {
                new Projector(events, projection).update(progress, cancellation);
                return new Fleet(projection);
            } catch (LedgerException | StoreException | RuntimeException e) {
                projection.close();
                throw e;
            }
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        }
    }

    /** What a projection holds already, whatever it comes from; closing this closes it. */
    public static Fleet of(Projection projection) {
        return new Fleet(projection);
    }

    /** How many tests stand how, by person and station. */
    public List<Group> groups(FleetFilter filter) throws StoreException {
        return LedgerWork.of(() -> projection.tests(filter(filter))).stream().map(each -> new Group(each.technician(), each.station(),
                State.valueOf(each.state().name()), each.first(), each.count())).toList();
    }

    /** What was found. */
    public List<Found> found(FleetFilter filter) throws StoreException {
        return LedgerWork.of(() -> projection.causes(filter(filter))).stream()
                .map(each -> new Found(each.cause().fault(), each.cause().name(), each.tests())).toList();
    }

    /** How soaks ended, shortest first. */
    public List<Soaks> soaks(FleetFilter filter) throws StoreException {
        return LedgerWork.of(() -> projection.soaks(filter(filter))).stream()
                .map(each -> new Soaks(each.soak().afterSeconds(), each.soak().bySeconds(), each.count())).toList();
    }

    /**
     * How long units were out there, and how that ended.
     *
     * @param today the day up to which those count that are still out there
     * @param most  days beyond which no difference is made
     */
    public List<InField> inField(FleetFilter filter, LocalDate today, int most) throws StoreException {
        return LedgerWork.of(() -> projection.field(filter(filter), today.toEpochDay(), most)).stream().map(each -> {
            Ending ending = each.returned() ? Ending.CAME_BACK : each.testedAgain() ? Ending.TESTED_AGAIN : Ending.STILL_OUT;
            Optional<FieldReturn.Fault> fault = each.returned() ? Optional.of(FieldReturn.Fault.values()[each.fault()]) : Optional.empty();
            return new InField(each.procedure(), each.days(), ending, fault, each.count());
        }).toList();
    }

    /** The time from the first test to the last one that counts; nothing without two. */
    public Optional<Duration> span(FleetFilter filter) throws StoreException {
        return LedgerWork.of(() -> projection.span(filter(filter)));
    }

    /** What was measured. */
    public List<Measured> measured(FleetFilter filter) throws StoreException {
        return LedgerWork.of(() -> projection.measured(filter(filter))).stream()
                .map(each -> new Measured(each.procedure(), each.name(), each.unit(), each.count())).toList();
    }

    /** The latest readings of a measurement, oldest first. */
    public List<Read> readings(FleetFilter filter, Measured measured, int atMost) throws StoreException {
        ProjectionCounts.Measured key = new ProjectionCounts.Measured(measured.procedure(), measured.name(), measured.unit(),
                measured.count());
        return LedgerWork.of(() -> projection.readings(filter(filter), key, atMost)).stream()
                .map(each -> new Read(Instant.ofEpochMilli(each.openedMillis()), each.value(), each.serial(), each.technician(),
                        each.station(), each.instrument()))
                .toList();
    }

    /**
     * Departures or nonconformities of all tests: those that wait for an auditor, oldest first, and behind them the others, latest first.
     *
     * @param nonconformities false for departures
     * @param waitingOnly     only what waits for an auditor
     */
    public List<Deviated> deviations(boolean nonconformities, boolean waitingOnly) throws StoreException {
        return LedgerWork.of(() -> projection.deviations(nonconformities, waitingOnly)).stream().map(each -> {
            ProjectedTest.Deviation found = each.deviation();
            return new Deviated(each.test(), each.serial(), each.family(), each.procedure(), found.sequence(), found.nonconformity(), found.stage(),
                    found.step(), found.noted(), found.words(), Stand.valueOf(found.stand().name()), found.decision().map(decided ->
                            new Decided(decided.word(), decided.reason(), decided.by(), decided.instant())));
        }).toList();
    }

    /** Sealed tests that were drawn for a review which is due, the longest waiting first. */
    public List<ReviewDue> reviewsDue() throws StoreException {
        return LedgerWork.of(projection::reviewsDue).stream().map(each -> new ReviewDue(each.test(), each.serial(), each.family(), each.procedure(),
                each.technician(), each.opened())).toList();
    }

    private static ProjectionFilter filter(FleetFilter filter) {
        return new ProjectionFilter(filter.family(), filter.serial(), filter.from(), filter.until());
    }

    @Override
    public void close() throws StoreException {
        LedgerWork.of(() -> {
            projection.close();
            return Boolean.TRUE;
        });
    }
}
