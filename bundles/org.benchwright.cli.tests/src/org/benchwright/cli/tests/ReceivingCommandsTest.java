package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.event.Observation;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.tests.GoodTechnician;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Units come in at the terminal. */
class ReceivingCommandsTest extends OnABench {

    @BeforeEach
    void setUp() throws Exception {
        BenchLedger.open(bench.ledger()).close();
        Files.writeString(Files.createDirectories(folder.resolve("families")).resolve("tarn.family"), """
                family tarn_c16 "Tarn C16 modular controller" {
                  serial "C16-######"
                }
                """);
    }

    /** Where units come in, the families are known too. */
    @Override
    CommandRunner.Ended bench(String typed, String... words) {
        List<String> all = new ArrayList<>(List.of(words));
        all.addAll(List.of("--ledger", bench.ledger().toString()));
        if (!words[0].equals("repaired") && !words[0].equals("verify")) {
            all.addAll(List.of("--families", "families"));
        }
        return bench.typing(typed, all.toArray(String[]::new));
    }

    @Test
    void aUnitIsReceivedListedCorrectedAndGivenBack() {
        CommandRunner.Ended received = bench("", "receive", "C16-004711", "--order", "O-114", "--owner", "Millbrook", "--complaint", "stops when warm",
                "--preserve", "the owner's program", "--file", "plate.jpg").done();
        assertEquals("R-1  C16-004711  Tarn C16 modular controller", received.lastLine());
        String list = bench("", "received").done().said();
        assertTrue(list.contains("R-1 C16-004711 waiting for its test, since 2026-03-02"), list);
        assertTrue(list.contains("order O-114, Millbrook complaint: stops when warm to be preserved: the owner's program"), list);
        bench("", "receive", "C16-004711").refused("is in the house already: receipt R-1, waiting for its test");
        bench("", "receive", "--correct", "R-1", "--order", "O-115", "--reason", "other order").done();
        String story = bench("", "received", "C16-004711").done().said();
        assertTrue(story.contains("order O-115, owner Millbrook; complaint: stops when warm"), story);
        assertTrue(story.contains("files: plate.jpg"), story);
        bench("", "receive", "--give-back", "R-1").refused("A reason is needed");
        bench("", "receive", "--give-back", "R-2", "--reason", "x").refused("There is no receipt R-2");
        bench("", "receive", "--give-back", "R-1", "--reason", "wanted back").done();
        assertTrue(bench("", "received").done().out().contains("No unit is in the house"));
        assertTrue(bench("", "received", "--all").done().said().contains("given back untested"));
        ledgerIsSound();
    }

    /** A scanner that sends another encoding than UTF-8: nobody knows any more what it read. */
    @Test
    void whatWasSentInAnotherEncodingIsRefused() {
        byte[] latin = "C16-00\u00e9711\nC16-000002\n".getBytes(StandardCharsets.ISO_8859_1);
        CommandRunner.Ended scanned = bench.typing(new ByteArrayInputStream(latin), "receive", "--as-typed", "--ledger", bench.ledger().toString()).done();
        assertTrue(scanned.err().contains("What came in can't be read: C16-00\ufffd711. Have the scanner send UTF-8, or type it."), scanned.err());
        assertEquals("1 unit was received.", scanned.lastLine());
    }

    @Test
    void aBatchIsScannedOneAfterTheOtherAndDuplicatesAreTold() {
        CommandRunner.Ended scanned = bench("\u0002C16-000001\u0003\nC16-000002\nC16-000001\nX-9\nX-9\n\nC16-000003\n", "receive", "--order", "O-1").done();
        assertTrue(scanned.err().contains("C16-000001 was scanned twice"), scanned.err());
        assertTrue(scanned.err().contains("X-9 does not look like a serial number of any family here (C16-######)"), scanned.err());
        assertEquals("3 units were received.", scanned.lastLine());
        String list = bench("", "received").done().said();
        assertTrue(list.contains("R-3 X-9"), list);
        assertFalse(list.contains("C16-000003"), list);
    }

    @Test
    void scanningOnceMoreIsAskedOnlyWhereItHelps() {
        bench("", "receive", "C16-000001").done();
        CommandRunner.Ended again = bench("C16-000001\nC16-000001\n\n", "receive").done();
        assertTrue(again.err().contains("C16-000001 is in the house already"), again.err());
        assertFalse(again.err().contains("once more"), again.err());
        CommandRunner.Ended doubted = bench("X-9\nC16-000002\nX-9\n\n", "receive").done();
        assertEquals(2, doubted.err().split("If the plate says so, scan it once more", -1).length - 1, doubted.err());
        assertEquals("1 unit was received.", doubted.lastLine());
    }

