package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.FieldReturn;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Arrival;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Mended;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.RepairDone;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.receipt.KeptFile;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.Receipt;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.receipt.ReplacedPart;
import org.benchwright.engine.receipt.Standing;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.LedgerMemory;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.Receipts;
import org.benchwright.workshop.ReceivedUnit;
import org.benchwright.workshop.RecordFault;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.StoreException;
import org.benchwright.workshop.internal.Arrivals;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.ReceiptCodec;
import org.benchwright.workshop.internal.ReceiptHistory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.sqlite.SQLiteConfig;

/** Units come in, are tested, mended and tested again; and what verification says of a book that tells something else. */
class ReceiptsTest extends AtTheBench {

    private static final String SERIAL = "C16-004711";

    private final LedgerMemory memory = new LedgerMemory();
    private final ReceiptCodec codec = new ReceiptCodec();
    private Receipts receipts;

    @BeforeEach
    void approve() throws Exception {
        Approved.people(ledger, time.benchTime());
        Approved.approve(ledger, time.benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
        receipts = ledger.receipts(STATION, time.benchTime());
        workshop.attach(plate());
    }

    private static ReceiptFact.Received unit(String serial, Plate plate) {
        return new ReceiptFact.Received("O-114", "Millbrook", serial, plate, Optional.of("tarn_c16"), "stops when warm", "one corner dented",
                "the owner's program", List.of(), Optional.empty());
    }

    private Sitting begin(String serial, boolean rehearsal) throws Exception {
        return workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber(serial), QN, rehearsal);
    }

