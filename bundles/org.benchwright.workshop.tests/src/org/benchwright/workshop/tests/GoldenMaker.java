package org.benchwright.workshop.tests;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.FieldReturn;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.instrument.InstrumentFact;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.receipt.KeptFile;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.receipt.ReplacedPart;
import org.benchwright.engine.record.DepartureDecision;
import org.benchwright.engine.record.Disposition;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.ledger.LedgerBackup;
import org.benchwright.workshop.Approvals;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.InstrumentRegister;
import org.benchwright.workshop.Receipts;
import org.benchwright.workshop.Registrar;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;

/**
 * Makes a golden ledger: with everything in it that the format of its day can hold. Run once before a release, with the folder for the files as
 * its argument; what it makes then is kept for ever, and never made anew.
 */
public final class GoldenMaker {

    /** Length of the attachment that lies beside; its bytes are all nought. */
    static final int ATTACHMENT = 300 << 10;

    private static final String SERIAL = "C16-004711";
    private static final Actor QN = new Actor("QN", Role.TECHNICIAN);

    private GoldenMaker() {
    }

    /** Makes {@code format-N.ledger} and {@code format-N.pub} in the folder. */
    public static void main(String[] arguments) throws Exception {
        Path target = Path.of(arguments[0]);
        Path folder = Files.createTempDirectory("golden");
        fill(folder);
        Path copy = LedgerBackup.write(folder.resolve("bench.ledger"), folder.resolve("whole"), false);
        Files.copy(copy, target.resolve("format-2.ledger"));
        Files.copy(folder.resolve("bench-key.pub"), target.resolve("format-2.pub"));
    }

