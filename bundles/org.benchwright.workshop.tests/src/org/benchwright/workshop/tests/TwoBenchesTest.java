package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.instrument.InstrumentFact;
import org.benchwright.engine.receipt.KeptFile;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.Standing;
import org.benchwright.ledger.PostgresLedger;
import org.benchwright.ledger.SharedPlace;
import org.benchwright.ledger.tests.PostgresServer;
import org.benchwright.testkit.PropertyTest;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.Receipts;
import org.benchwright.workshop.RecordFault;
import org.benchwright.workshop.Sharing;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** One unit on two benches that share a ledger: whatever they do and forward in whatever order, no ledger calls it a fault. */
class TwoBenchesTest implements PropertyTest {

    private static final Actor QN = new Actor("QN", Role.TECHNICIAN);
    private static final String SERIAL = "C16-004711";
    private static final int DEEDS = 6;

    private static Optional<PostgresServer> server = Optional.empty();
    private static Optional<Path> template = Optional.empty();

    @AfterAll
    static void stop() throws Exception {
        if (template.isPresent()) {
            delete(template.get());
            template = Optional.empty();
        }
        if (server.isPresent()) {
            server.get().close();
            server = Optional.empty();
        }
    }

    /** Another one on each bench. */
    private static byte[] photo(int bench) {
        return new byte[] {(byte) (1 + bench)};
    }

    /** A bench folder with people, auditors and an approved procedure, made once. */
    private static synchronized Path employed() throws Exception {
        if (template.isEmpty()) {
            Path made = Files.createTempDirectory("employed");
            MovedTime time = new MovedTime();
            Approved.in(made.resolve("bench.ledger"), time.benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
            try (BenchLedger ledger = BenchLedger.open(made.resolve("bench.ledger"))) {
                Approved.auditors(ledger, time.benchTime());
            }
            template = Optional.of(made);
        }
        return template.get();
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path each : all.toList()) {
                Path target = to.resolve(from.relativize(each));
                if (Files.isDirectory(each)) {
                    Files.createDirectories(target);
                } else {
                    Files.copy(each, target, StandardCopyOption.COPY_ATTRIBUTES);
                }
            }
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }

    private static synchronized PostgresServer server() throws Exception {
        if (server.isEmpty()) {
            server = Optional.of(PostgresServer.start());
        }
        return server.get();
    }

    /** Two benches with the same people's keys, on a shared ledger of their own. */
    private static final class Benches implements AutoCloseable {
        private final Path folder = Files.createTempDirectory("benches");
        private final MovedTime time = new MovedTime();
        private final String url;
        private final List<List<String>> rejected = List.of(new ArrayList<>(), new ArrayList<>());
        private final Set<String> mended = new HashSet<>();

        Benches() throws Exception {
            copy(employed(), file(0).getParent());
            String database = server().newDatabase();
            url = server().url(database);
            PostgresLedger.install(new SharedPlace(url, PostgresServer.OWNER, PostgresServer.PASSWORD), PostgresServer.BENCH);
            share(0);
            sharing(0).lendBooks();
            BenchLedger.open(file(1)).close();
            share(1);
            forward(1);
            copy(file(0).resolveSibling("people"), file(1).resolveSibling("people"));
        }

        Path file(int bench) throws IOException {
            return Files.createDirectories(folder.resolve("bench" + bench)).resolve("bench.ledger");
        }

        private void share(int bench) throws Exception {
            Files.writeString(file(bench).resolveSibling("shared.properties"), "url = " + url + "\nuser = " + PostgresServer.BENCH + "\n");
            Path password = Files.writeString(file(bench).resolveSibling("shared.password"), PostgresServer.PASSWORD + "\n");
            Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-------"));
        }

        private Sharing sharing(int bench) throws Exception {
            return Sharing.of(file(bench), Map.of(), time.benchTime()).orElseThrow();
        }

        void forward(int bench) throws Exception {
            sharing(bench).forward();
        }

