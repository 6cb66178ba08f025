package org.benchwright.present;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Pause;
import org.benchwright.core.Progress;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.core.Ticker;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.plan.Plan;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.EntryReader;
import org.benchwright.present.internal.Hands;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.Reports;
import org.benchwright.present.internal.Rows;
import org.benchwright.present.internal.Sheets;
import org.benchwright.workshop.Approvals;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.RehearsalTime;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.StoreException;
import org.benchwright.workshop.Workshop;

/** A bench with its ledger: what a face can do with it. */
public final class Bench implements AutoCloseable {

    private final BenchLedger ledger;
    private final Clocks clocks;
    private final OpeningHours hours;
    private final Optional<StationSignIn> station;

    /**
     * The clocks of a bench.
     *
     * @param clock  wall time
     * @param ticker time that only goes forward
     * @param pause  how waiting is done
     */
    public record Clocks(Clock clock, Ticker ticker, Pause pause) {

        /** The clocks that everybody's watch shows. */
        public static Clocks system() {
            return new Clocks(Clock.systemUTC(), Ticker.system(), Pause.system());
        }

        /** The same, for the workshop. */
        BenchTime time() {
            return BenchTime.of(clock, ticker, pause);
        }
    }

    /**
     * Who works on which unit, where.
     *
     * @param serial     the unit's serial number as typed or scanned
     * @param technician the technician's initials
     * @param station    the bench's name
     * @param software   name and version of this program
     * @param rehearsal  true: no verdict will be derived, and waiting times are skipped
     */
    public record Work(String serial, String technician, String station, String software, boolean rehearsal) {
    }

    private Bench(BenchLedger ledger, Clocks clocks, OpeningHours hours, Optional<StationSignIn> station) {
        this.hours = hours;
        this.ledger = ledger;
        this.clocks = clocks;
        this.station = station;
    }

    /**
     * The same ledger, at a station where people sign in: who has done so signs what they carry out.
     *
     * @param signIn who has signed in there
     */
    public Bench at(StationSignIn signIn) {
        return new Bench(ledger, clocks, hours, Optional.of(signIn));
    }

    /** Where the ledger lies if nothing else is said. */
    public static Path standardLedger() {
        return BenchLedger.standardFile();
    }

    /** The ledger's file itself, where a link to it was named: what lies beside a ledger does not lie beside a link. */
    public static Path itself(Path ledger) {
        return BenchLedger.itself(ledger);
    }

    /** Where the demo's ledger lies: beside the standard one, so that trying things out leaves the bench's own records alone. */
    public static Path demoLedger() {
        return standardLedger().resolveSibling("demo").resolve("bench.ledger");
    }

    /**
     * Opens the ledger for work; makes it if there is none.
     *
     * @throws CannotStoreException if it can't be made, read or written
     */
    public static Bench open(Path ledger, Clocks clocks) throws CannotStoreException {
        return open(ledger, clocks, new BenchMemory());
    }

    /**
     * As {@link #open(Path, Clocks)}, for whoever opens the ledger again and again.
     *
     * @param memory what was read of it before; it is added to
     */
    public static Bench open(Path ledger, Clocks clocks, BenchMemory memory) throws CannotStoreException {
        return Asked.read(() -> new Bench(BenchLedger.open(ledger, memory.known()), clocks, OpeningHours.beside(ledger), Optional.empty()));
    }

    /**
     * What a test is told where there is no ledger, so that nothing was approved in it: asked first, what will be refused makes none.
     *
     * @throws EntryRefusedException always
     */
    public static void refuseDraft(Plan plan, String text) throws EntryRefusedException {
        try {
            Approvals.requireWhereNothingIs(new CompiledProcedure(plan, text));
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        }
    }

    /**
     * Opens the ledger for reading; nothing is made or changed.
     *
     * @throws CannotStoreException if there is none, or it can't be read
     */
    public static Bench read(Path ledger, Clocks clocks) throws CannotStoreException {
        return read(ledger, clocks, new BenchMemory());
    }

