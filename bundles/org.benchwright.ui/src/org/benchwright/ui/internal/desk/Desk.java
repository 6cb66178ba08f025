package org.benchwright.ui.internal.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Reading;
import org.benchwright.present.Approving;
import org.benchwright.present.BatchStart;
import org.benchwright.present.Bench;
import org.benchwright.present.BenchMemory;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.RevisionRow;
import org.benchwright.present.StationSignIn;
import org.benchwright.present.SharedBench;
import org.benchwright.present.UnitRow;
import org.benchwright.present.WatchCalls;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.desk.DeskListener.Change;

/** The desk of this window: which tests are open here, which one is selected, and what else is on the bench. Any thread may call it. */
public final class Desk implements AutoCloseable {

    private final Path ledger;
    private final String software;
    private final Map<String, OpenTest> open = new ConcurrentHashMap<>();
    private final List<DeskListener> listeners = new CopyOnWriteArrayList<>();
    private final ExecutorService reader = Executors.newSingleThreadExecutor(task -> new Thread(task, "procedure reader"));
    /** Every test opens the ledger for itself; what one has read of its books the next need not read. */
    private final BenchMemory memory = new BenchMemory();
    private final ProcedureReading procedures = new ProcedureReading();
    private final UnitsWatcher watcher;
    private final StationSignIn station = new StationSignIn(Bench.Clocks.system());
    private final WaitingStarts waiting = new WaitingStarts(Bench.Clocks.system().clock(), this::openBehind, () -> tell(Change.UNITS, ""));
    private volatile String selected = "";
    private volatile String works = "";
    /** The test whose serial number was typed a moment ago, to open it. */
    private volatile String typed = "";
    private volatile boolean looked;
    private final Alarms alarms = new Alarms();
    private final WatchCalls calls;
    /** Why nobody may have been called. */
    private volatile Optional<String> uncalled = Optional.empty();

    /**
     * @param ledger   the ledger's file; need not exist yet
     * @param software name and version of this program
     */
    public Desk(Path ledger, String software) {
        this.ledger = ledger;
        this.software = software;
        this.watcher = new UnitsWatcher(ledger, memory, this::unitsRead);
        this.calls = new WatchCalls(words -> {
            uncalled = Optional.of(words);
            tell(Change.UNITS, "");
        }).byDesktop();
    }

    /** Whoever comes back to a bench finds its first unit on the step card, without having to look for it. */
    private void unitsRead() {
        if (!looked) {
            looked = true;
            watcher.units().stream().findFirst().filter(unit -> selected.isEmpty()).ifPresent(unit -> selected = unit.test());
        }
        alarms.risen(watcher.units()).forEach(unit -> calls.call(Message.UNIT_COME.text(), unit.test(), unit.serial(), unit.watch()));
        tell(Change.UNITS, "");
    }

    /** Why somebody who was to come for a unit may not have been called on this desktop; empty as long as calling works. */
    public Optional<String> uncalled() {
        return uncalled;
    }

    /** True once the units on the bench have been read. */
    public boolean looked() {
        return looked;
    }

    /** The ledger's file. */
    public Path ledger() {
        return ledger;
    }

    /** Tells a listener from now on. */
    public void add(DeskListener listener) {
        listeners.add(listener);
        watcher.start();
    }

    /** Tells a listener no more. */
    public void remove(DeskListener listener) {
        listeners.remove(listener);
    }

    /**
     * What to open.
     *
     * @param procedure  the procedure's file
     * @param serial     the unit's serial number
     * @param technician the technician's initials
     * @param station    the bench's name
     * @param rehearsal  true for a rehearsal
     */
    public record Request(Path procedure, String serial, String technician, String station, boolean rehearsal) {

        /** The same for another unit. */
        Request of(String unit) {
            return new Request(procedure, unit, technician, station, rehearsal);
        }
    }

    /**
     * Reads the procedure, opens the test (or takes the unfinished one up) and selects it.
     *
     * @return the test; fails with the exception that tells why it could not be opened
     */
    public CompletableFuture<OpenTest> open(Request request) {
        works = request.technician();
        Bench.Work work = new Bench.Work(request.serial(), request.technician(), request.station(), software, request.rehearsal());
        return CompletableFuture.supplyAsync(() -> read(request.procedure(), request.serial()), reader)
                .thenCompose(ready -> OpenTest.open(this::bench, work, Path.of("").toAbsolutePath(),
                        bench -> bench.begin(ready.plan(), ready.text(), work), this::changed))
                .thenApply(test -> {
                    typed = test.id();
                    return hold(test);
                });
    }

