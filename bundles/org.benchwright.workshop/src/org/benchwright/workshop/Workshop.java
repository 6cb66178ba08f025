package org.benchwright.workshop;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.FieldReturn;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Approval;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.KnownBooks;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.instrument.Instrument;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.revision.Revision;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.PersonKeyStore;
import org.benchwright.workshop.internal.Arrivals;
import org.benchwright.workshop.internal.FileKeeper;
import org.benchwright.workshop.internal.InstrumentHistory;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.ReturnBook;
import org.benchwright.workshop.internal.RevisionHistory;
import org.benchwright.workshop.internal.TestsOfUnit;

/**
 * Carrying out tests: opening one, taking one up again, and what is open. It writes the engine's events into the ledger, and nobody
 * else does.
 */
public final class Workshop {

    /** The largest file that can be attached, in bytes. */
    public static final long LARGEST_ATTACHMENT = FileKeeper.LARGEST;

    /** How long a person remembers a hazard that they have read. */
    public static final Duration SHIFT = Duration.ofHours(12);

    private final Sitting.Tools tools;
    private final SecureRandom random = new SecureRandom();

    /**
     * @param ledger   where records are kept; stays open when this workshop is no longer used
     * @param memory   what was read of it before
     * @param benchKey what seals them
     * @param station  where the work is done
     * @param time     the bench's time
     * @param keys     people's keys
     */
    Workshop(Ledger ledger, LedgerMemory memory, Signer benchKey, Station station, BenchTime time, PersonKeyStore keys) {
        this(new Sitting.Tools(ledger, memory, new KeptTests(), benchKey, station, time, keys, Optional.empty()));
    }

    private Workshop(Sitting.Tools tools) {
        this.tools = tools;
    }

    /** The same workshop with somebody who has signed in at its station. */
    public Workshop signedIn(SignedIn who) {
        return new Workshop(tools.signedIn(who));
    }

    /** The bench's time. */
    public BenchTime time() {
        return tools.time();
    }