        private static Station station(int bench) {
            return new Station("bench " + bench, "Benchwright 0.1.0");
        }

        String test(int bench, boolean good) throws Exception {
            time.advance(Duration.ofMinutes(1));
            try (BenchLedger ledger = BenchLedger.open(file(bench))) {
                Workshop workshop = ledger.workshop(station(bench), time.benchTime());
                workshop.attach(Files.write(folder.resolve("plate.jpg"), photo(bench)));
                Sitting sitting = workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber(SERIAL), QN, false);
                GoodTechnician technician = new GoodTechnician(time).but("plate.photo",
                        new Observation.Attached("photo", Digest.of(photo(bench)), "plate.jpg"));
                (good ? technician : technician.but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark"))).carryToTheEnd(sitting);
                if (!good) {
                    rejected.get(bench).add(sitting.test());
                }
                return sitting.test();
            }
        }

        void receive(int bench) throws Exception {
            time.advance(Duration.ofMinutes(1));
            try (BenchLedger ledger = BenchLedger.open(file(bench))) {
                ledger.receipts(station(bench), time.benchTime()).receive(new ReceiptFact.Received("O-114", "Millbrook", SERIAL, Plate.READ,
                        Optional.of("tarn_c16"), "stops when warm", "", "", List.of(), Optional.empty()), QN);
            } catch (RefusedException alreadyThere) {
                assertTrue(alreadyThere.getMessage().contains(SERIAL), alreadyThere.getMessage());
            }
        }

        Digest receivePhoto(int bench) throws Exception {
            try (BenchLedger ledger = BenchLedger.open(file(bench))) {
                Receipts receipts = ledger.receipts(station(bench), time.benchTime());
                KeptFile photo = receipts.keep(Files.write(folder.resolve("face.jpg"), ErasedBytes.photo(400 << 10)));
                receipts.receive(new ReceiptFact.Received("O-114", "Millbrook", SERIAL, Plate.READ, Optional.of("tarn_c16"), "", "", "", List.of(photo),
                        Optional.empty()), QN);
                return photo.digest();
            }
        }

        void withdrawPhoto(int bench, Digest photo) throws Exception {
            try (BenchLedger ledger = BenchLedger.open(file(bench))) {
                ledger.houseFiles(time.benchTime()).withdraw(1, photo, "a face can be seen", Approved.by("MJ"));
            }
        }

        /** Whether anything is left of the photo in a bench's folder. */
        boolean has(int bench, Digest photo) throws Exception {
            assertEquals(Digest.of(ErasedBytes.photo(400 << 10)), photo);
            return ErasedBytes.found(file(bench).getParent(), ErasedBytes.photo(400 << 10));
        }

        /** Writes a repair down after the bench's last test, where it was rejected. */
        void repair(int bench) throws Exception {
            List<String> own = rejected.get(bench);
            if (!own.isEmpty() && mended.add(own.get(own.size() - 1))) {
                time.advance(Duration.ofMinutes(1));
                try (BenchLedger ledger = BenchLedger.open(file(bench))) {
                    Receipts receipts = ledger.receipts(station(bench), time.benchTime());
                    receipts.repaired(own.get(own.size() - 1), "fuse F2", List.of(), List.of(), QN);
                } catch (RefusedException followed) {
                    assertTrue(followed.getMessage().contains("was followed by"), followed.getMessage());
                }
            }
        }

        void sign(int bench, String test, String person, RecordFact fact) throws Exception {
            try (BenchLedger ledger = BenchLedger.open(file(bench))) {
                ledger.afterSeal(time.benchTime()).sign(test, fact, Approved.by(person));
            }
        }

        void register(int bench, InstrumentFact fact) throws Exception {
            time.advance(Duration.ofMinutes(1));
            try (BenchLedger ledger = BenchLedger.open(file(bench))) {
                ledger.instrumentRegister(time.benchTime()).sign(fact, Optional.of(Approved.by("RB")));
            }
        }