    @Test
    void aUnitWhoseNumberBeginsLikeATestIsNoTest() throws Exception {
        bench("", "repaired", "T-4711", "--what", "fuse").refused("No test of unit T-4711 waits for a repair");
    }

    /** Those before the bad one are on record already, so the same list could not be entered again. */
    @Test
    void aUnitOfAListThatIsRefusedKeepsNoneOfTheOthersOut() {
        CommandRunner.Ended listed = bench("", "receive", "C16-000001", "X-9", "C16-000003", "--order", "O-1");
        listed.refused("X-9 does not look like a serial number of any family here");
        assertEquals("2 units were received.", listed.lastLine());
        String list = bench("", "received").done().said();
        assertTrue(list.contains("C16-000001") && list.contains("C16-000003") && !list.contains("X-9"), list);
    }

    /** Kept as typed it would be another unit, without what happened to this one before. */
    @Test
    void whatMayHaveBeenMeantIsToldWhereTheMaskTellsIt() {
        bench("", "receive", "c16-004711").refused("keep it as typed (at the terminal --as-typed). Perhaps C16-004711 is meant: enter that.");
        bench("", "receive", "]C1C16-004711").refused("Perhaps C16-004711 is meant");
        bench("", "receive", "C16-004711C16-004712").refused("two scans one behind the other, C16-004711 and C16-004712: scan one after the other.");
        assertTrue(bench("", "received", "c16-004711").done().said().contains("Perhaps C16-004711 is meant"));
    }

    @Test
    void aFamilyThatIsNotKnownIsToldWithThoseThatAre() throws Exception {
        bench("", "receive", "C16-004711", "--family", "tarn_z9").refused("There is no family tarn_z9 here. Known are: tarn_c16.");
        bench.typingOnLedger("", "receive", "C16-004711", "--family", "tarn_c16")
                .refused("There is no family tarn_c16 here. None is known: say in which folder they are.");
    }

    @Test
    void whatLooksWrongIsAskedAndATagStandsForAPlate() {
        bench("", "receive", "C16/4711").refused("Read the plate again");
        bench("", "receive", "C16/4711", "--as-typed").done();
        bench("", "receive", "W-31", "--plate", "missing").done();
        bench("", "receive", "W-32", "--plate", "gone").refused("It is read, missing or unreadable");
        assertTrue(bench("", "received", "W-31").done().said().contains("plate: missing"));
        assertTrue(bench("", "received", "C16/4711").done().said().contains("plate: kept as typed"));
        assertTrue(bench("", "received", "C16-009999").done().said().contains("Nothing is on record of this unit."));
    }

    private void rejected() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(bench.ledger())) {
            Workshop workshop = ledger.workshop(new Station("bench2", "Benchwright 0.1.0"), bench.time().benchTime());
            workshop.attach(Files.write(folder.resolve("photo.jpg"), new byte[] {1}));
            Sitting sitting = workshop.open(
                    new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber("C16-004711"), new Actor("QN", Role.TECHNICIAN), false);
            new GoodTechnician(bench.time()).but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark")).carryToTheEnd(sitting);
        }
    }

    @Test
    void theTagTellsWhereAUnitStands() throws Exception {
        bench("", "receive", "C16-004711", "--order", "O-114").done();
        bench("", "received", "C16-004711", "--tag", "tag.pdf").done();
        long waiting = Files.size(folder.resolve("tag.pdf"));
        bench.approved();
        onTest();
        bench("", "received", "C16-004711", "--tag", "tag.pdf", "--contact", "technician QN, ext. 17").done();
        assertTrue(Files.size(folder.resolve("tag.pdf")) > waiting, "it has cautions now");
        bench("", "received", "C16-009999", "--tag", "tag.pdf").refused("is not in the house");
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
        bench("", "repaired", "C16-004711", "--part", "C12, L-7").refused("No test of unit C16-004711 waits for a repair");
        bench("", "receive", "C16-004711", "--owner", "Millbrook").done();
        rejected();
        String list = bench("", "received").done().said();
        assertTrue(list.contains("rejected, since"), list);
        bench("", "repaired", "C16-004711", "--what", "power stage", "--part", "C12, lot L-7").done();
        assertTrue(bench("", "received").done().said().contains("repaired, waiting for its retest"));
        CommandRunner.Ended retest = bench.carryOut("y\n+ so far\n");
        assertEquals(5, retest.status(), retest.out() + retest.err());
        String story = bench("", "received", "C16-004711").done().said();
        assertTrue(story.contains("power stage; C12 (lot L-7)"), story);
        ledgerIsSound();
    }
}