    private String test(String serial, boolean good) throws Exception {
        Sitting sitting = begin(serial, false);
        GoodTechnician technician = new GoodTechnician(time);
        (good ? technician : technician.but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark"))).carryToTheEnd(sitting);
        return sitting.test();
    }

    private List<String> standing() throws Exception {
        return ledger.received(memory).stream().map(unit -> unit.receipt().name() + " " + unit.standing()).toList();
    }

    private LedgerReport verified() throws Exception {
        LedgerReport report = BenchLedger.verify(file());
        assertEquals(List.of(), report.links());
        assertEquals(List.of(), report.signatures());
        return report;
    }

    @Test
    void aUnitIsReceivedTestedMendedTestedAgainAndComesBackAndAllOfItIsLinked() throws Exception {
        KeptFile photo = receipts.keep(folder.resolve("plate.jpg"));
        assertEquals("plate.jpg", photo.name());
        Receipt first = receipts.receive(new ReceiptFact.Received("O-114", "Millbrook", SERIAL, Plate.READ, Optional.of("tarn_c16"),
                "stops when warm", "", "the owner's program", List.of(photo), Optional.empty()), QN);
        assertEquals(List.of("R-1 WAITING"), standing());
        assertEquals(Optional.empty(), first.said().earlier());

        Sitting open = begin(SERIAL, false);
        Arrival arrival = open.run().opening().receipt().orElseThrow();
        assertEquals("O-114", arrival.order());
        assertEquals("stops when warm", arrival.complaint());
        assertEquals(List.of("R-1 ON_TEST"), standing());
        new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark")).carryToTheEnd(open);
        assertEquals(List.of("R-1 REJECTED"), standing());

        receipts.repaired(open.test(), "power stage", List.of(new ReplacedPart("C12", "L-7")), List.of(), QN);
        assertEquals(List.of("R-1 REPAIRED"), standing());
        Sitting retest = begin(SERIAL, false);
        assertEquals(Optional.of(open.test()), retest.run().opening().predecessor());
        RepairDone done = retest.run().opening().mended().orElseThrow().repairs().get(0);
        assertEquals("C12", done.parts().get(0).part());
        assertEquals("QN", done.by());
        new GoodTechnician(time).carryToTheEnd(retest);
        assertEquals(List.of("R-1 ACCEPTED"), standing());

        time.advance(Duration.ofDays(40));
        workshop.returned(retest.test(), new FieldReturn(LocalDate.ofInstant(time.instant(), time.getZone()), "stops again",
                FieldReturn.Fault.NOT_LOOKED_FOR), QN);
        Receipt again = receipts.receive(unit(SERIAL, Plate.READ), QN);
        assertEquals(Optional.of(retest.test()), again.said().earlier());
        assertEquals(List.of("R-1 CAME_AGAIN", "R-3 WAITING"), standing());
        String third = test(SERIAL, true);
        assertEquals(3, ledger.test(third).orElseThrow().run().opening().receipt().orElseThrow().receipt());
        assertEquals(List.of("R-1 CAME_AGAIN", "R-3 ACCEPTED"), standing());
        LedgerReport report = verified();
        assertTrue(report.sound(), report::toString);
    }

    @Test
    void aUnitWithoutAPlateIsTestedUnderItsTag() throws Exception {
        assertThrows(RefusedException.class, () -> begin("W-31", false));
        receipts.receive(unit("W-31", Plate.MISSING), QN);
        String test = test("W-31", true);
        assertTrue(ledger.test(test).orElseThrow().run().events().stream().map(TestEvent::body).anyMatch(body -> body.toString().contains("no type plate")));
        assertTrue(verified().sound());
    }

    @Test
    void aRehearsalKnowsNothingOfReceipts() throws Exception {
        receipts.receive(unit(SERIAL, Plate.READ), QN);
        assertEquals(Optional.empty(), begin(SERIAL, true).run().opening().receipt());
        assertEquals(List.of("R-1 WAITING"), standing());
    }

    @Test
    void onlyTheLastTestWhichIsOverAndWasNotPassedIsFollowedByARepair() throws Exception {
        List<ReplacedPart> parts = List.of(new ReplacedPart("C12", ""));
        assertEquals("There is no test T-4K7M2-QXD9R in this ledger.", refusal("T-4K7M2-QXD9R", parts));
        Sitting open = begin(SERIAL, false);
        assertTrue(refusal(open.test(), parts).contains("is not over"));
        new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark")).carryToTheEnd(open);
        String passed = test(SERIAL, true);
        assertTrue(refusal(open.test(), parts).contains("was followed by " + passed));
        assertTrue(refusal(passed, parts).contains("The unit passed test"));
        Sitting rehearsal = begin(SERIAL, true);
        new GoodTechnician(time).carryToTheEnd(rehearsal);
        assertTrue(refusal(rehearsal.test(), parts).contains("is a rehearsal"));
        assertTrue(verified().sound());
    }

    @Test
    void anAcceptanceThatWasMadeVoidIsNoneAnyMore() throws Exception {
        Approved.auditors(ledger, time.benchTime());
        receipts.receive(unit(SERIAL, Plate.READ), QN);
        String passed = test(SERIAL, true);
        assertEquals(List.of("R-1 ACCEPTED"), standing());
        time.advance(Duration.ofHours(1));
        ledger.afterSeal(time.benchTime()).sign(passed, new RecordFact.Voided("mixed up with another unit"), Approved.by("MJ"));
        assertEquals(List.of("R-1 NOT_VALID"), standing());
        assertEquals(time.instant(), ledger.received(memory).get(0).since());
        receipts.repaired(passed, "cleaned", List.of(), List.of(), QN);
        assertEquals(List.of("R-1 REPAIRED"), standing());
        test(SERIAL, true);
        assertEquals(List.of("R-1 ACCEPTED"), standing());
        LedgerReport report = verified();
        assertTrue(report.sound(), report::toString);
    }

    private String refusal(String test, List<ReplacedPart> parts) {
        return assertThrows(RefusedException.class, () -> receipts.repaired(test, "", parts, List.of(), QN)).getMessage();
    }

    @Test
    void whatWasCorrectedAfterATestWasOpenedLeavesItSound() throws Exception {
        receipts.receive(unit(SERIAL, Plate.READ), QN);
        String test = test(SERIAL, true);
        receipts.correct(1, "another order", new ReceiptFact.Received("O-115", "", SERIAL, Plate.READ, Optional.empty(), "", "", "", List.of(),
                Optional.empty()), QN);
        assertEquals("O-114", ledger.test(test).orElseThrow().run().opening().receipt().orElseThrow().order());
        assertTrue(verified().sound());
        receipts.giveBack(1, "wanted back at once", QN);
        assertEquals(List.of("R-1 GIVEN_BACK"), standing());
    }

    /** Another ledger under the same name, or one whose beginning was rewritten, is not taken for the one that was read. */
    @Test
    void whatWasReadBeforeIsGoneOnFromAndNothingElse() throws Exception {
        Receipts again = ledger.receipts(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime(), memory);
        again.receive(unit(SERIAL, Plate.READ), QN);
        receipts.receive(unit("C16-004712", Plate.READ), QN);
        again.receive(unit("C16-004713", Plate.READ), QN);
        assertEquals(ledger.receiptBook().receipts(), again.book().receipts());
        Path other = folder.resolve("other").resolve("bench.ledger");
        try (BenchLedger another = BenchLedger.open(other)) {
            Receipts misled = another.receipts(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime(), memory);
            assertThrows(StoreException.class, () -> misled.receive(unit("C16-004714", Plate.READ), QN));
        }
    }

    @Test
    void severalStationsReceiveAtOnceAndNothingIsLost() throws Exception {
        ExecutorService stations = Executors.newFixedThreadPool(4);
        List<Future<Receipt>> entered = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            String serial = String.format("C16-%06d", i);
            entered.add(stations.submit(() -> receipts.receive(unit(serial, Plate.READ), QN)));
        }
        for (Future<Receipt> each : entered) {
            each.get();
        }
        stations.shutdown();
        assertEquals(40, ledger.receiptBook().receipts().size());
        assertEquals(40, ledger.received(memory).stream().map(ReceivedUnit::standing).filter(Standing.WAITING::equals).count());
        assertTrue(verified().sound());
    }