    /**
     * As {@link #read(Path, Clocks)}, for whoever opens the ledger again and again.
     *
     * @param memory what was read of it before; it is added to
     */
    public static Bench read(Path ledger, Clocks clocks, BenchMemory memory) throws CannotStoreException {
        return Asked.read(() -> new Bench(BenchLedger.openReadOnly(ledger, memory.known()), clocks, OpeningHours.beside(ledger), Optional.empty()));
    }

    /**
     * Begins work: takes up the unfinished test of this unit by this procedure, or opens a new one.
     *
     * @param text the procedure's text with all that it refers to
     * @throws EntryRefusedException   if serial number or initials are not taken
     * @throws TakenElsewhereException if somebody else took it up in the same moment
     * @throws CannotStoreException    if it can't be recorded
     */
    public TestDialogue begin(Plan plan, String text, Work work)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        SerialNumber serial = serial(work.serial());
        Actor technician = technician(work.technician());
        return Asked.of(() -> {
            Workshop workshop = workshop(work);
            Optional<String> unfinished = workshop.unfinished(serial, plan.name(), work.rehearsal());
            Sitting sitting = unfinished.isPresent() ? workshop.resume(unfinished.get(), technician)
                    : workshop.open(new CompiledProcedure(plan, text), serial, technician, work.rehearsal());
            return new TestDialogue(workshop, sitting, unfinished.isPresent(), plan, hours);
        });
    }

    /**
     * Opens a new test at a moment at which nobody may be looking, so it takes none up: that could be in somebody's hands.
     *
     * @param text the procedure's text with all that it refers to
     * @throws EntryRefusedException   if serial number or initials are not taken, or a test of the unit is open already
     * @throws TakenElsewhereException if somebody else took it up in the same moment
     * @throws CannotStoreException    if it can't be recorded
     */
    public TestDialogue beginAnew(Plan plan, String text, Work work) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        BatchStart.requireNotOpen(serial(work.serial()).text(), work.rehearsal(), units());
        return begin(plan, text, work);
    }

    /**
     * Takes up an open test by the procedure that it was opened with. Whoever had it before is told so by their next entry.
     *
     * @param test the test's id
     * @param work who goes on, where; its serial number is not looked at, and whether it is a rehearsal has to be said as the test has it
     * @throws EntryRefusedException   if the initials are not taken, or the test is over
     * @throws TakenElsewhereException if somebody else took it up in the same moment
     * @throws CannotStoreException    if it can't be recorded
     */
    public TestDialogue takeUp(String test, Work work) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Actor technician = technician(work.technician());
        return Asked.of(() -> {
            Workshop workshop = workshop(work);
            Sitting sitting = workshop.resume(test, technician);
            return new TestDialogue(workshop, sitting, true, sitting.run().plan(), hours);
        });
    }

    private Workshop workshop(Work work) throws StoreException {
        Workshop plain = ledger.workshop(new Station(work.station(), work.software()), time(work.rehearsal()));
        return station.flatMap(StationSignIn::signedIn).map(plain::signedIn).orElse(plain);
    }

    /**
     * What came of telling a unit something.
     *
     * @param words for whoever told it
     * @param done  false if it failed
     */
    public record UnitTold(String words, boolean done) {
    }

    /**
     * Begins to make every unit on the bench safe. Each test gets events of its own; what is still to be done at each unit is asked on its
     * own card.
     *
     * @param reason why
     * @param work   who says so, where; its serial number is not looked at
     * @return what came of it at each unit
     * @throws CannotStoreException if the open tests can't be read
     */
    public List<UnitTold> makeAllSafe(String reason, Work work) throws CannotStoreException {
        List<UnitTold> told = new ArrayList<>();
        for (UnitRow unit : units()) {
            told.add(makeSafe(unit, reason, new Work(unit.serial(), work.technician(), work.station(), work.software(), unit.rehearsal())));
        }
        return List.copyOf(told);
    }

    /** One that fails does not keep the others from being made safe. */
    private UnitTold makeSafe(UnitRow unit, String reason, Work work) {
        try {
            TestDialogue test = takeUp(unit.test(), work);
            if (!test.canMakeSafe()) {
                return new UnitTold(Hands.MADE_SAFE_ALREADY.text(unit.serial(), unit.test()), true);
            }
            test.makeSafe(reason);
            return new UnitTold(Hands.MADE_SAFE_BEGUN.text(unit.serial(), unit.test()), true);
        } catch (EntryRefusedException | TakenElsewhereException | CannotStoreException e) {
            return new UnitTold(Hands.MADE_SAFE_FAILED.text(unit.serial(), unit.test(), e.getMessage()), false);
        }
    }

    private BenchTime time(boolean rehearsal) {
        BenchTime real = clocks.time();
        return rehearsal ? new RehearsalTime(real) : real;
    }

    static SerialNumber serial(String typed) throws EntryRefusedException {
        try {
            return new SerialNumber(EntryReader.scanned(typed));
        } catch (IllegalArgumentException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        }
    }

    static Actor technician(String typed) throws EntryRefusedException {
        try {
            return new Actor(typed.strip(), Role.TECHNICIAN);
        } catch (IllegalArgumentException e) {
            throw new EntryRefusedException(Message.REFUSED_TECHNICIAN.text(e.getMessage()), e);
        }
    }

    /**
     * The open tests, in the order in which they were opened.
     *
     * @throws CannotStoreException if the ledger can't be read, or the record of an open test is not sound
     */
    public List<UnitRow> units() throws CannotStoreException {
        return Asked.read(() -> ledger.openTests().stream().map(test -> Rows.of(test.id(), test.run(), clocks.clock().instant(), hours)).toList());
    }

    /**
     * The ids of all tests on record, the latest last.
     *
     * @throws CannotStoreException if the ledger can't be read
     */
    public List<String> records() throws CannotStoreException {
        return Asked.read(() -> ledger.tests());
    }

    /**
     * The row of a record; empty if there is no such test.
     *
     * @throws CannotStoreException if its record can't be read, or is not sound
     */
    public Optional<RecordRow> row(String test) throws CannotStoreException {
        return Asked.read(() -> ledger.test(test).map(Sheets::row));
    }

    /**
     * The record of a test; empty if there is none of that id.
     *
     * @throws CannotStoreException if the ledger can't be read, or the record is not sound
     */
    public Optional<RecordSheet> record(String test) throws CannotStoreException {
        return Asked.read(() -> {
            Optional<KeptTest> kept = ledger.test(test);
            return kept.isEmpty() ? Optional.empty() : Optional.of(Sheets.sheet(kept.get(), ledger.signedAfterSeal(test), clocks.clock().instant()));
        });
    }

    /**
     * Verifies a ledger. Nothing is made or changed.
     *
     * @throws CannotStoreException if there is none, or it can't be read as a ledger at all
     */
    public static VerificationReport verify(Path ledger, Clocks clocks) throws CannotStoreException {
        return verify(ledger, clocks, Progress.none(), Cancellation.never());
    }

    /**
     * Verifies a ledger while somebody watches. Nothing is made or changed. A report of what was cancelled is never sound.
     *
     * @param progress     is told of events
     * @param cancellation may stop it between events
     * @throws CannotStoreException if there is none, or it can't be read as a ledger at all
     */
    public static VerificationReport verify(Path ledger, Clocks clocks, Progress progress, Cancellation cancellation)
            throws CannotStoreException {
        return Asked.read(() -> Reports.of(BenchLedger.verify(ledger, progress, cancellation), clocks.clock().instant()));
    }

    @Override
    public void close() throws CannotStoreException {
        try {
            ledger.close();
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }
}