    /**
     * Opens the tests of several units of one family, one after the other: the first at once, the others by themselves, each at least that much
     * behind the one before. They wait in this window only. Where the first isn't opened none of them waits.
     *
     * @param like  its serial number holds those of all units
     * @param apart the distance, such as {@code 5 min}; not looked at where it is only one unit
     * @return the first test; fails with the exception that tells why it could not be opened, or what is wrong with which unit
     */
    public CompletableFuture<OpenTest> openBatch(Request like, String apart) {
        return CompletableFuture.supplyAsync(() -> batch(like, apart), reader).thenCompose(batch -> {
            String first = batch.starts().get(0).serial();
            return open(like.of(first)).thenApply(test -> {
                BatchStart left = batch.begun(first, Bench.Clocks.system().clock().instant());
                if (!left.starts().isEmpty()) {
                    waiting.add(left, like);
                }
                return test;
            });
        });
    }

    /** All that could be wrong with a batch is found before anything is opened. */
    private BatchStart batch(Request like, String apart) {
        try {
            Reading.Ready first = first(like.procedure(), like.serial());
            List<String> serials = BatchStart.serials(like.serial(), first.plan());
            Instant now = Bench.Clocks.system().clock().instant();
            if (serials.size() == 1) {
                return BatchStart.of(serials, BatchStart.LONGEST, now);
            }
            List<UnitRow> onBench = onBench();
            for (String serial : serials) {
                BatchStart.requireFits(serial, read(like.procedure(), serial).plan(), first.plan());
                BatchStart.requireNotOpen(serial, like.rehearsal(), onBench);
                if (waiting.rows().stream().anyMatch(row -> row.serial().equals(serial))) {
                    throw new EntryRefusedException(Message.WAITING_ALREADY.text(serial));
                }
            }
            return BatchStart.of(serials, BatchStart.apart(apart), now);
        } catch (EntryRefusedException | CannotStoreException refused) {
            throw new CompletionException(refused);
        }
    }

    private List<UnitRow> onBench() throws CannotStoreException {
        if (!Files.exists(ledger)) {
            return List.of();
        }
        try (Bench bench = Bench.read(ledger, Bench.Clocks.system(), memory)) {
            return bench.units();
        }
    }

    /** Opens a test while somebody may be at another unit's card: that stays selected. */
    private CompletableFuture<OpenTest> openBehind(Request request) {
        Bench.Work work = new Bench.Work(request.serial(), request.technician(), request.station(), software, request.rehearsal());
        return CompletableFuture.supplyAsync(() -> read(request.procedure(), request.serial()), reader)
                .thenCompose(ready -> OpenTest.open(this::bench, work, Path.of("").toAbsolutePath(),
                        bench -> bench.beginAnew(ready.plan(), ready.text(), work), this::changed))
                .thenApply(this::keep);
    }

    /** The tests of batches that are not open yet. */
    public List<WaitingStart> waiting() {
        return waiting.rows();
    }

    /** Begins to open one of them now. */
    public void beginNow(String serial) {
        waiting.beginNow(serial);
    }

    /** Takes one of them off the list: it is not begun. */
    public void takeOff(String serial) {
        waiting.takeOff(serial);
    }

    /**
     * How a procedure's file stands for the family that a unit of this serial number is of: only an approved revision opens a real test.
     *
     * @param serial the unit's serial number, or those of several units, of which the first counts; empty as long as nobody has entered one
     * @return its standing; fails with the exception that tells why it could not be found out
     */
    public CompletableFuture<RevisionRow> standing(Path procedure, String serial) {
        return CompletableFuture.supplyAsync(() -> standing(first(procedure, serial)), reader);
    }

    private Bench bench() throws CannotStoreException {
        return Bench.open(ledger, Bench.Clocks.system(), memory).at(station);
    }

    private RevisionRow standing(Reading.Ready ready) {
        try {
            return Approving.here(ledger).standing(ready.plan(), ready.text());
        } catch (CannotStoreException unreadable) {
            throw new CompletionException(unreadable);
        }
    }

    /** The procedure as it is read for the first unit that was typed. */
    private Reading.Ready first(Path file, String typed) {
        String listed = BatchStart.firstListed(typed);
        Reading.Ready ready = read(file, listed);
        String serial = BatchStart.first(typed, ready.plan());
        return serial.equals(listed) ? ready : read(file, serial);
    }

    private Reading.Ready read(Path file, String serial) {
        try {
            return procedures.read(file, new FamilyChoice.Fitting(serial));
        } catch (EntryRefusedException refused) {
            throw new CompletionException(refused);
        }
    }

    /** Reads procedures from the disk. */
    public ProcedureReading procedures() {
        return procedures;
    }

    /**
     * Takes up a test that is open on the bench, but not here.
     *
     * @return the test; fails with the exception that tells why not
     */
    public CompletableFuture<OpenTest> takeUp(UnitRow unit, String technician, String station) {
        works = technician;
        Bench.Work work = new Bench.Work(unit.serial(), technician, station, software, unit.rehearsal());
        return OpenTest.open(this::bench, work, Path.of("").toAbsolutePath(), bench -> bench.takeUp(unit.test(), work), this::changed)
                .thenApply(this::hold);
    }