    // ---- forged

    private void forge(ReceiptFact fact) throws Exception {
        forge(fact, ReceiptHistory.meaning(fact));
    }

    private void forge(ReceiptFact fact, Meaning meaning) throws Exception {
        forge(fact, meaning, QN, BenchKeyStore.openOrCreate(folder));
    }

    private void forge(ReceiptFact fact, Meaning meaning, Actor by, Signer key) throws Exception {
        try (Ledger raw = SqliteLedger.open(file())) {
            raw.appendSigned(new EntryDraft(TestId.RECEIPTS, time.instant(), 1, Duration.ZERO, by, codec.kind(fact), codec.payload(fact)),
                    raw.lastSequence(TestId.RECEIPTS), new Signing(key, meaning, "bench 2", BenchKeyStore.openOrCreate(folder)));
        }
    }

    @Test
    void aReceiptThatAPersonSignsIsFound() throws Exception {
        forge(unit(SERIAL, Plate.READ), Meaning.RECEIVED, QN, Approved.key(file(), time, "KM"));
        found("B-RECEIPTS", 1, "it is told by technician QN and signed by KM; a technician tells that, and the bench signs it");
    }

    @Test
    void aRepairThatNoTechnicianTellsIsFound() throws Exception {
        String failed = test(SERIAL, false);
        forge(new ReceiptFact.Repaired(SERIAL, failed, "power stage", List.of(), List.of()), Meaning.REPAIRED, new Actor("KM", Role.SUPERVISOR),
                BenchKeyStore.openOrCreate(folder));
        found("B-RECEIPTS", 1, "it is told by supervisor KM and signed by bench");
    }

    private void found(String place, long sequence, String words) throws Exception {
        OneFault.at(place, sequence, verified(), words);
    }

