package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;

import org.benchwright.core.Cancellation;
import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Progress;
import org.benchwright.present.Bench;
import org.benchwright.present.EntryKind;
import org.benchwright.present.ExpectedIndication;
import org.benchwright.present.RecordRow;
import org.benchwright.present.RecordSearch;
import org.benchwright.present.RecordSheet;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.present.TestDialogue;
import org.benchwright.present.VerificationReport;
import org.benchwright.workshop.tests.SamplePhoto;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a window needs beyond cards: kinds of entry, drawings, taking up by id, records, a check that can be watched and stopped. */
class WindowValuesTest {

    private static final Map<String, String> ANSWERS = Map.ofEntries(Map.entry("precondition.strap", "y, 4711"),
            Map.entry("precondition.ambient", "22.5 degC"), Map.entry("plate.photo", "plate.jpg"), Map.entry("plate.damage", "none"),
            Map.entry("bench.supply_on.on", "done"), Map.entry("bench.supply.on", "done"),
            Map.entry("instrument.meter", "M-17, 0.02 V, k 2, due 2099-03-01"), Map.entry("bench.supply_volts", "24.02 V"),
            Map.entry("bench.supply.off", "done"), Map.entry("fit.strap_off", "y"), Map.entry("lamps.on", "now"),
            Map.entry("lamps.pwr", "y"), Map.entry("lamps.ok", "n: stays red"), Map.entry("lamps.flt", "y"),
            Map.entry("off.supply.off", "done"), Map.entry("drain.residual", "0.4 V"));

    @TempDir
    private Path folder;
    private Bench bench;

    @BeforeEach
    void openBench() throws Exception {
        Files.write(folder.resolve("plate.jpg"), SamplePhoto.of("plate"));
        bench = Bench.open(ledger(), Bench.Clocks.system());
    }

    @AfterEach
    void closeBench() throws Exception {
        bench.close();
    }

    private Path ledger() {
        return folder.resolve("bench.ledger");
    }

    private static Bench.Work work(String who) {
        return new Bench.Work("C16-004711", who, "bench 1", "test", true);
    }

    private TestDialogue begin() throws Exception {
        return bench.begin(SamplePlan.acceptance(), SamplePlan.TEXT, work("QN"));
    }

    /** One step: an answer, or the time that comes. */
    private void step(TestDialogue dialogue) throws Exception {
        if (dialogue.waitsForTime()) {
            dialogue.pause(dialogue.countdown().get().left());
            dialogue.timeHasCome();
        } else {
            String key = dialogue.key();
            dialogue.answer(key.startsWith("hazard.") ? "u" : Optional.ofNullable(ANSWERS.get(key)).orElseThrow(() -> new AssertionError(key)),
                    folder);
        }
    }

    private void stepUntil(TestDialogue dialogue, String key) throws Exception {
        while (!dialogue.key().equals(key)) {
            step(dialogue);
        }
    }

    private TestDialogue rejected() throws Exception {
        TestDialogue dialogue = begin();
        while (dialogue.ending().isEmpty()) {
            step(dialogue);
        }
        return dialogue;
    }

    @Test
    void eachDemandHasItsKindOfEntry() throws Exception {
        TestDialogue dialogue = begin();
        Map<String, EntryKind> kinds = new LinkedHashMap<>();
        while (dialogue.ending().isEmpty()) {
            kinds.put(dialogue.key(), dialogue.kind());
            step(dialogue);
        }
        assertEquals(EntryKind.DECIDE, kinds.get("precondition.strap"));
        assertEquals(EntryKind.WRITE, kinds.get("precondition.ambient"));
        assertEquals(EntryKind.UNDERSTAND, kinds.get("hazard.mains"));
        assertEquals(EntryKind.FILE, kinds.get("plate.photo"));
        assertEquals(EntryKind.WRITE, kinds.get("bench.supply_volts"));
        assertEquals(EntryKind.DO, kinds.get("bench.supply.off"));
        assertEquals(EntryKind.MARK, kinds.get("lamps.on"));
        assertEquals(EntryKind.TIME, kinds.get("lamps.pwr.tone"));
        assertEquals(EntryKind.SEE, kinds.get("lamps.pwr"));
        assertEquals(EntryKind.NOTHING, dialogue.kind());
    }

    @Test
    void expectedLampsAreDrawnInTheirColourWithTheirLegend() throws Exception {
        TestDialogue dialogue = begin();
        stepUntil(dialogue, "plate.damage");
        assertEquals(List.of(), dialogue.drawings());
        stepUntil(dialogue, "lamps.ok");
        List<ExpectedIndication> drawings = dialogue.drawings();
        assertEquals(List.of(false, true, false), drawings.stream().map(ExpectedIndication::asked).toList());
        List<ExpectedIndication.Shown> sequence = drawings.get(1).sequence().stream().map(any -> any.any().get(0)).toList();
        assertEquals(List.of(
                new ExpectedIndication.Lamp("OK", Optional.of(LampColour.RED), new LampPattern.Steady(), "red steady"),
                new ExpectedIndication.Lamp("OK", Optional.of(LampColour.GREEN), new LampPattern.Steady(), "green steady")), sequence);
        assertEquals(new ExpectedIndication.Lamp("FLT", Optional.empty(), new LampPattern.Off(), "off"),
                drawings.get(2).sequence().get(0).any().get(0));
    }

