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
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.receipt.KeptFile;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.receipt.ReplacedPart;
import org.benchwright.engine.record.DepartureDecision;
import org.benchwright.engine.record.Disposition;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.FieldReturn;
import org.benchwright.ledger.LedgerBackup;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Receipts;
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
            rejected = carriedOut(workshop, new GoodTechnician(time).but("lamps.pwr", new Fact.Seen("pwr", Fact.Sight.NO, "dark")));
            receipts.repaired(rejected, "power stage", List.of(new ReplacedPart("C12", "L-7")), List.of(), QN);
            accepted = carriedOut(workshop, new GoodTechnician(time));
        }
        tests.sign(rejected, "HD", new RecordFact.NonconformityDecided(tests.deviation(rejected), Disposition.REPAIR, "the power stage is replaced"));
        String departed = tests.departed();
        tests.sign(departed, "MJ", new RecordFact.DepartureDecided(tests.deviation(departed), DepartureDecision.ACCEPTED, "it read right against another"));
        tests.sign(departed, "HD", new RecordFact.Reviewed(true, ""));
        long volts = tests.record(accepted).run().events().stream().filter(event -> event.body() instanceof Fact.Measured).findFirst().orElseThrow()
                .sequence();
        tests.sign(accepted, "QN", new RecordFact.Amended(volts, "24,11", "read from the photo"));
        tests.sign(accepted, "QN", new RecordFact.HandedOver("the owner", accepted + "/2"));
        tests.reviewAll();
        String drawn = tests.accepted();
        tests.sign(drawn, "HD", new RecordFact.Reviewed(true, ""));
        tests.endReviews();
        tests.sign(drawn, "MJ", new RecordFact.AttachmentWithdrawn(tests.record(drawn).attachments().get(0).event(), Digest.of(new byte[] {1}), "a face"));
        tests.rehearsal();
        tests.open();
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            time.advance(Duration.ofDays(40));
            ledger.workshop(station, time.benchTime()).returned(accepted,
                    new FieldReturn(LocalDate.ofInstant(time.instant(), time.getZone()), "stops when warm", FieldReturn.Fault.CONFIRMED), QN);
            ledger.registrar(time.benchTime()).rotate(Approved.by("KM"), "five wet otters".toCharArray());
        }
    }

    private static String carriedOut(Workshop workshop, GoodTechnician technician) throws Exception {
        Sitting sitting = workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber(SERIAL), QN, false);
        technician.carryToTheEnd(sitting);
        return sitting.test();
    }
}