    /**
     * Opens a test of a unit. A test of the same unit before it is named as its predecessor.
     *
     * @param rehearsal true: no verdict will be derived
     * @throws RefusedException if the serial number does not fit the family, a test that is no rehearsal is to run in a time that jumps, or
     *                          the procedure is not approved in this ledger and it is no rehearsal
     */
    public Sitting open(CompiledProcedure procedure, SerialNumber serial, Actor technician, boolean rehearsal)
            throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        refuseJumping(rehearsal);
        Plan plan = procedure.plan();
        byte[] planBytes = tools.kept().bytes(plan);
        byte[] text = procedure.text().getBytes(StandardCharsets.UTF_8);
        Reliance reliance = rehearsal ? Reliance.NONE : reliance(plan, Digest.of(text), Digest.of(planBytes));
        if (!rehearsal) {
            Sitting.requireAuthorised(LedgerWork.of(() -> tools.memory().people(tools.ledger())), plan.family().name(), plan.name(), technician, tools.time().now());
        }
        Optional<String> predecessor = predecessor(serial, rehearsal).map(TestId::value);
        ReceiptBook receipts = rehearsal ? ReceiptBook.empty() : LedgerWork.of(() -> tools.memory().receipts(tools.ledger())).now();
        Fact.Opened opening = (Fact.Opened) tools.kept().asKept(new Fact.Opened(serial.text(), plan.family().name(), plan.name(),
                plan.revision(), Digest.of(text), Digest.of(planBytes), tools.station().name(), tools.station().software(), rehearsal,
                predecessor, reliance.approval(), receipts.current(serial.text()).map(Arrivals::of),
                predecessor.flatMap(test -> Arrivals.mended(receipts, test)), reliance.books(), Optional.of(SHIFT)));
        Moment now = new Moment(tools.time().now().truncatedTo(ChronoUnit.MILLIS), 1, Duration.ZERO);
        List<TestEvent> events = TestRun.open(plan, opening, technician, now);
        TestId test = TestId.create(random);
        LedgerWork.of(() -> tools.ledger().keep(text, DocumentKind.PROCEDURE_TEXT));
        LedgerWork.of(() -> tools.ledger().keep(planBytes, DocumentKind.PLAN));
        begin(test, events, reliance);
        try {
            Sitting sitting = new Sitting(test, tools, technician, TestRun.fold(plan, events), false, now);
            sitting.tellKnownHazards();
            return sitting;
        } catch (DoesNotFollowException e) {
            throw new IllegalStateException("the engine does not follow its own events", e);
        }
    }

    /**
     * What a test relies on.
     *
     * @param approval the approval
     * @param basis    where the books stood when it was read
     */
    private record Reliance(Optional<Approval> approval, Map<TestId, Long> basis) {
        private static final Reliance NONE = new Reliance(Optional.empty(), Map.of());

        Optional<KnownBooks> books() {
            return approval.map(given -> new KnownBooks(basis.get(TestId.PEOPLE), basis.get(TestId.REVISIONS)));
        }
    }

    private void begin(TestId test, List<TestEvent> events, Reliance reliance) throws OvertakenException, StoreException {
        // Nobody else can have written to a new test: where somebody was faster, one of the books has gone on.
        LedgerWork.unlessOvertaken(Message.BOOK_OVERTAKEN,
                () -> tools.ledger().append(test, 0, tools.kept().drafts(test, events), reliance.basis()));
    }

    private Reliance reliance(Plan plan, Digest text, Digest planDigest) throws RefusedException, StoreException {
        RevisionHistory history = LedgerWork.of(() -> RevisionHistory.trusted(tools.ledger(), tools.memory().books()));
        Revision revision = history.now().required(Approvals.key(plan), plan.title(), plan.revision(), text, planDigest);
        return new Reliance(revision.approval(), history.stand());
    }

    /**
     * Takes an open test up again in a sitting of its own; the interruption is recorded. A test that has ended but was not sealed, because
     * the power failed in between, is sealed.
     *
     * @throws RefusedException      if it is sealed already, or is no rehearsal and is to run in a time that jumps
     * @throws FaultyRecordException if its record cannot be what happened
     */
    public Sitting resume(String testId, Actor technician)
            throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        TestId test = new TestId(testId);
        KeptTest kept = tools.kept().read(tools.ledger(), test);
        if (kept.sealed()) {
            throw new RefusedException(Message.REFUSED_SEALED.text(test.value()));
        }
        TestRun run = kept.run();
        refuseJumping(run.rehearsal());
        Moment last = run.lastMoment();
        catchUpWith(last);
        Instant now = tools.time().now().truncatedTo(ChronoUnit.MILLIS);
        Moment begin = new Moment(now, last.sitting() + 1, Duration.ZERO);
        Sitting sitting = new Sitting(test, tools, technician, run, false, begin);
        if (run.ended()) {
            sitting.sealIfEnded();
        } else {
            Duration gap = Duration.between(last.instant(), now);
            sitting.takeUp(gap);
        }
        return sitting;
    }

    /** A rehearsal that had jumped ahead of real time goes on from there. */
    private void catchUpWith(Moment last) {
        Duration ahead = Duration.between(tools.time().now(), last.instant());
        if (tools.time().jumps() && !ahead.isNegative()) {
            try {
                tools.time().pause(ahead);
            } catch (InterruptedException e) {
                throw new IllegalStateException("a jumping time does not wait", e);
            }
        }
    }

    private void refuseJumping(boolean rehearsal) throws RefusedException {
        if (tools.time().jumps() && !rehearsal) {
            throw new RefusedException(Message.REFUSED_JUMPING_TIME.text());
        }
    }

    private Optional<TestId> predecessor(SerialNumber serial, boolean rehearsal) throws StoreException, FaultyRecordException {
        return new TestsOfUnit(tools.ledger()).of(serial.text()).stream().filter(each -> each.opened().rehearsal() == rehearsal)
                .reduce((earlier, later) -> later).map(TestsOfUnit.Opening::test);
    }

    /** The latest test of this unit by this procedure that is not sealed, if there is one. */
    public Optional<String> unfinished(SerialNumber serial, String procedure, boolean rehearsal)
            throws StoreException, FaultyRecordException {
        List<TestsOfUnit.Opening> tests = new TestsOfUnit(tools.ledger()).of(serial.text());
        for (int i = tests.size() - 1; i >= 0; i--) {
            Fact.Opened opened = tests.get(i).opened();
            TestId test = tests.get(i).test();
            if (opened.procedure().equals(procedure) && opened.rehearsal() == rehearsal
                    && !LedgerWork.of(() -> tools.ledger().sealed(test))) {
                return Optional.of(test.value());
            }
        }
        return Optional.empty();
    }

    /**
     * The instrument of that asset number as the register has it; empty if it has none.
     *
     * @throws StoreException if the ledger can't be read, or the register is not as it was signed
     */
    public Optional<Instrument> instrument(String asset) throws StoreException {
        return LedgerWork.of(() -> InstrumentHistory.trusted(tools.ledger(), tools.memory().books())).now().find(asset);
    }

    /** What a test writes down of an instrument that is in the register. */
    public static Observation.RegisterEntry entry(Instrument instrument) {
        return InstrumentHistory.entry(instrument);
    }

    /**
     * Keeps a file.
     *
     * @return its digest, for {@code Observation.Attached}
     * @throws RefusedException if it can't be read or is too large
     */
    public Digest attach(Path file) throws RefusedException, StoreException {
        return new FileKeeper(tools.ledger()).keep(file);
    }

    /**
     * Writes down that a unit came back, signed by the bench key.
     *
     * @param test the test by which it was handed over
     * @param by   who received it
     * @throws RefusedException      if the test does not take it
     * @throws OvertakenException    if somebody else wrote to the test in the same moment
     * @throws FaultyRecordException if its record cannot be what happened
     */
    public void returned(String test, FieldReturn back, Actor by)
            throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        TestId id = TestId.parse(test).orElseThrow(() -> new RefusedException(Message.RETURN_NO_TEST.text(test)));
        new ReturnBook(tools.ledger(), tools.kept(), tools.benchKey()).enter(id, back, by, tools.station().name(),
                tools.time().now().truncatedTo(ChronoUnit.MILLIS));
    }
}