        /** On bench 0, by the register as it stands there. */
        String testWithRegisteredMeter() throws Exception {
            try (BenchLedger ledger = BenchLedger.open(file(0))) {
                Workshop workshop = ledger.workshop(station(0), time.benchTime());
                workshop.attach(Files.write(folder.resolve("plate.jpg"), new byte[] {1}));
                Sitting sitting = workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber(SERIAL), QN, false);
                Fact meter = InstrumentRegisterTest.named(ledger.instruments().find("M-17").orElseThrow());
                new GoodTechnician(time).but("instrument.meter", meter).carryToTheEnd(sitting);
                return sitting.test();
            }
        }

        LedgerReport own(int bench) throws Exception {
            return BenchLedger.verify(file(bench));
        }

        LedgerReport shared() throws Exception {
            Path copy = Files.createTempDirectory(folder, "copy").resolve("shared.ledger");
            sharing(0).copyTo(copy);
            return BenchLedger.verify(copy);
        }

        void assertSound() throws Exception {
            for (LedgerReport report : List.of(own(0), own(1), shared())) {
                assertEquals(List.of(), report.decisions());
                assertTrue(report.sound(), report.toString());
            }
        }

        @Override
        public void close() throws Exception {
            delete(folder);
        }
    }

    /** Another history in every run; more of them, one after the other, found nothing else. */
    @Property(tries = 1, shrinking = ShrinkingMode.OFF)
    void whateverTwoBenchesDoAndForwardIsNoFault(@ForAll @Size(min = 5, max = 7) List<@IntRange(max = 2 * DEEDS - 1) Integer> deeds) throws Exception {
        try (Benches benches = new Benches()) {
            for (int deed : deeds) {
                int bench = deed % 2;
                switch (deed / 2) {
                    case 0, 1 -> benches.test(bench, false);
                    case 2 -> benches.test(bench, true);
                    case 3 -> benches.repair(bench);
                    case 4 -> benches.receive(bench);
                    default -> benches.forward(bench);
                }
            }
            int first = deeds.size() % 2;
            benches.forward(first);
            benches.assertSound();
            benches.forward(1 - first);
            benches.assertSound();
        }
    }

    /** Bench 0 doesn't know the test of bench 1, and the repair after it is in the book of both. */
    @Test
    void aRepairAfterATestOnAnotherBenchIsNoFaultAndIsTold() throws Exception {
        try (Benches benches = new Benches()) {
            String failed = benches.test(1, false);
            benches.test(0, false);
            benches.forward(0);
            benches.repair(1);
            benches.forward(0);
            assertEquals(List.of("another bench tells of a repair after " + failed + ", which is not in this ledger, or not sealed in it (yet)"),
                    reasons(benches.own(0).late()));
            assertEquals(List.of(), benches.own(1).late());
            benches.assertSound();
        }
    }

    @Test
    void aTestOnAnotherBenchTakesThePlaceOfOneThatWentOut() throws Exception {
        try (Benches benches = new Benches()) {
            String out = benches.test(0, true);
            benches.sign(0, out, "KM", new RecordFact.HandedOver("its owner", out + "/1"));
            String again = benches.test(1, true);
            RecordFact superseded = new RecordFact.Superseded(again, "it came back and was tested again");
            String refusal = assertThrows(RefusedException.class, () -> benches.sign(0, out, "KM", superseded)).getMessage();
            assertTrue(refusal.contains("is no sealed test of unit"), refusal);
            benches.forward(1);
            benches.sign(0, out, "KM", superseded);
            try (BenchLedger ledger = BenchLedger.openReadOnly(benches.file(0))) {
                assertEquals(Standing.SUPERSEDED, ledger.test(out).orElseThrow().record().orElseThrow().standing());
            }
            assertEquals(List.of("it is superseded by " + again + ", which is not in this ledger (yet): that it is a sealed test of unit " + SERIAL
                    + " can't be seen here"), reasons(benches.own(0).late()));
            benches.forward(0);
            benches.assertSound();
            assertEquals(List.of(), benches.shared().late(), "both are there");
        }
    }

    /** The calibration was entered on bench 1 after the test on bench 0, and arrives before it. */
    @Test
    void anInstrumentThatWasCalibratedBeforeTheTestArrivedIsNoFaultAndIsTold() throws Exception {
        try (Benches benches = new Benches()) {
            benches.register(0, InstrumentRegisterTest.ADDED);
            String test = benches.testWithRegisteredMeter();
            benches.forward(1);
            benches.register(1, new InstrumentFact.Calibrated("M-17", "C-9", LocalDate.of(2026, 3, 1), Optional.of(LocalDate.of(2027, 3, 1)), List.of()));
            benches.forward(0);
            benches.assertSound();
            assertEquals(1, benches.shared().late().size(), benches.shared().late().toString());
            assertEquals(test, benches.shared().late().get(0).test());
        }
    }

    /** A photo that had been forwarded before it was withdrawn can only be taken away by the shared ledger's owner. */
    @Test
    void aWithdrawalReachesTheSharedLedgerAndItsOwnerErases() throws Exception {
        try (Benches benches = new Benches()) {
            String early = benches.test(1, false);
            benches.sign(1, early, "MJ", new RecordFact.AttachmentWithdrawn(attached(benches, 1, early), Digest.of(photo(1)), "a face can be seen"));
            benches.forward(1);
            assertTrue(benches.shared().withdrawn().get(0).reason().endsWith("a face can be seen"), "it never arrived: " + benches.shared().withdrawn());
            String forwarded = benches.test(0, false);
            benches.forward(0);
            benches.sign(0, forwarded, "MJ", new RecordFact.AttachmentWithdrawn(attached(benches, 0, forwarded), Digest.of(photo(0)), "a face can be seen"));
            benches.forward(0);
            assertTrue(benches.shared().withdrawn().get(1).reason().contains("its bytes are still here"), benches.shared().withdrawn().toString());
            assertEquals(1, benches.sharing(1).erase(PostgresServer.OWNER, PostgresServer.PASSWORD.toCharArray()));
            benches.assertSound();
            assertTrue(benches.shared().withdrawn().get(1).reason().endsWith("a face can be seen"), benches.shared().withdrawn().toString());
        }
    }

    /** The photo is on both benches, since both have the book; either bench erases its own as soon as it has the withdrawal. */
    @Test
    void aFileOfAReceiptThatIsWithdrawnOnOneBenchGoesOnTheOtherToo() throws Exception {
        try (Benches benches = new Benches()) {
            Digest photo = benches.receivePhoto(1);
            benches.forward(0);
            assertTrue(benches.has(0, photo));
            benches.withdrawPhoto(1, photo);
            assertFalse(benches.has(1, photo));
            assertTrue(benches.own(0).sound() && benches.has(0, photo), "it does not know yet");
            benches.forward(0);
            assertFalse(benches.has(0, photo));
            benches.assertSound();
            assertTrue(benches.shared().withdrawn().get(0).reason().contains("its bytes are still here"), benches.shared().withdrawn().toString());
            assertEquals(1, benches.sharing(1).erase(PostgresServer.OWNER, PostgresServer.PASSWORD.toCharArray()));
            benches.assertSound();
            for (LedgerReport report : List.of(benches.own(0), benches.own(1), benches.shared())) {
                assertTrue(reasons(report.withdrawn()).get(0).endsWith("was withdrawn by auditor MJ: a face can be seen"), report.withdrawn().toString());
            }
        }
    }

    private static long attached(Benches benches, int bench, String test) throws Exception {
        try (BenchLedger ledger = BenchLedger.openReadOnly(benches.file(bench))) {
            return ledger.test(test).orElseThrow().record().orElseThrow().attachments().get(0).event();
        }
    }

    private static List<String> reasons(List<RecordFault> told) {
        return told.stream().map(RecordFault::reason).toList();
    }
}
