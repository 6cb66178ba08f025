package org.benchwright.present;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.ScannedText;
import org.benchwright.engine.Demand;
import org.benchwright.engine.Place;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;
import org.benchwright.present.internal.AnsweredKeys;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.Cards;
import org.benchwright.present.internal.Drawings;
import org.benchwright.present.internal.Entry;
import org.benchwright.present.internal.EntryReader;
import org.benchwright.present.internal.Hands;
import org.benchwright.present.internal.InstrumentEntry;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.OfferedFile;
import org.benchwright.present.internal.PastedCells;
import org.benchwright.present.internal.SoakProof;
import org.benchwright.present.internal.Timeline;
import org.benchwright.present.internal.Times;
import org.benchwright.present.internal.WholeSeconds;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.SigningPerson;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.StoreException;
import org.benchwright.workshop.Workshop;

/**
 * One person's work on one test: shows a card, takes what is typed, tells what came of it. Whatever a method here has returned from is
 * durable. Used by one thread.
 */
public final class TestDialogue {

    /** What a step asks for with "attach photo". */
    private static final String PHOTO = "photo";

    private final Workshop workshop;
    private final Sitting sitting;
    private final boolean resumed;
    private final Plan offered;
    private final OpeningHours hours;
    private boolean scanAsked;

    TestDialogue(Workshop workshop, Sitting sitting, boolean resumed, Plan offered, OpeningHours hours) {
        this.hours = hours;
        this.workshop = workshop;
        this.sitting = sitting;
        this.resumed = resumed;
        this.offered = offered;
    }

    /**
     * What came of an entry; all of it is durable.
     *
     * @param event        the number of the entry's event in the record
     * @param news         decisions with their margins, repeats, moves, departures
     * @param explanations fault codes that were entered, in plain words
     */
    public record Told(long event, List<String> news, List<FaultExplanation> explanations) {
        public Told {
            news = List.copyOf(news);
            explanations = List.copyOf(explanations);
        }
    }

    /** The test's id. */
    public String test() {
        return sitting.test();
    }

    /** True if an unfinished test was taken up again. */
    public boolean resumed() {
        return resumed;
    }

    /** True if the procedure that was offered is not the one that the test was opened with; the test goes on by its own. */
    public boolean otherProcedure() {
        return !sitting.run().plan().equals(offered);
    }

    /** The key by which an answers file names what is asked now. */
    public String key() {
        return demand().key();
    }

    /** What is asked now. */
    public Demand demand() {
        return sitting.run().demand();
    }

    /** The card of what is asked now. */
    public StepCard card() {
        StepCard card = Cards.of(sitting.run(), sitting.moment(), hours);
        return asksScan() ? card.asking(Hands.ASK_SCAN.text(), Hands.HOW_SCAN.text()) : card;
    }

    /** What kind of answer is asked now. */
    public EntryKind kind() {
        return asksScan() ? EntryKind.WRITE : EntryKind.of(demand());
    }

    // ---- which unit one stands before

    /**
     * Somebody comes to this unit from another: nothing is taken from them before its serial number was scanned or typed, no note and no strike
     * either. Making safe, whatever time brings, and who has the test, do not wait for that.
     */
    public void arrive() {
        scanAsked = true;
    }

    /** True if the unit's serial number is asked before anything else. */
    public boolean asksScan() {
        return scanAsked && !waitsForTime() && !sitting.run().ended();
    }

    private void requireScanned() throws EntryRefusedException {
        if (asksScan()) {
            throw new EntryRefusedException(Hands.ASK_SCAN.text());
        }
    }

