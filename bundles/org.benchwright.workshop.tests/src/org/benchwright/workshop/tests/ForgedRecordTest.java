package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.ledger.BenchFolder;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.PlanCodec;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Records written by somebody who holds the bench key and writes sound links and seals, but tells of decisions that do not follow. Only the
 * third line of verification can find those.
 */
class ForgedRecordTest {

    private static final Actor QN = new Actor("QN", Role.TECHNICIAN);

    @TempDir
    private Path folder;
    private List<TestEvent> honest;
    private Meaning sealing = Meaning.CARRIED_OUT;
    private String sealed = "{}";
    private Actor sealer = new Actor("bench", Role.BENCH);
    private final KeptTests kept = new KeptTests();

    @BeforeEach
    void carryOutARejectedTest() throws Exception {
        Path file = folder.resolve("honest").resolve("bench.ledger");
        MovedTime time = new MovedTime();
        try (BenchLedger ledger = BenchLedger.open(file)) {
            Approved.people(ledger, time.benchTime());
            Approved.approve(ledger, time.benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
            Sitting sitting = ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime()).open(
                    new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber("C16-004711"), QN, false);
            new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark")).carryToTheEnd(sitting);
            honest = sitting.run().events();
        }
    }

    private LedgerReport verifyForged(List<TestEvent> events, byte[] plan) throws Exception {
        Path file = folder.resolve("forged").resolve("bench.ledger");
        TestId test = TestId.create(new Random(7));
        Approved.in(file, new MovedTime().benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
        try (Ledger ledger = SqliteLedger.open(file)) {
            Signer key = BenchKeyStore.openOrCreate(BenchFolder.of(file).path());
            ledger.keep(SamplePlan.TEXT.getBytes(StandardCharsets.UTF_8), DocumentKind.PROCEDURE_TEXT);
            ledger.keep(plan, DocumentKind.PLAN);
            ledger.keep(new byte[] {1}, DocumentKind.ATTACHMENT);
            add(ledger, test, events, key);
        }
        LedgerReport report = BenchLedger.verify(file);
        assertEquals(List.of(), report.links());
        assertEquals(List.of(), report.signatures());
        return report;
    }

    private void add(Ledger ledger, TestId test, List<TestEvent> events, Signer key) throws Exception {
        List<EntryDraft> drafts = kept.drafts(test, events);
        ledger.append(test, 0, drafts);
        EntryDraft seal = new EntryDraft(test, Instant.parse("2026-03-02T09:00:00Z"), 1, Duration.ofHours(1), sealer, EventKinds.SEALED, sealed);
        ledger.appendSigned(seal, drafts.size(), new Signing(key, sealing, "bench 2"));
    }

    private static byte[] plan() {
        return new PlanCodec().bytes(SamplePlan.acceptance());
    }

    private List<TestEvent> with(int index, EventBody body) {
        List<TestEvent> events = new ArrayList<>(honest);
        TestEvent old = events.get(index);
        events.set(index, new TestEvent(old.sequence(), old.moment(), old.actor(), body));
        return events;
    }

    private int indexOf(Class<? extends EventBody> type) {
        for (int i = 0; i < honest.size(); i++) {
            if (type.isInstance(honest.get(i).body())) {
                return i;
            }
        }
        throw new AssertionError("no " + type);
    }

    private static void assertFound(LedgerReport report, int index, String words) {
        assertEquals(index + 1L, OneFault.in(report, words).sequence());
    }

    @Test
    void theHonestRecordIsSound() throws Exception {
        assertTrue(verifyForged(honest, plan()).sound());
    }

    /** Nobody would look at it, and it would be signed all the same. */
    @Test
    void aSealThatSaysSomethingIsFound() throws Exception {
        sealed = "{\"verdict\":\"accepted\"}";
        assertFound(verifyForged(honest, plan()), honest.size(), "unknown field \"verdict\"");
    }

    @Test
    void aSealThatMeansSomethingElseIsFound() throws Exception {
        sealing = Meaning.VOIDED;
        assertFound(verifyForged(honest, plan()), honest.size(), "does not mean \"carried out\"");
    }

    @Test
    void aSealByTheBenchInATechniciansNameIsFound() throws Exception {
        sealer = QN;
        assertFound(verifyForged(honest, plan()), honest.size(), "it is sealed in the name of technician QN, with another key");
    }

    /** Neither an auditor nor a watch answers a card, whatever key they have. */
    @ParameterizedTest
    @EnumSource(names = {"AUDITOR", "WATCH", "BENCH", "SECOND_PERSON"})
    void anAnswerInARoleThatAnswersNothingIsFound(Role role) throws Exception {
        int seen = indexOf(Observation.Seen.class);
        List<TestEvent> events = new ArrayList<>(honest);
        TestEvent old = events.get(seen);
        events.set(seen, new TestEvent(old.sequence(), old.moment(), new Actor("MJ", role), old.body()));
        assertFound(verifyForged(events, plan()), seen, "Only a technician tells that, not " + role.word() + " MJ.");
    }

    @Test
    void aVerdictThatDoesNotFollowIsFound() throws Exception {
        int end = indexOf(Derived.Concluded.class);
        assertFound(verifyForged(with(end, new Derived.Concluded(Verdict.ACCEPTED, "")), plan()), end, "does not follow");
    }

    @Test
    void aDecisionThatDoesNotFollowIsFound() throws Exception {
        int decided = indexOf(Derived.CheckDecided.class);
        Derived.CheckDecided old = (Derived.CheckDecided) honest.get(decided).body();
        Derived.CheckDecided forged = new Derived.CheckDecided(old.check(), old.outcome(), old.numbers(), old.words() + " indeed");
        assertFound(verifyForged(with(decided, forged), plan()), decided, "does not follow");
    }

    @Test
    void anObservationThatLeadsElsewhereIsFound() throws Exception {
        int seen = indexOf(Observation.Seen.class);
        LedgerReport report = verifyForged(with(seen, new Observation.Seen("pwr", Observation.Sight.YES, "")), plan());
        assertFalse(report.sound());
        assertEquals(1, report.decisions().size());
    }

    @Test
    void anotherPlanThanTheOneNamedIsFound() throws Exception {
        Fact.Opened opened = (Fact.Opened) honest.get(0).body();
        byte[] other = new String(plan(), StandardCharsets.UTF_8).replace("\"PT72H\"", "\"PT1H\"").getBytes(StandardCharsets.UTF_8);
        Fact.Opened renamed = new Fact.Opened(opened.serial(), opened.family(), opened.procedure(), opened.revision(), opened.text(),
                Digest.of(other), opened.station(), opened.software(), opened.rehearsal(), Optional.empty(), opened.approval());
        assertFound(verifyForged(with(0, renamed), other), 0, "names approval 2, which is not one of that text and plan");
    }

    @Test
    void aPlanThatIsNoneIsFound() throws Exception {
        Fact.Opened opened = (Fact.Opened) honest.get(0).body();
        byte[] other = "{\"format\":\"1\"}".getBytes(StandardCharsets.UTF_8);
        Fact.Opened renamed = new Fact.Opened(opened.serial(), opened.family(), opened.procedure(), opened.revision(), opened.text(),
                Digest.of(other), opened.station(), opened.software(), opened.rehearsal(), Optional.empty(), opened.approval());
        assertFound(verifyForged(with(0, renamed), other), 0, "the kept plan can't be read");
    }

    @Test
    void aSealBeforeTheEndIsFound() throws Exception {
        int end = indexOf(Derived.Concluded.class);
        assertFound(verifyForged(honest.subList(0, end), plan()), end, "sealed before it had ended");
    }

    /** A rejection is not hidden by another test that says to be the first of its unit, or to follow something else. */
    @ParameterizedTest
    @CsvSource(nullValues = "none", value = {"none, it does not name", "T-22222-22222, which is no test of this unit", "that one, which is no test of this unit",
            "first, none"})
    void aTestThatHidesTheOneBeforeItIsFound(String predecessor, String words) throws Exception {
        Path file = folder.resolve("honest").resolve("bench.ledger");
        TestId second = new TestId("T-44444-44444");
        try (Ledger ledger = SqliteLedger.open(file)) {
            ledger.keep(new byte[] {1}, DocumentKind.ATTACHMENT);
            String first = ledger.tests().get(0).value();
            Fact.Opened old = (Fact.Opened) honest.get(0).body();
            List<TestEvent> events = new ArrayList<>(aDayLater());
            events.set(0, new TestEvent(1, events.get(0).moment(), QN, new Fact.Opened(old.serial(), old.family(), old.procedure(), old.revision(), old.text(),
                    old.plan(), old.station(), old.software(), old.rehearsal(), Optional.ofNullable("first".equals(predecessor) ? first : predecessor),
                    old.approval(), old.receipt(), old.mended(), old.books(), old.shift())));
            add(ledger, second, events, BenchKeyStore.openOrCreate(BenchFolder.of(file).path()));
        }
        LedgerReport report = BenchLedger.verify(file);
        if (words == null) {
            assertTrue(report.sound(), report.toString());
        } else {
            assertFound(report, 0, words);
        }
    }

    private List<TestEvent> aDayLater() {
        return honest.stream().map(event -> new TestEvent(event.sequence(), new Moment(event.moment().instant().plus(Duration.ofDays(1)),
                event.moment().sitting(), event.moment().offset()), event.actor(), event.body())).toList();
    }
}
