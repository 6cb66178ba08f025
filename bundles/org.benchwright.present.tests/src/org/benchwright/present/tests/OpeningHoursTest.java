package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.present.Bench;
import org.benchwright.present.OpeningHours;
import org.benchwright.present.StepCard;
import org.benchwright.present.TestDialogue;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.GoodTechnician;
import org.benchwright.workshop.tests.MovedTime;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The file with the opening hours, and what the card of a soak and the list of units make of it. */
class OpeningHoursTest {

    @TempDir
    private Path folder;
    private final MovedTime time = new MovedTime();

    @BeforeEach
    void approve() throws Exception {
        Approved.in(ledger(), time.benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
    }

    private Path ledger() {
        return folder.resolve("bench.ledger");
    }

    private void hours(String text) throws Exception {
        Files.writeString(folder.resolve(OpeningHours.FILE), text);
    }

    private String carryOnUntil(String key) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(ledger())) {
            Workshop workshop = ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime());
            workshop.attach(Files.write(folder.resolve("plate.jpg"), new byte[] {1}));
            Sitting sitting = workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber("C16-004711"),
                    new Actor("QN", Role.TECHNICIAN), false);
            new GoodTechnician(time).carryOnUntil(sitting, key);
            return sitting.test();
        }
    }

    private Bench bench() throws Exception {
        return Bench.open(ledger(), new Bench.Clocks(time, time, time));
    }

    private StepCard card(String test) throws Exception {
        try (Bench bench = bench()) {
            TestDialogue dialogue = bench.takeUp(test, new Bench.Work("C16-004711", "QN", "bench 2", "Benchwright 0.1.0", false));
            dialogue.answer("y", folder);
            return dialogue.card();
        }
    }

    /** What is told before a soak, behind the caution that one under watch begins with. */
    private List<String> reminders(String test) throws Exception {
        List<String> told = card(test).reminders();
        assertTrue(told.get(0).startsWith("CAUTION: "), told.toString());
        return told.subList(1, told.size());
    }

    @Test
    void beforeASoakItIsToldWhichLooksNobodyIsInFor() throws Exception {
        String test = carryOnUntil("endurance.begin");
        hours("zone UTC\n1-5 07:00-17:00\nclosed 2026-03-04..2026-03-05\n");
        List<String> told = reminders(test);
        assertEquals(2, told.size(), told.toString());
        assertTrue(told.get(0).startsWith("72 h from now ends on Thursday 5 March "), told.get(0));
        assertTrue(told.get(0).contains("are due when nobody is in: "), told.get(0));
        assertTrue(told.get(1).startsWith("Begun on Friday 6 March ") || told.get(1).startsWith("Begun on Monday 9 March ")
                || told.get(1).startsWith("No start within two weeks avoids it; begun on "), told.get(1));
    }

    @Test
    void aFileThatCannotBeUnderstoodIsToldWithItsLine() throws Exception {
        String test = carryOnUntil("endurance.begin");
        hours("zone UTC\n1-5 07.00-17.00\n");
        String told = reminders(test).get(0);
        assertTrue(told.contains(OpeningHours.FILE) && told.contains("line 2: \"1-5 07.00-17.00\" can't be understood"), told);
        Files.write(folder.resolve(OpeningHours.FILE), new byte[] {(byte) 0xff, 0, (byte) 0xfe});
        assertTrue(OpeningHours.beside(ledger()).trouble().orElseThrow().contains("no text in UTF-8"));
        Files.delete(folder.resolve(OpeningHours.FILE));
        assertEquals(OpeningHours.unknown(), OpeningHours.beside(ledger()));
    }

    @Test
    void unitsAreRemindedOfALookThatNobodyIsInFor() throws Exception {
        carryOnUntil("endurance.look");
        try (Bench bench = bench()) {
            assertEquals(Optional.empty(), bench.units().get(0).reminder());
        }
        hours("zone UTC\n7 07:00-07:15\n");
        try (Bench bench = bench()) {
            assertTrue(bench.units().get(0).reminder().orElseThrow().startsWith("Nobody is in when the next look is due, "));
        }
    }
}
