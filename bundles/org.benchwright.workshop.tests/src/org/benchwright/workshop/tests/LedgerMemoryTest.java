package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.workshop.Approvals;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.LedgerMemory;
import org.benchwright.workshop.ReceivedUnit;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.StoreException;
import org.benchwright.workshop.Workshop;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is remembered of a ledger is never older than the ledger, and never another's. */
class LedgerMemoryTest {

    private static final Actor QN = new Actor("QN", Role.TECHNICIAN);
    private static final Station STATION = new Station("bench 2", "Benchwright 0.1.0");
    private static final CompiledProcedure PROCEDURE = new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT);

    @TempDir
    private Path folder;
    private final MovedTime time = new MovedTime();
    private final LedgerMemory memory = new LedgerMemory();

    @BeforeEach
    void approved() throws Exception {
        Approved.in(file(), time.benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
        Files.write(folder.resolve("plate.jpg"), new byte[] {1});
    }

    private Path file() {
        return folder.resolve("bench.ledger");
    }

    @FunctionalInterface
    private interface Doing<T> {
        T in(BenchLedger ledger) throws Exception;
    }

    /** Somebody whose window remembers. */
    private <T> T remembering(Doing<T> doing) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file(), memory)) {
            return doing.in(ledger);
        }
    }

    /** Somebody else, in another window. */
    private <T> T elsewhere(Doing<T> doing) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file())) {
            return doing.in(ledger);
        }
    }

    private Workshop workshop(BenchLedger ledger) throws Exception {
        return ledger.workshop(STATION, time.benchTime());
    }

    private Sitting opened(BenchLedger ledger, String serial) throws Exception {
        return workshop(ledger).open(PROCEDURE, new SerialNumber(serial), QN, false);
    }

    private static List<String> ids(List<KeptTest> tests) {
        return tests.stream().map(KeptTest::id).toList();
    }

    @Test
    void anApprovalThatIsWithdrawnElsewhereOpensNothingMore() throws Exception {
        remembering(ledger -> opened(ledger, "C16-000001"));
        elsewhere(ledger -> ledger.approvals(time.benchTime()).withdraw(Approvals.key(PROCEDURE.plan()), PROCEDURE.plan().revision(), "a limit is wrong",
                Approved.by("KM")));
        assertThrows(RefusedException.class, () -> remembering(ledger -> opened(ledger, "C16-000002")));
    }

    @Test
    void whoeverIsEnteredElsewhereIsKnownAtTheNextEntry() throws Exception {
        assertEquals(3, (int) remembering(ledger -> {
            opened(ledger, "C16-000001");
            return ledger.people().size();
        }));
        elsewhere(ledger -> {
            Approved.auditors(ledger, time.benchTime());
            return "";
        });
        remembering(ledger -> {
            Sitting sitting = opened(ledger, "C16-000002");
            assertTrue(sitting.signsReleases("MJ"), "MJ has a key since");
            return "";
        });
    }

    @Test
    void openTestsAreThoseOfTheLedgerAndOnlyWhatWentOnIsReadAgain() throws Exception {
        String first = remembering(ledger -> opened(ledger, "C16-000001").test());
        String second = elsewhere(ledger -> opened(ledger, "C16-000002").test());
        List<KeptTest> before = remembering(BenchLedger::openTests);
        assertEquals(List.of(first, second), ids(before));
        elsewhere(ledger -> {
            Sitting sitting = workshop(ledger).resume(second, QN);
            sitting.record(new Fact.Noted("went on elsewhere"));
            return "";
        });
        List<KeptTest> after = remembering(BenchLedger::openTests);
        assertEquals(List.of(first, second), ids(after));
        assertSame(before.get(0), after.get(0));
        assertEquals(elsewhere(ledger -> ledger.test(second)).orElseThrow().run().events(), after.get(1).run().events());
        elsewhere(ledger -> {
            Workshop workshop = workshop(ledger);
            workshop.attach(folder.resolve("plate.jpg"));
            new GoodTechnician(time).carryToTheEnd(workshop.resume(first, QN));
            return "";
        });
        assertEquals(List.of(second), ids(remembering(BenchLedger::openTests)));
    }

    @Test
    void aUnitThatIsReceivedAndTestedElsewhereIsSeenAndLinked() throws Exception {
        received("C16-000001");
        assertEquals(1, remembering(ledger -> ledger.received(memory)).size());
        received("C16-000002");
        Sitting sitting = remembering(ledger -> opened(ledger, "C16-000002"));
        assertEquals(2, sitting.run().opening().receipt().orElseThrow().receipt());
        String other = elsewhere(ledger -> opened(ledger, "C16-000001").test());
        List<ReceivedUnit> units = remembering(ledger -> ledger.received(memory));
        assertEquals(List.of(Optional.of(other), Optional.of(sitting.test())), units.stream().map(ReceivedUnit::test).toList());
    }

    private void received(String serial) throws Exception {
        elsewhere(ledger -> ledger.receipts(STATION, time.benchTime()).receive(new ReceiptFact.Received("O-114", "Millbrook", serial, Plate.READ,
                Optional.of("tarn_c16"), "stops when warm", "", "", List.of(), Optional.empty()), QN));
    }

    @Test
    void theTestsOfAUnitAreThoseThatWereOpenedForItAndNoOthers() throws Exception {
        String first = elsewhere(ledger -> opened(ledger, "C16-000001").test());
        elsewhere(ledger -> opened(ledger, "C16-000002").test());
        elsewhere(ledger -> workshop(ledger).open(PROCEDURE, new SerialNumber("C16-000001"), QN, true).test());
        Sitting again = elsewhere(ledger -> opened(ledger, "C16-000001"));
        assertEquals(Optional.of(first), again.run().opening().predecessor(), "rehearsals precede nothing");
        assertEquals(3, elsewhere(ledger -> ledger.testsOf("C16-000001")).size());
        assertEquals(List.of(), elsewhere(ledger -> ledger.testsOf("QN")), "a text that stands elsewhere in an opening is no unit");
    }

    @Test
    void whatWasReadOfOneLedgerIsNotTakenForAnother() throws Exception {
        remembering(ledger -> opened(ledger, "C16-000001"));
        Path other = Files.createDirectory(folder.resolve("other")).resolve("bench.ledger");
        Approved.in(other, time.benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
        try (BenchLedger ledger = BenchLedger.open(other, memory)) {
            assertThrows(StoreException.class, () -> opened(ledger, "C16-000002"));
            assertEquals(List.of(), ledger.openTests());
            assertEquals(List.of(), ledger.tests());
        }
    }
}