    @Test
    void whoeverTakesATestUpByItsIdHasItAndTheOtherIsTold() throws Exception {
        TestDialogue first = begin();
        step(first);
        try (Bench other = Bench.open(ledger(), Bench.Clocks.system())) {
            TestDialogue second = other.takeUp(first.test(), work("KM"));
            assertEquals(first.card().question(), second.card().question());
            int known = second.soFar().size();
            assertThrows(TakenElsewhereException.class, () -> step(first));
            assertEquals(known, other.record(first.test()).get().story().size());
            step(second);
            assertEquals(known, second.soFar().stream().filter(line -> line.sequence() <= known).count());
        }
    }

    @Test
    void recordsTellTheStoryOfOpenAndSealedTests() throws Exception {
        TestDialogue over = rejected();
        TestDialogue open = begin();
        assertEquals(List.of(over.test(), open.test()), bench.records());
        RecordSheet sheet = bench.record(over.test()).get();
        assertTrue(sheet.sealed());
        assertEquals("rehearsal, would be rejected", sheet.row().state());
        assertTrue(sheet.reason().startsWith("Power-up self-check failed"), sheet.reason());
        assertEquals(over.soFar(), sheet.story());
        RecordSheet going = bench.record(open.test()).get();
        assertFalse(going.sealed());
        assertEquals("open", going.row().state());
        assertEquals("", going.reason());
        assertEquals(Optional.empty(), bench.record("T-00000000000000000000"));
    }

    @Test
    void aRowIsFoundByAnyOfItsWordsInAnyOrder() throws Exception {
        RecordRow row = bench.record(rejected().test()).get().row();
        assertTrue(row.matches(""));
        assertTrue(row.matches("  rejected c16-004711 "));
        assertTrue(row.matches("QN " + row.opened().toString().substring(0, 10)));
        assertTrue(row.matches("tarn"), "family");
        assertTrue(row.matches("acceptance revision"), "procedure");
        assertTrue(row.matches("m-17"), "instrument: " + row.findable());
        assertTrue(row.matches("nonconformity stays red"), "what did not conform: " + row.findable());
        assertTrue(row.matches(LocalDate.now().toString()), "day");
        assertFalse(row.matches("C16-004711 accepted"));
        assertFalse(row.matches("departure"), "there was none: " + row.findable());
    }

    @Test
    void ofVeryManyRowsTheFirstAreShownAndAllAreCounted() throws Exception {
        RecordRow red = bench.record(rejected().test()).get().row();
        RecordRow open = bench.record(begin().test()).get().row();
        RecordSearch search = RecordSearch.none().and(List.of(open, red)).and(List.of(open, red, open));
        assertEquals(5, search.size());
        assertEquals(new RecordSearch.Found(List.of(open, red, open), 5), search.found(" ", 3));
        assertEquals(new RecordSearch.Found(List.of(red), 2), search.found("REJECTED", 1));
        assertEquals(List.of(red, red), search.found("rejected"));
        assertEquals(List.of(), RecordSearch.none().found(""));
    }

    @Test
    void aRecordIsFoundByItsDeparturesAndByWhoeverTookItUp() throws Exception {
        TestDialogue first = begin();
        step(first);
        step(bench.takeUp(first.test(), work("KM")));
        assertTrue(bench.record(first.test()).get().row().matches("KM QN"));
    }

    @Test
    void aCheckOfALargeLedgerKnowsHowFarItHasComeAndStopsAtOnce() throws Exception {
        TestDialogue dialogue = begin();
        for (int i = 0; i < 1100; i++) {
            dialogue.note("note " + i);
        }
        AtomicBoolean stop = new AtomicBoolean();
        AtomicLong stopped = new AtomicLong();
        AtomicLong all = new AtomicLong();
        AtomicLong seen = new AtomicLong();
        Progress stopping = new Progress() {
            @Override
            public void begin(String what, long total) {
                all.set(total);
            }

            @Override
            public void advance(long more) {
                seen.addAndGet(more);
                stop.set(true);
                stopped.compareAndSet(0, System.nanoTime());
            }

            @Override
            public void end() {
                // what is measured is when the whole call is over
            }
        };
        assertFalse(Bench.verify(ledger(), Bench.Clocks.system(), stopping, stop::get).sound());
        long took = System.nanoTime() - stopped.get();
        assertEquals(1101, all.get());
        assertTrue(seen.get() < all.get(), "it did not go on: " + seen);
        assertTrue(took < Duration.ofSeconds(30).toNanos(), took + " ns after it was told to");
    }

    @Test
    void aCheckIsWatchedAndWhatIsStoppedIsNeverSound() throws Exception {
        rejected();
        List<String> told = new ArrayList<>();
        Progress watching = new Progress() {
            @Override
            public void begin(String what, long total) {
                told.add("begin");
            }

            @Override
            public void advance(long more) {
                told.add("advance");
            }

            @Override
            public void end() {
                told.add("end");
            }
        };
        VerificationReport whole = Bench.verify(ledger(), Bench.Clocks.system(), watching, Cancellation.never());
        assertTrue(whole.sound(), whole.toString());
        assertEquals("begin", told.get(0));
        assertEquals("end", told.get(told.size() - 1));
        assertFalse(Bench.verify(ledger(), Bench.Clocks.system(), Progress.none(), () -> true).sound());
    }
}
