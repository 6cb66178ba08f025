package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.benchwright.core.Actor;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.ledger.BooksDifferException;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.DocumentReference;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Forwarder;
import org.benchwright.ledger.ForwardingStop;
import org.benchwright.ledger.LateArrival;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.PostgresLedger;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.Verification;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.people.PeopleFact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** From a bench's ledger into the shared one: what arrives, what stops, what is told. */
class ForwarderTest extends OnOneServer {

    private static final Actor ENGINEER = new Actor("RB", Role.ENGINEER);

    @Test
    void everythingArrivesOnceInOrderAndVerifies() throws Exception {
        benches.work("one", 3, 6);
        benches.work("two", 2, 5);
        assertEquals(17, benches.forward("one").added());
        assertEquals(9, benches.forward("two").added());
        benches.assertWhole(List.of("one", "two"));
        assertEquals(0, benches.forward("one").added(), "a second time nothing is added");
        benches.assertWhole(List.of("one", "two"));
        Verification verification = benches.verified();
        assertEquals(List.of(benches.key("one").key(), benches.key("two").key()), verification.signers());
        assertEquals(List.of(), verification.late());
    }

    @Test
    void whatIsAppendedLaterIsForwardedByTheSameForwarder() throws Exception {
        TestId open = benches.work("one", 2, 4).get(1);
        try (SqliteLedger ledger = benches.open("one"); PostgresLedger shared = benches.shared()) {
            Forwarder forwarder = new Forwarder(ledger, shared, benches.key("one"), Clock.systemUTC());
            forwarder.run(reached -> { }, Cancellation.never());
            SampleLedger sample = new SampleLedger(ledger, benches.key("one"));
            ledger.append(open, 3, List.of(sample.observation(open, 3)));
            sample.seal(open, 4);
            assertEquals(2, forwarder.run(reached -> { }, Cancellation.never()).added());
            sample.handOver(open, 5);
            assertEquals(1, forwarder.run(reached -> { }, Cancellation.never()).added());
        }
        benches.assertWhole(List.of("one"));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1000, 300 << 10})
    void documentsGoWithTheEventsThatNameThem(int size) throws Exception {
        byte[] photo = new byte[size];
        new Random(size).nextBytes(photo);
        Digest digest;
        try (SqliteLedger ledger = benches.open("one")) {
            SampleLedger sample = new SampleLedger(ledger, benches.key("one"));
            digest = ledger.keep(photo, DocumentKind.ATTACHMENT);
            ledger.keep("nobody names me".getBytes(), DocumentKind.ATTACHMENT);
            TestId id = sample.newTest();
            ledger.append(id, 0, List.of(sample.draft(id, "attached", "{\"file\":\"" + DocumentReference.of(digest) + "\"}")));
        }
        benches.forward("one");
        try (PostgresLedger shared = benches.shared()) {
            assertArrayEquals(photo, shared.document(digest).orElseThrow());
        }
        Verification verification = benches.verified();
        assertEquals(List.of(), verification.faults());
        assertEquals(1, verification.documents());
    }

    @Test
    void twoCopiesOfOneBenchThatBothWentOnStopTheTestAndNothingIsOverwritten() throws Exception {
        List<TestId> tests = benches.work("one", 3, 5);
        TestId open = tests.get(2);
        copyFolder(benches.file("one").getParent(), benches.file("two").getParent());
        append("one", open, 4, "first");
        append("two", open, 4, "second");
        TestId other = benches.work("two", 1, 3).get(0);
        benches.forward("one");
        Forwarder.Outcome outcome = benches.forward("two");
        assertEquals(List.of(open), outcome.stops().stream().map(ForwardingStop::test).toList());
        assertTrue(outcome.stops().get(0).words().contains("holds another event 5"), outcome.stops().toString());
        try (PostgresLedger shared = benches.shared()) {
            assertTrue(shared.entries(open).get(4).payload().contains("first"));
            assertEquals(2, shared.entries(other).size(), "other tests go on");
        }
        assertEquals(List.of(), benches.verified().faults());
    }

    @Test
    void theSameTestIdOnTwoBenchesStopsTheSecond() throws Exception {
        TestId same = new TestId("T-22222-22222");
        append("one", same, 0, "here");
        append("two", same, 0, "there");
        benches.forward("one");
        Forwarder.Outcome outcome = benches.forward("two");
        assertEquals(1, outcome.stops().size());
        assertEquals(1, outcome.stops().get(0).sequence());
        benches.assertWhole(List.of("one"));
    }

    @Test
    void anOlderCopyOfABenchIsToldAndWhatItLacksStays() throws Exception {
        TestId open = benches.work("one", 2, 4).get(1);
        copyFolder(benches.file("one").getParent(), benches.file("old").getParent());
        append("one", open, 3, "later");
        benches.forward("one");
        Forwarder.Outcome outcome = benches.forward("old");
        assertTrue(outcome.stops().get(0).words().contains("older copy of the bench"), outcome.stops().toString());
        benches.assertWhole(List.of("one"));
    }

    @Test
    void aTestThatWasChangedOnTheBenchGoesNowhere() throws Exception {
        List<TestId> tests = benches.work("one", 3, 5);
        try (Tamper tamper = Tamper.with(benches.file("one"))) {
            tamper.behindTheTriggers(inside -> inside.run("UPDATE event SET canonical = CAST(replace(canonical, '23.91', '23.99') AS BLOB) "
                    + "WHERE test_id = ? AND sequence = 2", tests.get(0).value()));
        }
        Forwarder.Outcome outcome = benches.forward("one");
        assertEquals(List.of(tests.get(0)), outcome.stops().stream().map(ForwardingStop::test).toList());
        assertTrue(outcome.stops().get(0).words().contains("not as it was written"), outcome.stops().toString());
        try (PostgresLedger shared = benches.shared()) {
            assertEquals(1, shared.entries(tests.get(0)).size());
            assertEquals(5, shared.entries(tests.get(1)).size());
        }
        assertEquals(List.of(), benches.verified().faults());
    }

    // ---- books

    @Test
    void booksComeDownToEveryBenchAndAreSoundThere() throws Exception {
        Register register;
        try (PostgresLedger shared = benches.shared()) {
            register = new Register(shared, benches.key("one"));
            register.begin();
            register.add("RB", Role.ENGINEER);
        }
        benches.work("two", 2, 4);
        assertEquals(6, benches.forward("two").fetched());
        assertEquals(0, benches.forward("two").fetched());
        try (PostgresLedger shared = benches.shared(); Ledger own = benches.open("two")) {
            assertEquals(links(shared.entries(TestId.PEOPLE)), links(own.entries(TestId.PEOPLE)));
        }
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(benches.file("two"))).faults());
        assertEquals(List.of(), benches.verified().faults());
    }

    @Test
    void theFirstBenchLendsItsBooksAndAnotherBooksAreRefused() throws Exception {
        for (String bench : List.of("one", "two")) {
            try (SqliteLedger ledger = benches.open(bench)) {
                new Register(ledger, benches.key(bench)).begin();
            }
        }
        try (SqliteLedger ledger = benches.open("one"); PostgresLedger shared = benches.shared()) {
            Forwarder forwarder = new Forwarder(ledger, shared, benches.key("one"), Clock.systemUTC());
            LedgerException first = assertThrows(BooksDifferException.class, forwarder::fetchBooks);
            assertTrue(first.getMessage().contains("bench share --books"), first.getMessage());
            assertEquals(3, forwarder.lendBooks());
            assertEquals(0, forwarder.fetchBooks());
        }
        assertThrows(BooksDifferException.class, () -> benches.forward("two"));
        assertEquals(List.of(), benches.verified().faults());
    }

    @Test
    void anotherBenchsKeyIsGoodForTheBooksThatItBeganAndForNothingElse() throws Exception {
        try (PostgresLedger shared = benches.shared()) {
            new Register(shared, benches.key("one")).begin();
        }
        benches.forward("two");
        try (SqliteLedger ledger = benches.open("two")) {
            SampleLedger foreign = new SampleLedger(ledger, benches.key("one"), 5);
            TestId test = foreign.newTest();
            ledger.append(test, 0, List.of(foreign.draft(test, "opened", "{}")));
            foreign.seal(test, 1);
        }
        List<FaultKind> found = LedgerVerifier.verify(VerificationRequest.of(benches.file("two"))).faults().stream().map(fault -> fault.kind())
                .toList();
        assertEquals(List.of(FaultKind.FOREIGN_KEY, FaultKind.FOREIGN_KEY), found, "the checkpoint and the seal");
    }

    // ---- what a bench couldn't know

    @Test
    void aKeyThatWasReplacedBeforeItsSignatureGotThereIsToldAndIsNoFault() throws Exception {
        Register register = registerOfTwo();
        TestId test = signedBy(register.key("RB"), "one");
        Signer fresh = Register.newKey();
        try (PostgresLedger shared = benches.shared()) {
            register.over(shared).enter(new PeopleFact.KeyRotated("RB", fresh.key()), register.key("RB"));
        }
        benches.forward("one");
        Verification verification = benches.verified();
        assertEquals(List.of(), verification.faults());
        assertEquals(List.of(test), verification.late().stream().map(LateArrival::test).toList());
        assertTrue(verification.late().get(0).words().contains("RB"), verification.late().toString());
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(benches.file("one"))).faults());
    }

    @Test
    void whatARevocationReachesBackToIsAFaultHoweverLateItArrives() throws Exception {
        Register register = registerOfTwo();
        signedBy(register.key("RB"), "one");
        try (PostgresLedger shared = benches.shared()) {
            register.over(shared).enter(new PeopleFact.KeyRevoked("RB", register.key("RB").key().fingerprint(), Register.START, "lost"),
                    register.key("LW"));
        }
        benches.forward("one");
        assertEquals(List.of(FaultKind.KEY_OUT_OF_USE), benches.verified().faults().stream().map(fault -> fault.kind()).toList());
    }

    @Test
    void aSignatureThatClaimsToKnowLessThanItsOwnBenchIsAFaultThere() throws Exception {
        Register register = registerOfTwo();
        signedBy(register.key("RB"), "one");
        try (Tamper tamper = Tamper.with(benches.file("one"))) {
            assertEquals(1, tamper.number("SELECT count(*) FROM event WHERE instr(canonical, '\"register\":\"6\"') > 0"));
        }
        // The same signed event behind a longer register: what a dishonest copy of the bench's own ledger would look like.
        try (PostgresLedger shared = benches.shared()) {
            register.over(shared).enter(new PeopleFact.RoleGranted("RB", Role.AUDITOR), register.key("LW"));
        }
        benches.forward("one");
        Path copy = benches.copy();
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(copy)).faults());
        assertFalse(LedgerVerifier.verify(VerificationRequest.of(copy).with(benches.key("one").key())).clean());
    }

    private Register registerOfTwo() throws Exception {
        Register register;
        try (PostgresLedger shared = benches.shared()) {
            register = new Register(shared, benches.key("one"));
            register.begin();
            register.add("RB", Role.ENGINEER);
        }
        try (SqliteLedger ledger = benches.open("one"); PostgresLedger shared = benches.shared()) {
            new Forwarder(ledger, shared, benches.key("one"), Clock.systemUTC()).fetchBooks();
        }
        return register;
    }

    private TestId signedBy(Signer key, String bench) throws Exception {
        try (SqliteLedger ledger = benches.open(bench)) {
            SampleLedger sample = new SampleLedger(ledger, benches.key(bench));
            TestId test = sample.newTest();
            ledger.append(test, 0, List.of(sample.draft(test, "opened", "{}")));
            EntryDraft draft = new EntryDraft(test, Register.START.plusSeconds(3600 * 8), 1, Duration.ofHours(8), ENGINEER, "sealed", "{}");
            ledger.appendSigned(draft, 1, new Signing(key, Meaning.CARRIED_OUT, "engineer RB", benches.key(bench)));
            return test;
        }
    }

    private void append(String bench, TestId test, long expected, String text) throws Exception {
        try (SqliteLedger ledger = benches.open(bench)) {
            SampleLedger sample = new SampleLedger(ledger, benches.key(bench));
            ledger.append(test, expected, List.of(sample.draft(test, "noted", "{\"text\":\"" + text + "\"}")));
        }
    }

    private static List<String> links(List<LedgerEntry> entries) {
        return entries.stream().map(entry -> entry.link().hex()).toList();
    }

    private static void copyFolder(Path from, Path to) throws Exception {
        Files.createDirectories(to);
        try (var files = Files.list(from)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, to.resolve(file.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
            }
        }
    }
}