    @Test
    void aForgedRepairOfATestThatWasPassedIsFound() throws Exception {
        String passed = test(SERIAL, true);
        forge(new ReceiptFact.Repaired(SERIAL, passed, "nothing", List.of(), List.of()));
        found("B-RECEIPTS", 1, "The unit passed test " + passed);
    }

    @Test
    void aRepairWhoseSignatureMeansSomethingElseIsFound() throws Exception {
        String failed = test(SERIAL, false);
        forge(new ReceiptFact.Repaired(SERIAL, failed, "power stage", List.of(), List.of()), Meaning.RECEIVED);
        found("B-RECEIPTS", 1, "does not mean \"repaired\"");
    }

    @Test
    void aForgedRepairOfAnotherUnitIsFound() throws Exception {
        String failed = test(SERIAL, false);
        forge(new ReceiptFact.Repaired("C16-000001", failed, "nothing", List.of(), List.of()));
        found("B-RECEIPTS", 1, "which is a test of " + SERIAL);
    }

    @Test
    void aForgedEarlierTestIsFound() throws Exception {
        String other = test("C16-000001", true);
        ReceiptFact.Received said = unit(SERIAL, Plate.READ);
        forge(new ReceiptFact.Received(said.order(), said.owner(), said.unit(), said.plate(), said.family(), "", "", "", List.of(), Optional.of(other)));
        found("B-RECEIPTS", 1, "names " + other + " as the test before");
    }

    @Test
    void aCorrectionOfNothingIsFound() throws Exception {
        forge(new ReceiptFact.Corrected(9, "x", unit(SERIAL, Plate.READ)));
        found("B-RECEIPTS", 1, "There is no receipt R-9.");
    }

    @Test
    void aTestThatTellsOfAnotherOwnerThanTheBookIsFound() throws Exception {
        receipts.receive(unit(SERIAL, Plate.READ), QN);
        Sitting sitting = begin(SERIAL, false);
        Fact.Opened o = sitting.run().opening();
        Arrival a = o.receipt().orElseThrow();
        Arrival forged = new Arrival(a.receipt(), a.statement(), a.instant(), a.order(), "somebody else", a.plate(), a.complaint(), a.damage(),
                a.preserve());
        TestId test = new TestId("T-4K7M2-QXD9R");
        write(test, sitting.run().events(), new Fact.Opened(o.serial(), o.family(), o.procedure(), o.revision(), o.text(), o.plan(), o.station(),
                o.software(), false, o.predecessor(), o.approval(), Optional.of(forged), Optional.empty(), Optional.empty(), Optional.empty()));
        found(test.value(), 1, "receipt R-1");
    }

    @Test
    void aTestThatTellsOfARepairThatNobodyWroteDownIsFound() throws Exception {
        String failed = test(SERIAL, false);
        Sitting sitting = begin(SERIAL, false);
        Fact.Opened o = sitting.run().opening();
        Mended forged = new Mended(List.of(new RepairDone(1, time.instant(), "QN", "all of it", List.of())));
        TestId test = new TestId("T-4K7M2-QXD9R");
        write(test, sitting.run().events(), new Fact.Opened(o.serial(), o.family(), o.procedure(), o.revision(), o.text(), o.plan(), o.station(),
                o.software(), false, Optional.of(failed), o.approval(), Optional.empty(), Optional.of(forged), Optional.empty(), Optional.empty()));
        found(test.value(), 1, "tells of a repair");
    }

    /** Whoever opens a test by a changed program can leave out what must be preserved, or what was mended after it had failed. */
    @Test
    void aTestThatDoesNotTellOfTheReceiptIsFound() throws Exception {
        receipts.receive(unit(SERIAL, Plate.READ), QN);
        time.advance(Duration.ofMinutes(2));
        opened(Optional.empty(), Optional.empty(), "it does not tell of receipt R-1, as the book of receipts told last of its unit");
    }