    private static void fill(Path folder) throws Exception {
        MovedTime time = new MovedTime();
        SealedTests tests = new SealedTests(folder, time);
        Path photo = Files.write(folder.resolve("photo.bin"), new byte[ATTACHMENT]);
        Station station = new Station("bench 2", "Benchwright 0.1.0");
        String rejected;
        String accepted;
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            Receipts receipts = ledger.receipts(station, time.benchTime());
            KeptFile kept = receipts.keep(photo);
            receipts.receive(new ReceiptFact.Received("O-114", "Millbrook", SERIAL, Plate.READ, Optional.of("tarn_c16"), "stops when warm", "",
                    "the owner's program", List.of(kept), Optional.empty()), QN);
            Workshop workshop = ledger.workshop(station, time.benchTime());
            workshop.attach(Files.write(folder.resolve("plate.jpg"), new byte[] {1}));
            rejected = carriedOut(workshop, new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark")));
            receipts.repaired(rejected, "power stage", List.of(new ReplacedPart("C12", "L-7")), List.of(), QN);
            accepted = carriedOut(workshop, new GoodTechnician(time));
        }
        tests.sign(rejected, "HD", new RecordFact.NonconformityDecided(tests.deviation(rejected), Disposition.REPAIR, "the power stage is replaced"));
        String departed = tests.departed();
        tests.sign(departed, "MJ", new RecordFact.DepartureDecided(tests.deviation(departed), DepartureDecision.ACCEPTED, "it read right against another"));
        tests.sign(departed, "HD", new RecordFact.Reviewed(true, ""));
        long volts = tests.record(accepted).run().events().stream().filter(event -> event.body() instanceof Observation.Measured).findFirst()
                .orElseThrow()
                .sequence();
        tests.sign(accepted, "QN", new RecordFact.Amended(volts, "24,11", "read from the photo"));
        tests.sign(accepted, "QN", new RecordFact.HandedOver("the owner", accepted + "/2"));
        tests.reviewAll();
        String drawn = tests.accepted();
        tests.sign(drawn, "HD", new RecordFact.Reviewed(true, ""));
        tests.endReviews();
        unitsInTheHouse(tests, time, station, photo.resolveSibling("face.jpg"));
        instruments(tests, time);
        provedBench(tests, time, station);
        new SeldomMet(tests.file(), time, station).test();
        ends(tests);
        tests.rehearsal();
        tests.open();
        tests.sign(drawn, "MJ", new RecordFact.AttachmentWithdrawn(tests.record(drawn).attachments().get(0).event(), Digest.of(new byte[] {1}), "a face"));
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            time.advance(Duration.ofDays(40));
            ledger.workshop(station, time.benchTime()).returned(accepted,
                    new FieldReturn(LocalDate.ofInstant(time.instant(), time.getZone()), "stops when warm", FieldReturn.Fault.CONFIRMED), QN);
            Registrar registrar = ledger.registrar(time.benchTime());
            registrar.rotate(Approved.by("KM"), "five wet otters".toCharArray());
            LocalDate today = LocalDate.ofInstant(time.instant(), time.getZone());
            registrar.authorise(Approved.by("LW"), "QN", "tarn_c16", "c16_acceptance", today, today.plusYears(1));
            registrar.endAuthorisation(Approved.by("LW"), "QN", "tarn_c16", "c16_acceptance", "works elsewhere");
            registrar.end(Approved.by("LW"), "HD", Role.AUDITOR, "works elsewhere");
            registrar.revoke(Approved.by("LW"), "HD", "", Optional.empty(), "not needed any more");
        }
    }

    /** Received, said anew, a photo of somebody withdrawn, given back. */
    private static void unitsInTheHouse(SealedTests tests, MovedTime time, Station station, Path face) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            Receipts receipts = ledger.receipts(station, time.benchTime());
            KeptFile shown = receipts.keep(Files.write(face, new byte[] {2}));
            ReceiptFact.Received said = new ReceiptFact.Received("O-115", "Millbrook", "C16-004712", Plate.READ, Optional.of("tarn_c16"), "", "", "",
                    List.of(shown), Optional.empty());
            long receipt = receipts.receive(said, QN).number();
            receipts.correct(receipt, "the owner's name was read again", said, QN);
            ledger.houseFiles(time.benchTime()).withdraw(receipt, shown.digest(), "a face", Approved.by("MJ"));
            receipts.giveBack(receipt, "wanted back untested", QN);
        }
    }

    private static void instruments(SealedTests tests, MovedTime time) throws Exception {
        InstrumentFact.Added meter = (InstrumentFact.Added) InstrumentRegisterTest.ADDED;
        String asset = "M-23";
        LocalDate today = LocalDate.ofInstant(time.instant(), time.getZone());
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            InstrumentRegister register = ledger.instrumentRegister(time.benchTime());
            for (InstrumentFact fact : List.of(new InstrumentFact.Added(asset, meter.title(), meter.serial(), meter.ranges(), meter.custody()),
                    new InstrumentFact.Calibrated(asset, "C-9", today, Optional.of(today.plusYears(1)), List.of()),
                    new InstrumentFact.Moved(asset, "bench 3"), new InstrumentFact.Retired(asset, "dropped"),
                    new InstrumentFact.Reinstated(asset, "looked at, nothing found"))) {
                register.sign(fact, Optional.of(Approved.by("RB")));
            }
        }
    }

    /** A known-good unit, and a test that waits for it; on the way what else may stand in a test beside its answers. */
    private static void provedBench(SealedTests tests, MovedTime time, Station station) throws Exception {
        Plan needing = ProvedBenchTest.needing("c16_on_a_proved_bench");
        Plan proving = ProvedBenchTest.proving();
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            Approved.approve(ledger, time.benchTime(), needing, SamplePlan.TEXT);
            Approved.approve(ledger, time.benchTime(), proving, SamplePlan.TEXT);
            Workshop workshop = ledger.workshop(station, time.benchTime());
            new GoodTechnician(time).carryToTheEnd(workshop.open(new CompiledProcedure(proving, SamplePlan.TEXT), new SerialNumber("C16-000001"), QN, false));
            Sitting sitting = workshop.open(new CompiledProcedure(needing, SamplePlan.TEXT), new SerialNumber("C16-004713"), QN, false);
            sitting.record(new Fact.Placed("rack 1, position 2"));
            sitting.record(new Fact.Identified("C16-004713"));
            sitting.record(new Fact.Noted("It smells of smoke."));
            GoodTechnician technician = new GoodTechnician(time);
            technician.carryOnUntil(sitting, "plate.damage");
            sitting.record(technician.next(sitting));
            sitting.record(new Fact.Struck(sitting.run().strikeable().orElseThrow().sequence()));
            technician.carryOnUntil(sitting, "lamps.on");
            sitting.record(new Fact.Abandoned("bench needed"));
            technician.carryToTheEnd(sitting);
            ledger.approvals(time.benchTime()).withdraw(Approvals.key(needing), needing.revision(), "not needed any more", Approved.by("KM"));
        }
    }

    /** Recalled, void, and superseded by the test that repeats it. */
    private static void ends(SealedTests tests) throws Exception {
        String recalled = tests.accepted();
        tests.sign(recalled, "QN", new RecordFact.HandedOver("the owner", recalled + "/1"));
        tests.sign(recalled, "KM", new RecordFact.Recalled("mixed up with another"));
        String repeated = tests.departed();
        tests.sign(repeated, "MJ", new RecordFact.DepartureDecided(tests.deviation(repeated), DepartureDecision.REPEAT, "the meter was past due"));
        tests.sign(repeated, "KM", new RecordFact.Superseded(tests.accepted(), "tested again"));
        tests.sign(tests.accepted(), "KM", new RecordFact.Voided("another unit was on the bench"));
    }

    private static String carriedOut(Workshop workshop, GoodTechnician technician) throws Exception {
        Sitting sitting = workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber(SERIAL), QN, false);
        technician.carryToTheEnd(sitting);
        return sitting.test();
    }
}