    private OpenTest hold(OpenTest test) {
        keep(test);
        select(test.id());
        return test;
    }

    private OpenTest keep(OpenTest test) {
        OpenTest before = open.put(test.id(), test);
        if (before != null) {
            before.close();
        }
        watcher.look();
        return test;
    }

    private void changed(OpenTest test) {
        watcher.look();
        tell(Change.TEST, test.id());
    }

    /** The test if it is open here. */
    public Optional<OpenTest> held(String test) {
        return Optional.ofNullable(open.get(test));
    }

    /** Selects a unit by its test's id. */
    public void select(String test) {
        if (!test.equals(selected)) {
            Optional.ofNullable(open.get(selected)).filter(left -> left.shown().ending().isPresent()).ifPresent(ended -> {
                open.remove(ended.id());
                ended.close();
            });
            selected = test;
            Optional.ofNullable(open.get(test)).filter(there -> !there.shown().rehearsal() && units().size() > 1 && !test.equals(typed))
                    .ifPresent(OpenTest::arrive);
            typed = "";
        }
        tell(Change.SELECTION, test);
    }

    /** Selects the unit that follows the selected one on the bench, the first one behind the last; does nothing on an empty bench. */
    public void selectNext() {
        List<String> tests = units().stream().map(UnitRow::test).toList();
        if (!tests.isEmpty()) {
            select(tests.get((tests.indexOf(selected) + 1) % tests.size()));
        }
    }

    /** Who has signed in at this station. */
    public StationSignIn station() {
        return station;
    }

    /**
     * Who works at this desk, as far as it knows: whoever has signed in, else who opened or took up a test last.
     *
     * @param offered otherwise
     */
    public String worksHere(String offered) {
        return station.person().orElse(works.isBlank() ? offered : works);
    }

    /** Tells everybody who draws it that the station was locked, or somebody signed in. */
    public void stationChanged() {
        tell(Change.SELECTION, selected);
    }

    /**
     * Begins to make every unit on the bench safe: each test gets events of its own, those that are open elsewhere are taken up.
     *
     * @param technician initials for those that are taken up
     * @return where it could not be begun, and why; one that fails does not keep the others from being made safe
     */
    public CompletableFuture<List<String>> makeAllSafe(String reason, String technician, String stationName) {
        List<CompletableFuture<Optional<String>>> all = units().stream().map(unit -> here(unit, technician, stationName)
                .thenAccept(test -> test.makeSafe(reason))
                .handle((begun, failure) -> Optional.ofNullable(failure).map(why -> unit.serial() + ": " + Failures.words(why)))).toList();
        return CompletableFuture.allOf(all.toArray(CompletableFuture[]::new))
                .thenApply(done -> all.stream().flatMap(each -> each.join().stream()).toList());
    }

    /**
     * A test on the bench, taken up if it is not open here; what is on the step card stays there.
     *
     * @return the test; fails with the exception that tells why not
     */
    public CompletableFuture<OpenTest> here(UnitRow unit, String technician, String stationName) {
        Optional<OpenTest> held = held(unit.test()).filter(test -> !test.shown().elsewhere());
        Bench.Work work = new Bench.Work(unit.serial(), technician, stationName, software, unit.rehearsal());
        return held.map(CompletableFuture::completedFuture).orElseGet(() -> OpenTest.open(this::bench, work, Path.of("").toAbsolutePath(),
                bench -> bench.takeUp(unit.test(), work), this::changed).thenApply(this::keep));
    }

    /** The selected test's id; empty if none is selected. */
    public String selected() {
        return selected;
    }

    /** The selected test if it is open here. */
    public Optional<OpenTest> selectedTest() {
        return held(selected);
    }

    /** The tests that are open here and whose units are energised. One that was taken up elsewhere is theirs to look after. */
    public List<Shown> live() {
        return open.values().stream().map(OpenTest::shown).filter(shown -> !shown.live().isEmpty() && !shown.elsewhere() && shown.ending().isEmpty())
                .sorted(Comparator.comparing(Shown::serial)).toList();
    }

    /** The units on the bench as they were last read. */
    public List<UnitRow> units() {
        return watcher.units();
    }

    /** Why the units could not be read; empty if they were. */
    public Optional<String> trouble() {
        return watcher.trouble();
    }

    /** How forwarding to a shared ledger stands; empty where this bench shares none. */
    public Optional<SharedBench.State> forwarding() {
        return watcher.forwarding();
    }

    private void tell(Change change, String test) {
        listeners.forEach(listener -> listener.changed(change, test));
    }

    @Override
    public void close() {
        listeners.clear();
        waiting.close();
        watcher.close();
        calls.close();
        reader.shutdown();
        open.values().forEach(OpenTest::close);
        open.values().forEach(OpenTest::awaitClosed);
        open.clear();
    }
}
