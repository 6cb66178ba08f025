package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Approval;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.KnownBooks;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.revision.Revision;
import org.benchwright.engine.revision.RevisionFact;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.Approvals;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.RecordFault;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.StoreException;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.PlanCodec;
import org.benchwright.workshop.internal.RevisionCodec;
import org.benchwright.workshop.internal.RevisionHistory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.sqlite.SQLiteConfig;

/** What somebody with the file, a changed program or somebody else's key can try on approvals, and what verification says of it. */
class RevisionAttackTest {

    private static final Plan PLAN = SamplePlan.acceptance();
    private static final byte[] TEXT = SamplePlan.TEXT.getBytes(StandardCharsets.UTF_8);

    @TempDir
    private Path folder;
    private final MovedTime time = new MovedTime();
    private final RevisionCodec codec = new RevisionCodec();

    @BeforeEach
    void people() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file())) {
            Approved.people(ledger, time.benchTime());
        }
    }

    private Path file() {
        return folder.resolve("bench.ledger");
    }

    /** Signs a fact past the workshop's rules. */
    private void sign(String person, RevisionFact fact, Instant instant) throws Exception {
        sign(person, fact, instant, new Actor(person, person.equals("KM") ? Role.SUPERVISOR : Role.ENGINEER), Optional.empty(), RevisionHistory.meaning(fact));
    }

    private void sign(String person, RevisionFact fact, Instant instant, Actor named, Optional<String> printed, Meaning meaning) throws Exception {
        try (Ledger ledger = SqliteLedger.open(file())) {
            Signer key = Approved.key(file(), time, person);
            EntryDraft draft = new EntryDraft(TestId.REVISIONS, instant, 1, Duration.ZERO, named, codec.kind(fact), codec.payload(fact));
            ledger.keep(TEXT, DocumentKind.PROCEDURE_TEXT);
            ledger.keep(plan(), DocumentKind.PLAN);
            ledger.appendSigned(draft, ledger.lastSequence(TestId.REVISIONS),
                    new Signing(key, meaning, printed.orElse(named.toString()), BenchKeyStore.openOrCreate(folder)));
        }
    }

    private static byte[] plan() {
        return new PlanCodec().bytes(PLAN);
    }

    private static RevisionFact prepared() {
        return prepared(Approvals.key(PLAN));
    }

    private static RevisionFact prepared(String key) {
        return new RevisionFact.Prepared(key, PLAN.title(), PLAN.revision(), Digest.of(TEXT), Digest.of(plan()));
    }

    private static RevisionFact approved() {
        return new RevisionFact.Approved(1, Digest.of(TEXT), Digest.of(plan()));
    }

    /** Opens a test past the workshop's rules. */
    private TestId open(Optional<Approval> approval) throws Exception {
        return open(approval, Optional.empty());
    }

    private TestId open(Optional<Approval> approval, Optional<KnownBooks> books) throws Exception {
        Fact.Opened opened = new Fact.Opened("C16-004711", PLAN.family().name(), PLAN.name(), PLAN.revision(), Digest.of(TEXT),
                Digest.of(plan()), "bench 2", "Benchwright 0.1.0", false, Optional.empty(), approval, Optional.empty(),
                Optional.empty(), books, Optional.empty());
        List<TestEvent> events = TestRun.open(PLAN, opened, new Actor("QN", Role.TECHNICIAN), new Moment(time.instant(), 1, Duration.ZERO));
        TestId test = TestId.create(new Random(5));
        try (Ledger ledger = SqliteLedger.open(file())) {
            ledger.keep(TEXT, DocumentKind.PROCEDURE_TEXT);
            ledger.keep(plan(), DocumentKind.PLAN);
            ledger.append(test, 0, new KeptTests().drafts(test, events));
        }
        return test;
    }

    private static Optional<Approval> approval(long event, String by, Instant instant) {
        return Optional.of(new Approval(event, "RB", by, instant));
    }

    private LedgerReport report() throws Exception {
        return BenchLedger.verify(file());
    }

    private void decisions(String place, long sequence, String words) throws Exception {
        OneFault.at(place, sequence, report(), words);
    }

    @Test
    void onePersonAloneCannotApprove() throws Exception {
        sign("RB", prepared(), time.instant());
        sign("RB", approved(), time.instant());
        decisions("B-REVISIONS", 2, "approval takes a second person");
    }

    /** A signature with another meaning, in another's name or another role is no approval. */
    @ParameterizedTest
    @CsvSource({"KM, SUPERVISOR, supervisor KM, CARRIED_OUT, does not mean \"approved\"", "LW, SUPERVISOR, supervisor LW, APPROVED, KM has signed it",
        "KM, SUPERVISOR, supervisor LW, APPROVED, supervisor KM has signed it", "KM, AUDITOR, auditor KM, APPROVED, was no auditor then"})
    void anApprovalThatSaysSomethingElseIsFound(String named, Role as, String printed, Meaning meaning, String words) throws Exception {
        sign("RB", prepared(), time.instant());
        sign("KM", approved(), time.instant(), new Actor(named, as), Optional.of(printed), meaning);
        decisions("B-REVISIONS", 2, words);
    }

    /** Who may prepare does so as an engineer, and as nothing else that the same person may be. */
    @Test
    void aRevisionThatIsPreparedInARoleThatPreparesNothingIsFound() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file())) {
            ledger.registrar(time.benchTime(), 10).grant(Approved.by("LW"), "RB", Role.AUDITOR);
        }
        sign("RB", prepared(), time.instant(), new Actor("RB", Role.AUDITOR), Optional.empty(), Meaning.PREPARED);
        decisions("B-REVISIONS", 1, "RB is no engineer");
    }

    @Test
    void anApprovalByTheBenchIsNobodys() throws Exception {
        sign("RB", prepared(), time.instant());
        try (Ledger ledger = SqliteLedger.open(file())) {
            EntryDraft draft = new EntryDraft(TestId.REVISIONS, time.instant(), 1, Duration.ZERO, new Actor("KM", Role.SUPERVISOR),
                    codec.kind(approved()), codec.payload(approved()));
            ledger.appendSigned(draft, 1, new Signing(BenchKeyStore.openOrCreate(folder), Meaning.APPROVED, "supervisor KM"));
        }
        decisions("B-REVISIONS", 2, "nobody whose key was good then has signed it");
    }

    @Test
    void aTestOpenedByADraftIsFound() throws Exception {
        sign("RB", prepared(), time.instant());
        TestId test = open(Optional.empty());
        decisions(test.value(), 1, "which nobody had approved");
    }

    @Test
    void aTestThatNamesAnApprovalThatIsNoneIsFound() throws Exception {
        sign("RB", prepared(), time.instant());
        TestId test = open(approval(1, "KM", time.instant()));
        decisions(test.value(), 1, "names approval 1");
    }

    @Test
    void aTestThatNamesSomebodyElseAsApproverIsFound() throws Exception {
        sign("RB", prepared(), time.instant());
        sign("KM", approved(), time.instant());
        TestId test = open(approval(2, "LW", time.instant()));
        decisions(test.value(), 1, "names approval 2");
    }

    @Test
    void aTestOpenedBeforeItsApprovalIsFound() throws Exception {
        sign("RB", prepared(), time.instant());
        TestId test = open(approval(2, "KM", time.instant()));
        sign("KM", approved(), time.instant());
        decisions(test.value(), 1, "names approval 2");
    }

    /** As in a ledger that benches share: no bench's key is the only one that may have signed there. */
    private void share() throws Exception {
        Files.delete(folder.resolve(BenchKeyStore.PUBLIC_FILE));
    }

    private long registered() throws Exception {
        try (Ledger ledger = SqliteLedger.openReadOnly(file())) {
            return ledger.lastSequence(TestId.PEOPLE);
        }
    }

    @Test
    void whatABenchCouldNotKnowIsToldInASharedLedgerAndAFaultInItsOwn() throws Exception {
        KnownBooks known = new KnownBooks(registered(), 2);
        sign("RB", prepared(), time.instant());
        sign("KM", approved(), time.instant());
        Instant instant = time.instant();
        sign("KM", new RevisionFact.Withdrawn(2, "the limit is wrong"), time.instant());
        TestId test = open(approval(2, "KM", instant), Optional.of(known));
        decisions(test.value(), 1, "it was opened knowing");
        share();
        LedgerReport report = report();
        assertTrue(report.sound(), report.decisions().toString());
        assertEquals(1, report.late().size());
        assertEquals(test.value(), report.late().get(0).test());
        assertTrue(report.late().get(0).reason().contains("approval 2 did not hold any more"), report.late().toString());
    }

    @Test
    void whatABenchKnewMustHaveBeenThere() throws Exception {
        sign("RB", prepared(), time.instant());
        TestId test = open(approval(2, "KM", time.instant()), Optional.of(new KnownBooks(registered(), 2)));
        sign("KM", approved(), time.instant());
        share();
        decisions(test.value(), 1, "it was opened knowing");
    }

    @Test
    void anApprovalThatNeverHeldIsAFaultInASharedLedgerToo() throws Exception {
        sign("RB", prepared(), time.instant());
        sign("RB", approved(), time.instant());
        share();
        TestId test = open(approval(2, "KM", time.instant()), Optional.of(new KnownBooks(registered(), 2)));
        assertEquals(List.of("B-REVISIONS", test.value()), report().decisions().stream().map(RecordFault::test).toList());
    }

    @Test
    void theWorkshopSaysHowFarItKnewTheBooks() throws Exception {
        sign("RB", prepared(), time.instant());
        sign("KM", approved(), time.instant());
        try (BenchLedger ledger = BenchLedger.open(file())) {
            ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime()).open(new CompiledProcedure(PLAN, SamplePlan.TEXT),
                    new SerialNumber("C16-004711"), new Actor("QN", Role.TECHNICIAN), false);
            assertEquals(Optional.of(new KnownBooks(registered(), 2)), ledger.openTests().get(0).run().opening().books());
        }
        assertTrue(report().sound());
    }

    @Test
    void anApprovalForAFamilyLikeItOpensNothing() throws Exception {
        sign("RB", prepared(Revision.key(PLAN.name(), "like_" + PLAN.family().name())), time.instant());
        sign("KM", approved(), time.instant());
        TestId test = open(approval(2, "KM", time.instant()));
        decisions(test.value(), 1, "names approval 2");
    }

    @Test
    void anApprovalThatWasKeptByTheProceduresNameAloneStillHolds() throws Exception {
        sign("RB", prepared(PLAN.name()), time.instant());
        sign("KM", approved(), time.instant());
        open(approval(2, "KM", time.instant()));
        assertTrue(report().sound(), report().decisions()::toString);
    }

    @Test
    void aTestOpenedByAWithdrawnApprovalIsFound() throws Exception {
        sign("RB", prepared(), time.instant());
        sign("KM", approved(), time.instant());
        sign("KM", new RevisionFact.Withdrawn(2, "wrong"), time.instant());
        TestId test = open(approval(2, "KM", time.instant()));
        decisions(test.value(), 1, "names approval 2");
    }

    @Test
    void anApprovalWithAStolenKeyIsReportedAndCountsForNothing() throws Exception {
        sign("RB", prepared(), time.instant());
        Instant lost = time.instant();
        time.advance(Duration.ofHours(1));
        sign("KM", approved(), time.instant());
        try (BenchLedger ledger = BenchLedger.open(file())) {
            assertTrue(ledger.revisions().current(Approvals.key(PLAN)).isPresent());
            ledger.registrar(time.benchTime(), 10).revoke(Approved.by("LW"), "KM", "", Optional.of(lost), "token stolen");
            assertTrue(ledger.revisions().current(Approvals.key(PLAN)).isEmpty());
        }
        LedgerReport report = report();
        assertEquals(List.of(), report.decisions());
        assertEquals(1, report.signatures().size());
        assertEquals("B-REVISIONS", report.signatures().get(0).test());
        assertEquals(2, report.signatures().get(0).sequence());
        assertTrue(report.signatures().get(0).reason().contains("token stolen"), report.signatures().get(0).reason());
    }

    @Test
    void aSignatureByARevokedKeyUnderAClockSetBackIsReported() throws Exception {
        sign("RB", prepared(), time.instant());
        time.advance(Duration.ofHours(1));
        try (BenchLedger ledger = BenchLedger.open(file())) {
            ledger.registrar(time.benchTime(), 10).revoke(Approved.by("LW"), "KM", "", Optional.empty(), "token stolen");
        }
        sign("KM", approved(), time.instant().minus(Duration.ofDays(2)));
        assertEquals(1, report().signatures().size());
        try (BenchLedger ledger = BenchLedger.open(file())) {
            assertTrue(ledger.revisions().current(Approvals.key(PLAN)).isEmpty());
        }
    }

    @Test
    void aChangedOrRemovedApprovalIsFoundAndNothingIsOpenedByIt() throws Exception {
        sign("RB", prepared(), time.instant());
        sign("KM", approved(), time.instant());
        try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement();
                PreparedStatement change = connection.prepareStatement(
                        "UPDATE event SET canonical = CAST(replace(CAST(canonical AS TEXT), 'KM', 'MK') AS BLOB) WHERE kind = ?")) {
            statement.execute("DROP TRIGGER event_kept");
            change.setString(1, "revision-approved");
            change.execute();
            statement.execute("CREATE TRIGGER event_kept BEFORE UPDATE ON event\n"
                    + "BEGIN SELECT RAISE(ABORT, 'events are not changed'); END");
        }
        assertFalse(report().links().isEmpty());
        try (BenchLedger ledger = BenchLedger.openReadOnly(file())) {
            assertThrows(StoreException.class, ledger::revisions);
        }
        try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement()) {
            String safeguard;
            try (var row = statement.executeQuery("SELECT sql FROM sqlite_master WHERE name = 'event_stays'")) {
                safeguard = row.getString(1);
            }
            statement.execute("DROP TRIGGER event_stays");
            assertEquals(1, statement.executeUpdate("DELETE FROM event WHERE kind = 'revision-approved'"));
            statement.execute(safeguard);
        }
        List<RecordFault> cut = report().signatures();
        assertTrue(cut.stream().anyMatch(fault -> fault.reason().endsWith("the end was cut off.")), cut.toString());
    }

    @Test
    void testsFromBeforeTheRegisterStaySound() throws Exception {
        Path old = folder.resolve("old").resolve("bench.ledger");
        Fact.Opened opened = new Fact.Opened("C16-004711", PLAN.family().name(), PLAN.name(), PLAN.revision(), Digest.of(TEXT),
                Digest.of(plan()), "bench 2", "Benchwright 0.1.0", false, Optional.empty(), Optional.empty());
        List<TestEvent> events = TestRun.open(PLAN, opened, new Actor("QN", Role.TECHNICIAN), new Moment(time.instant(), 1, Duration.ZERO));
        TestId test = TestId.create(new Random(5));
        try (Ledger ledger = SqliteLedger.open(old)) {
            ledger.keep(TEXT, DocumentKind.PROCEDURE_TEXT);
            ledger.keep(plan(), DocumentKind.PLAN);
            ledger.append(test, 0, new KeptTests().drafts(test, events));
        }
        Approved.in(old, time.benchTime(), PLAN, SamplePlan.TEXT);
        LedgerReport report = BenchLedger.verify(old);
        assertTrue(report.sound(), report.decisions().toString());
        assertEquals(1, report.tests());
        assertEquals(1, report.derived());
    }
}
