package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.GoodTechnician;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The register of instruments at the terminal, and what a step makes of it. */
class InstrumentCommandsTest extends OnABench {

    private static final String RANGE = "reads 0 V to 60 V dc, 0.05 % + 2 digits of 0.01 V";

    /** The one place where instruments begin: a bench's own ledger, which has no people yet. */
    @BeforeEach
    void beginLedger() throws Exception {
        BenchLedger.open(bench.ledger()).close();
    }

    @Test
    void anInstrumentIsAddedCalibratedAndRetired() {
        bench("", "instruments", "add", "M-17", "--title", "Multimeter", "--range", RANGE, "--custody", "bench 2").done();
        bench("", "instruments", "calibrated", "M-17", "--certificate", "C-9", "--on", "2026-01-10", "--due", "2026-03-01").done();
        String list = bench("", "instruments").done().said();
        assertTrue(list.contains("M-17 Multimeter (past due since 2026-03-01)"), list);
        assertTrue(list.contains("certificate C-9, calibrated on 2026-01-10, due 2026-03-01 at bench 2 reads 0 V to 60 V dc, 0.05 % of reading + 2 digits of 0.01 V"), list);
        bench("", "instruments", "retire", "M-17", "--reason", "was dropped").done();
        assertTrue(bench("", "instruments").done().said().contains("out of service: was dropped"));
        bench("", "instruments", "reinstate", "M-17", "--reason", "calibrated").done();
        bench("", "instruments", "add", "m-17", "--title", "Other").refused("There is an instrument m-17 already");
        bench("", "instruments", "add", "M-18", "--title", "Other", "--range", "up to 60 V").refused("is no range");
        bench("", "instruments", "moved", "M-99", "--custody", "LW").refused("no instrument M-99");
        bench("", "instruments", "moved", "M-17", "--custody", "LW", "--by", "XX").refused("There is nobody with the id XX");
        ledgerIsSound();
    }

    /** None is given here: what can't be right is said before anybody types one. */
    @Test
    void daysAndListsAreReadBeforeThePassword() throws Exception {
        bench("", "instruments", "calibrated", "M-17", "--certificate", "C-9", "--on", "yesterday", "--by", "RB").refused("\"yesterday\" is not a day");
        bench("", "instruments", "calibrated", "M-17", "--certificate", "C-9", "--on", "2026-01-10", "--due", "2026-13-01", "--by", "RB")
                .refused("\"2026-13-01\" is not a day");
        bench("", "instruments", "import", "nothing.csv", "--by", "RB").refused("nothing.csv can't be read: there is no such file");
        Path list = Files.write(folder.resolve("old.csv"), "asset,title\nM-3,M\u00e4\u00dfzeug\n".getBytes(StandardCharsets.ISO_8859_1));
        bench("", "instruments", "import", list.toString(), "--by", "RB").refused("old.csv can't be read: it is not text in UTF-8; save the list as CSV in UTF-8");
    }

    @Test
    void aCertificateInAListNeedsItsDay() throws Exception {
        Path list = Files.writeString(folder.resolve("meters.csv"), "asset,title,certificate,calibrated\nM-3,Meter,C-9,\n");
        bench("", "instruments", "import", list.toString()).refused("Line 2: a certificate is named, but not the day of the calibration");
    }

    @Test
    void onceThereArePeopleAnEngineerSigns() throws Exception {
        bench.approved();
        bench("", "instruments", "add", "M-17", "--title", "Multimeter").refused("People have keys");
        bench(Approved.PASSWORD + "\n", "instruments", "add", "M-17", "--title", "Multimeter", "--by", "LW").refused("it takes an engineer or a supervisor");
        bench("quite another\n", "instruments", "add", "M-17", "--title", "Multimeter", "--by", "RB").refused("password");
        bench(Approved.PASSWORD + "\n", "instruments", "add", "M-17", "--title", "Multimeter", "--by", "RB").done();
        ledgerIsSound();
    }

    @Test
    void aListIsReadToItsEndBeforeAnythingIsSigned() throws Exception {
        Path list = folder.resolve("meters.csv");
        Files.writeString(list, "\uFEFFasset,title,ranges,certificate,calibrated,due\r\nM-1,\"Meter, digital\",\"" + RANGE + "; reads 0 A to 10 A dc, 1 % + 1 digit of 1 mA\","
                + "C-1,2026-01-10,2027-01-10\r\nM-2,Torch,,,,\r\n");
        assertEquals("2 instruments were added.", bench("", "instruments", "import", list.toString()).done().lastLine());
        assertTrue(bench("", "instruments").done().said().contains("M-1 Meter, digital (in service) certificate C-1"));
        Files.writeString(list, "asset,title\nM-3,Meter\nM-4,=1+1\n");
        bench("", "instruments", "import", list.toString()).refused("Line 3: \"=1+1\" looks like a formula");
        Files.writeString(list, "asset,name\nM-3,Meter\n");
        bench("", "instruments", "import", list.toString()).refused("The first line names the columns");
        Files.writeString(list, "asset,title\nM-3\n");
        bench("", "instruments", "import", list.toString()).refused("Line 2: it has 1 cell,");
        assertTrue(!bench("", "instruments").done().out().contains("M-3"));
        Files.writeString(list, "asset,title\nM-3,Meter\nM-1,Meter\n");
        bench("", "instruments", "import", list.toString()).refused("1 entry signed; M-1 was not taken: There is an instrument M-1 already");
    }

    @Test
    void atAStepTheAssetNumberIsEnough() throws Exception {
        bench.approved();
        bench(Approved.PASSWORD + "\n", "instruments", "add", "M-17", "--title", "Multimeter", "--by", "RB", "--range",
                "reads 0 V to 60 V dc, 0.01 % + 1 digit of 0.01 V").done();
        bench(Approved.PASSWORD + "\n", "instruments", "calibrated", "M-17", "--certificate", "C-9", "--on", "2026-01-10", "--due", "2027-01-10", "--by", "RB").done();
        try (BenchLedger ledger = BenchLedger.open(bench.ledger())) {
            Workshop workshop = ledger.workshop(new Station("bench2", "Benchwright 0.1.0"), bench.time().benchTime());
            workshop.attach(Files.write(folder.resolve("photo.jpg"), new byte[] {1}));
            Sitting sitting = workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber("C16-004711"),
                    new Actor("QN", Role.TECHNICIAN), false);
            new GoodTechnician(bench.time()).carryOnUntil(sitting, "instrument.meter");
        }
        CommandRunner.Ended byHand = bench.carryOut("y\nu\nM-17, 0.02 V, k 2, due 2027-01-01\n");
        assertTrue(byHand.err().contains("Enter its asset number alone") || byHand.said().contains("Enter its asset number alone"), byHand.out() + byHand.err());
        CommandRunner.Ended scanned = bench.carryOut("y\nu\n\u0002m-17\u0003\n??\n");
        assertTrue(scanned.said().contains("by the register: Multimeter, certificate C-9"), scanned.out() + scanned.err());
        ledgerIsSound();
    }
}