    @Test
    void aTestThatTellsOfTheReceiptBeforeTheLastIsFound() throws Exception {
        receipts.receive(unit(SERIAL, Plate.READ), QN);
        Optional<Arrival> first = arrival(1);
        receipts.receive(unit(SERIAL, Plate.READ), QN);
        time.advance(Duration.ofMinutes(2));
        opened(first, Optional.empty(), "it does not tell of receipt R-2");
    }

    @Test
    void aTestThatTellsOfAReceiptOfAUnitThatWentAgainIsFound() throws Exception {
        receipts.receive(unit(SERIAL, Plate.READ), QN);
        Optional<Arrival> first = arrival(1);
        receipts.giveBack(1, "wanted back at once", QN);
        time.advance(Duration.ofMinutes(2));
        opened(first, Optional.empty(), "it tells of receipt R-1 what the book of receipts did not tell then");
    }

    @Test
    void aTestThatDoesNotTellOfTheRepairIsFound() throws Exception {
        String failed = test(SERIAL, false);
        receipts.repaired(failed, "power stage", List.of(), List.of(), QN);
        time.advance(Duration.ofMinutes(2));
        opened(Optional.empty(), Optional.of(failed), "it does not tell of the repairs after " + failed);
    }

    @Test
    void whatIsEnteredInTheSameMomentNeedNotHaveBeenSeen() throws Exception {
        receipts.receive(unit(SERIAL, Plate.READ), QN);
        time.advance(Duration.ofSeconds(30));
        write(new TestId("T-4K7M2-QXD9R"), begin("C16-000001", false).run().events(), opening(Optional.empty(), Optional.empty()));
        assertTrue(verified().sound(), verified().decisions()::toString);
    }

    private Optional<Arrival> arrival(long receipt) throws Exception {
        return receipts.book().receipt(receipt).map(Arrivals::of);
    }

    private Fact.Opened opening(Optional<Arrival> receipt, Optional<String> before) throws Exception {
        Fact.Opened o = begin("C16-000002", false).run().opening();
        return new Fact.Opened(SERIAL, o.family(), o.procedure(), o.revision(), o.text(), o.plan(), o.station(), o.software(), false, before, o.approval(),
                receipt, Optional.empty(), o.books(), o.shift());
    }

    private void opened(Optional<Arrival> receipt, Optional<String> before, String words) throws Exception {
        TestId test = new TestId("T-4K7M2-QXD9R");
        write(test, begin("C16-000003", false).run().events(), opening(receipt, before));
        found(test.value(), 1, words);
    }

    private void write(TestId test, List<TestEvent> like, Fact.Opened opened) throws Exception {
        List<TestEvent> events = new ArrayList<>(like);
        events.set(0, new TestEvent(1, like.get(0).moment(), like.get(0).actor(), opened));
        try (Ledger raw = SqliteLedger.open(file())) {
            raw.append(test, 0, new KeptTests().drafts(test, events));
        }
    }

    @Test
    void aChangedReceiptIsFoundAndNothingIsReceivedOnTopOfIt() throws Exception {
        receipts.receive(unit(SERIAL, Plate.READ), QN);
        receipts.receive(unit("C16-004712", Plate.READ), QN);
        try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + file()); Statement statement = connection.createStatement()) {
            statement.execute("DROP TRIGGER event_kept");
            statement.execute("UPDATE event SET canonical = CAST(replace(CAST(canonical AS TEXT), 'O-114', 'O-999') AS BLOB) "
                    + "WHERE test_id = 'B-RECEIPTS' AND sequence = 1");
        }
        Receipts fresh = ledger.receipts(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime());
        assertThrows(StoreException.class, () -> fresh.receive(unit("C16-004713", Plate.READ), QN));
        List<RecordFault> links = BenchLedger.verify(file()).links();
        assertTrue(links.stream().anyMatch(fault -> fault.test().equals("B-RECEIPTS") && fault.sequence() == 1), links.toString());
    }
}
