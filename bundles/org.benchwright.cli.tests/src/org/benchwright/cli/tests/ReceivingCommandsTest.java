package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.event.Fact;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.tests.GoodTechnician;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Units come in at the terminal. */
class ReceivingCommandsTest {

    @TempDir
    private Path folder;
    private CommandRunner bench;

    @BeforeEach
    void setUp() throws Exception {
        bench = new CommandRunner(folder);
        Files.writeString(Files.createDirectories(folder.resolve("families")).resolve("tarn.family"), """
                family tarn_c16 "Tarn C16 modular controller" {
                  serial "C16-######"
                }
                """);
    }

    private CommandRunner.Ended bench(String typed, String... words) {
        List<String> all = new ArrayList<>(List.of(words));
        all.addAll(List.of("--ledger", bench.ledger().toString()));
        if (!words[0].equals("repaired") && !words[0].equals("verify")) {
            all.addAll(List.of("--families", "families"));
        }
        return bench.typing(typed, all.toArray(String[]::new));
    }

    private static CommandRunner.Ended done(CommandRunner.Ended ended) {
        assertEquals(0, ended.status(), ended.out() + ended.err());
        return ended;
    }

    private static void refused(CommandRunner.Ended ended, String words) {
        assertEquals(1, ended.status(), ended.out() + ended.err());
        assertTrue(ended.err().replaceAll("\\s+", " ").contains(words), ended.err());
    }

    @Test
    void aUnitIsReceivedListedCorrectedAndGivenBack() {
        CommandRunner.Ended received = done(bench("", "receive", "C16-004711", "--order", "O-114", "--owner", "Millbrook", "--complaint", "stops when warm",
                "--preserve", "the owner's program", "--file", "plate.jpg"));
        assertEquals("R-1  C16-004711  Tarn C16 modular controller", received.lastLine());
        String list = done(bench("", "received")).said();
        assertTrue(list.contains("R-1 C16-004711 waiting for its test, since 2026-03-02"), list);
        assertTrue(list.contains("order O-114, Millbrook complaint: stops when warm to be preserved: the owner's program"), list);
        refused(bench("", "receive", "C16-004711"), "is in the house already: receipt R-1, waiting for its test");
        done(bench("", "receive", "--correct", "R-1", "--order", "O-115", "--reason", "other order"));
        String story = done(bench("", "received", "C16-004711")).said();
        assertTrue(story.contains("order O-115, owner Millbrook; complaint: stops when warm"), story);
        assertTrue(story.contains("files: plate.jpg"), story);
        refused(bench("", "receive", "--give-back", "R-1"), "A reason is needed");
        refused(bench("", "receive", "--give-back", "R-2", "--reason", "x"), "There is no receipt R-2");
        done(bench("", "receive", "--give-back", "R-1", "--reason", "wanted back"));
        assertTrue(done(bench("", "received")).out().contains("No unit is in the house"));
        assertTrue(done(bench("", "received", "--all")).said().contains("given back untested"));
        assertEquals(0, bench.run("verify", bench.ledger().toString()).status());
    }

    @Test
    void aBatchIsScannedOneAfterTheOtherAndDuplicatesAreTold() {
        CommandRunner.Ended scanned = done(bench("\u0002C16-000001\u0003\nC16-000002\nC16-000001\nX-9\nX-9\n\nC16-000003\n", "receive", "--order", "O-1"));
        assertTrue(scanned.err().contains("C16-000001 was scanned twice"), scanned.err());
        assertTrue(scanned.err().contains("X-9 does not look like a serial number of any family here (C16-######)"), scanned.err());
        assertEquals("3 units were received.", scanned.lastLine());
        String list = done(bench("", "received")).said();
        assertTrue(list.contains("R-3 X-9"), list);
        assertFalse(list.contains("C16-000003"), list);
    }

    @Test
    void whatLooksWrongIsAskedAndATagStandsForAPlate() {
        refused(bench("", "receive", "C16/4711"), "Read the plate again");
        done(bench("", "receive", "C16/4711", "--as-typed"));
        done(bench("", "receive", "W-31", "--plate", "missing"));
        refused(bench("", "receive", "W-32", "--plate", "gone"), "It is read, missing or unreadable");
        assertTrue(done(bench("", "received", "W-31")).said().contains("plate: missing"));
        assertTrue(done(bench("", "received", "C16/4711")).said().contains("plate: kept as typed"));
        assertTrue(done(bench("", "received", "C16-009999")).said().contains("Nothing is on record of this unit."));
    }

    private void rejected() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(bench.ledger())) {
            Workshop workshop = ledger.workshop(new Station("bench2", "Benchwright 0.1.0"), bench.time().benchTime());
            workshop.attach(Files.write(folder.resolve("photo.jpg"), new byte[] {1}));
            Sitting sitting = workshop.open(
                    new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber("C16-004711"), new Actor("QN", Role.TECHNICIAN), false);
            new GoodTechnician(bench.time()).but("lamps.pwr", new Fact.Seen("pwr", Fact.Sight.NO, "dark")).carryToTheEnd(sitting);
        }
    }

    @Test
    void theTagTellsWhereAUnitStands() throws Exception {
        done(bench("", "receive", "C16-004711", "--order", "O-114"));
        done(bench("", "received", "C16-004711", "--tag", "tag.pdf"));
        long waiting = Files.size(folder.resolve("tag.pdf"));
        bench.approved();
        onTest();
        done(bench("", "received", "C16-004711", "--tag", "tag.pdf", "--contact", "technician QN, ext. 17"));
        assertTrue(Files.size(folder.resolve("tag.pdf")) > waiting, "it has cautions now");
        refused(bench("", "received", "C16-009999", "--tag", "tag.pdf"), "is not in the house");
    }

    private void onTest() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(bench.ledger())) {
            ledger.workshop(new Station("bench2", "Benchwright 0.1.0"), bench.time().benchTime()).open(
                    new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber("C16-004711"), new Actor("QN", Role.TECHNICIAN), false);
        }
    }

    @Test
    void aRepairStandsBetweenATestAndItsRetest() throws Exception {
        bench.approved();
        refused(bench("", "repaired", "C16-004711", "--part", "C12, L-7"), "No test of unit C16-004711 waits for a repair");
        done(bench("", "receive", "C16-004711", "--owner", "Millbrook"));
        rejected();
        String list = done(bench("", "received")).said();
        assertTrue(list.contains("rejected, since"), list);
        done(bench("", "repaired", "C16-004711", "--what", "power stage", "--part", "C12, L-7"));
        assertTrue(done(bench("", "received")).said().contains("repaired, waiting for its retest"));
        CommandRunner.Ended retest = bench.carryOut("y\n+ so far\n");
        assertEquals(5, retest.status(), retest.out() + retest.err());
        String story = done(bench("", "received", "C16-004711")).said();
        assertTrue(story.contains("power stage; C12 (lot L-7)"), story);
        assertEquals(0, bench.run("verify", bench.ledger().toString()).status());
    }
}