    /** The unit's serial number was scanned or typed; one of another unit is refused. */
    public Told identify(String typed) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Told told = record(new Fact.Identified(EntryReader.text(ScannedText.clean(typed))));
        scanAsked = false;
        return told;
    }

    /** Says where in the rack the unit stands. */
    public Told place(String position) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        requireScanned();
        return record(new Fact.Placed(EntryReader.text(ScannedText.clean(position))));
    }

    // ---- who has the test, and what people sign

    /** Another technician goes on with the test from here. */
    public Told handOver(String initials) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Actor by = Bench.technician(initials);
        return told(() -> sitting.takeOver(by));
    }

    /** Who works. */
    public String technician() {
        return sitting.technician().id();
    }

    /** Whose password an answer needs: that of somebody with a key who gives or refuses a release; empty if it needs none. */
    public Optional<String> passwordFor(List<String> parts) throws EntryRefusedException, CannotStoreException {
        if (asksScan() || !(demand() instanceof Demand.Release)) {
            return Optional.empty();
        }
        Fact.Released release = (Fact.Released) ((Entry.Told) EntryReader.read(demand(), parts)).fact();
        return Asked.read(() -> sitting.signsReleases(release.by().id()) ? Optional.of(release.by().id()) : Optional.empty());
    }

    /** Takes a release with the password of whoever gives or refuses it, which is blanked out. */
    public Told release(List<String> parts, char[] password) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            Fact.Released release = (Fact.Released) ((Entry.Told) EntryReader.read(demand(), parts)).fact();
            return told(() -> sitting.release(release, new SigningPerson(release.by().id(), password)));
        } finally {
            Arrays.fill(password, ' ');
        }
    }

    /** True if the test is over, and whoever carried it out and has signed in signs it with PIN or badge. */
    public boolean owesSignature() {
        return sitting.owesSignature();
    }

    /** Signs the test as carried out; the PIN is blanked out. */
    public void sign(char[] pin) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            Asked.to(() -> sitting.sign(pin));
        } finally {
            Arrays.fill(pin, ' ');
        }
    }

    /** Leaves the signing to the bench. */
    public void leaveUnsigned() throws TakenElsewhereException, CannotStoreException {
        try {
            sitting.leaveUnsigned();
        } catch (OvertakenException e) {
            throw new TakenElsewhereException(e.getMessage(), e);
        } catch (StoreException | FaultyRecordException e) {
            throw Asked.cannotStore(e);
        }
    }

    // ---- tapping along with a lamp

    /** True if what is asked now can be answered by tapping along with a lamp. */
    public boolean tapsAlong() {
        return !asksScan() && demand() instanceof Demand.AnswerExpectation d && TestRun.tapsAlong(d.expect()).isPresent();
    }

    /**
     * Answers by taps.
     *
     * @param taps when each came, by a clock that only goes forward, in ns; it may begin anywhere
     */
    public Told answerTaps(List<Long> taps) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        if (taps.isEmpty() || !(demand() instanceof Demand.AnswerExpectation d)) {
            throw new EntryRefusedException(Hands.REFUSED_TAPS.text());
        }
        long first = taps.get(0);
        return record(new Observation.Tapped(d.expect().id(), taps.stream().map(tap -> Duration.ofMillis((tap - first) / 1_000_000)).toList()));
    }

    /** True if the answer that is asked now is a look at a unit on soak that needs no reading: one key will do. */
    public boolean looksWithOneKey() {
        return demand() instanceof Demand.Look look && look.soak().conditions().isEmpty();
    }

    /** A look from a round: the unit is as expected. Its place in the rack has told which one it is. */
    public Told lookAsExpected() throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        if (!looksWithOneKey()) {
            throw new EntryRefusedException(Hands.REFUSED_ONE_KEY.text());
        }
        return record(new Observation.Looked(((Demand.Look) demand()).soak().name(), Observation.Sight.YES, "", List.of()));
    }

    /** True while the unit is on soak, as far as this dialogue knows: a watch may have written since that it has stopped. */
    public boolean onSoak() {
        return sitting.run().soakUnderWay().isPresent();
    }

    /** How often the unit was looked at on soak so far. */
    public long looks() {
        return sitting.run().events().stream().filter(event -> event.body() instanceof Observation.Looked).count();
    }

    /** The indications to watch for now, to be drawn. */
    public List<ExpectedIndication> drawings() {
        return Drawings.of(sitting.run());
    }

    /** What time brings next; empty if nothing is waited for. */
    public Optional<Countdown> countdown() {
        return Cards.countdown(demand(), sitting.moment());
    }

    /** True if only time can answer: a tone or a waiting time. */
    public boolean waitsForTime() {
        return demand() instanceof Demand.AwaitTone || demand() instanceof Demand.AwaitTime;
    }

    /** True if waiting takes no time, because this is a rehearsal. */
    public boolean skipsTime() {
        return workshop.time().jumps();
    }

    /**
     * Lets time pass.
     *
     * @throws InterruptedException if the waiting thread is interrupted
     */
    public void pause(Duration duration) throws InterruptedException {
        workshop.time().pause(duration);
    }

    /**
     * Takes an answer of one line; several parts are separated by semicolons.
     *
     * @param folder what relative file names are relative to
     */
    public Told answer(String typed, Path folder) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Optional<Fact> instrument = asksScan() ? Optional.empty() : registered(typed);
        if (instrument.isPresent()) {
            return record(instrument.get());
        }
        if (!asksScan() && demand() instanceof Demand.ReadCell cell) {
            List<String> column = PastedCells.of(typed, cell);
            return column.size() > 1 ? column(column, folder) : entry(column.isEmpty() ? "" : column.get(0), folder);
        }
        return entry(typed, folder);
    }

    private Told entry(String typed, Path folder) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return asksScan() ? identify(typed) : questionedOnce(typed).isPresent() ? record(questionedOnce(typed).get())
                : tell(EntryReader.read(demand(), typed), folder);
    }

    /** Takes an answer of several parts. */
    public Told answer(List<String> parts, Path folder) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Optional<Fact> instrument = parts.size() == 1 && !asksScan() ? registered(parts.get(0)) : Optional.empty();
        if (instrument.isPresent()) {
            return record(instrument.get());
        }
        return asksScan() || sitting.run().questioned().isPresent() || demand() instanceof Demand.ReadCell ? answer(String.join("; ", parts), folder)
                : tell(EntryReader.read(demand(), parts), folder);
    }

    /** An instrument by its asset number alone, if the register has it: uncertainty and due date are what the register says. */
    private Optional<Fact> registered(String typed) throws EntryRefusedException, CannotStoreException {
        if (!(demand() instanceof Demand.NameInstrument asked)) {
            return Optional.empty();
        }
        return Asked.read(() -> InstrumentEntry.registered(sitting.run().plan(), asked.instrument(), typed, workshop::instrument));
    }

    /** Each value is an entry of its own. It stops where one is empty, refused or questioned, or the grid is full. */
    private Told column(List<String> values, Path folder) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Demand.ReadCell first = (Demand.ReadCell) demand();
        List<String> news = new ArrayList<>();
        long event = 0;
        for (int i = 0; i < values.size(); i++) {
            boolean same = demand() instanceof Demand.ReadCell cell && cell.grid().id().equals(first.grid().id()) && cell.cell() == first.cell() + i;
            if (!same) {
                news.add(Hands.COLUMN_ENDED.text(i, values.size()));
                break;
            }
            if (values.get(i).isEmpty()) {
                news.add(Hands.COLUMN_GAP.text(i, values.size()));
                break;
            }
            try {
                Told told = tell(EntryReader.read(demand(), values.get(i)), folder);
                event = told.event();
                news.addAll(told.news());
                if (sitting.run().questioned().isPresent()) {
                    news.add(Hands.COLUMN_QUESTIONED.text(i, values.size(), values.get(i)));
                    break;
                }
            } catch (EntryRefusedException e) {
                if (i == 0) {
                    throw e;
                }
                news.add(Hands.COLUMN_STOPPED.text(values.get(i), e.getMessage()));
                break;
            }
        }
        return new Told(event, news, List.of());
    }

    /** Yes to a questioned reading enters it as it was typed. */
    private Optional<Fact> questionedOnce(String typed) throws EntryRefusedException {
        if (sitting.run().questioned().isPresent() && EntryReader.isNo(typed)) {
            throw new EntryRefusedException(Message.REFUSED_QUESTIONED.text());
        }
        Optional<Fact.Questioned> asked = sitting.run().questioned().filter(reading -> EntryReader.isYes(typed));
        if (asked.isPresent() && demand() instanceof Demand.ReadCell cell) {
            return Optional.of(new Observation.CellRead(asked.get().check(), cell.cell(), asked.get().raw(), asked.get().value()));
        }
        return asked.map(reading -> new Observation.Measured(reading.check(), reading.raw(), reading.value()));
    }

    private Told tell(Entry entry, Path folder) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        if (entry instanceof Entry.File file) {
            return record(attached(file, folder));
        }
        Fact fact = ((Entry.Told) entry).fact();
        Optional<Fact.Questioned> slip = sitting.run().slipIn(fact);
        return record(slip.isPresent() ? slip.get() : fact);
    }

    private Fact attached(Entry.File entry, Path folder) throws EntryRefusedException, CannotStoreException {
        Path file = folder.resolve(entry.file());
        OfferedFile offered = new OfferedFile(file);
        if (demand() instanceof Demand.AttachFile asked && asked.attach().kind().equals(PHOTO)) {
            offered.requirePhoto();
        } else {
            offered.requirePhotoOrPaper();
        }
        try {
            Digest digest = workshop.attach(file);
            return new Observation.Attached(entry.check(), digest, String.valueOf(file.getFileName()));
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }

    /** Tells that the time has come that the test waited for. */
    public Told timeHasCome() throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        if (demand() instanceof Demand.AwaitTone d) {
            return record(new Fact.ToneGiven(d.expect().id(), d.tone()));
        } else if (demand() instanceof Demand.AwaitTime d) {
            return record(new Fact.WaitElapsed(d.time().id()));
        }
        throw new EntryRefusedException(Message.REFUSED_NO_WAIT.text());
    }

    /** True until the unit is being made safe, or the test is over. */
    public boolean canMakeSafe() {
        return !sitting.run().ended() && !sitting.run().place().map(Place::makingSafe).orElse(false);
    }

    /** The make-safe key: the test ends undecided once the unit is safe. */
    public Told makeSafe(String reason) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return record(new Fact.Abandoned(EntryReader.text(reason)));
    }

    /** Strikes the last entry. */
    public Told strike() throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        requireScanned();
        TestEvent last = sitting.run().strikeable().orElseThrow(() -> new EntryRefusedException(Message.REFUSED_NOTHING_TO_STRIKE.text()));
        Stream<String> struck = soFar().stream().filter(line -> line.sequence() == last.sequence())
                .map(line -> Message.SAID_STRUCK.text(line.words()));
        Told told = record(new Fact.Struck(last.sequence()));
        return new Told(told.event(), Stream.concat(struck, told.news().stream()).toList(), told.explanations());
    }

    /** Adds a note. */
    public Told note(String text) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        requireScanned();
        return record(new Fact.Noted(EntryReader.text(text)));
    }

    private Told record(Fact fact) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return told(() -> sitting.record(fact));
    }

    /** Something that writes to the test. */
    @FunctionalInterface
    private interface Recording {
        List<TestEvent> record() throws RefusedException, OvertakenException, StoreException, FaultyRecordException;
    }

    private Told told(Recording recording) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return Asked.of(() -> {
            List<TestEvent> events = recording.record();
            return new Told(events.get(0).sequence(), Timeline.news(sitting.run(), events), Timeline.explanations(sitting.run().plan().family(), events));
        });
    }

    /** How it ended; empty while it is open. */
    public Optional<Ending> ending() {
        if (!(demand() instanceof Demand.Nothing end)) {
            return Optional.empty();
        }
        String words = (end.rehearsal() ? Message.ENDING_REHEARSAL : Message.ENDING).text(end.outcome().word(),
                WholeSeconds.in(end.reason()).replaceAll("\\s*[\\n|]\\s*", " "), test());
        return Optional.of(new Ending(end.outcome(), end.rehearsal(), end.reason(), SoakProof.of(sitting.run()), test(), words));
    }

    /** What the family's notes tell of fault codes, where a fault log is asked for; nothing elsewhere. */
    public List<FaultExplanation> faultNotes() {
        return demand() instanceof Demand.EnterFaultLog ? Timeline.notes(sitting.run().plan().family()) : List.of();
    }

    /** What happened so far; while a reading is entered blind, without earlier ones of the same kind. */
    public List<TimelineLine> soFar() {
        return Timeline.soFar(sitting.run(), Times.here());
    }

    /** How often each key was answered so far, struck answers among them: where an answers file goes on after an interruption. */
    public Map<String, Integer> answered() {
        return AnsweredKeys.of(sitting.run());
    }

    /** What is energised now, as the procedure calls it. */
    public List<String> live() {
        return List.copyOf(sitting.run().live());
    }

    /** What is shown when the test is left open: where the unit stays, how to go on, and what of it stays live. */
    public List<String> leavingWords() {
        TestRun run = sitting.run();
        List<String> words = new ArrayList<>();
        words.add(Message.LEAVING.text(run.opening().serial(), test()));
        if (!live().isEmpty()) {
            words.add(Message.LEAVING_LIVE.text(String.join(", ", live())));
        }
        return words;
    }
}
