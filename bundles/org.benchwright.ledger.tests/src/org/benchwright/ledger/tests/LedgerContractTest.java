package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.LongStream;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Checkpoint;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.EntrySignature;
import org.benchwright.ledger.KnownSigner;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.MerkleTree;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.SealedTestException;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.SignedBook;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.people.People;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What every store of the ledger owes its users; each store has a test class that brings one along. */
abstract class LedgerContractTest {

    private static final int WRITERS = 8;
    private static final int EVENTS = 25;

    @TempDir
    Path folder;

    private Path keys;
    private Ledger ledger;
    private SampleLedger sample;
    private TestId test;

    /** A new ledger without anything in it. */
    abstract Ledger openNew() throws Exception;

    /** How many documents the store holds, counted by somebody else. */
    abstract long documents() throws Exception;

    /** One more connection to it. */
    abstract Ledger another() throws Exception;

    /** A file to verify it by, with all that it holds. */
    abstract Path copied() throws Exception;

    @BeforeEach
    void open() throws Exception {
        ledger = openNew();
        keys = folder.resolve("keys");
        BenchKey key = BenchKeyStore.openOrCreate(keys);
        sample = new SampleLedger(ledger, key);
        test = sample.newTest();
    }

    @AfterEach
    void close() throws Exception {
        ledger.close();
    }

    final Ledger ledger() {
        return ledger;
    }

    final SampleLedger sample() {
        return sample;
    }

    final TestId test() {
        return test;
    }

    @Test
    void eightWriteAtOnceWithoutAGapOrALoss() throws Exception {
        ExecutorService writers = Executors.newFixedThreadPool(WRITERS);
        try {
            List<Callable<TestId>> work = new ArrayList<>();
            for (int i = 0; i < WRITERS; i++) {
                TestId id = sample.newTest();
                work.add(() -> carryOut(id));
            }
            for (Future<TestId> done : writers.invokeAll(work)) {
                assertEquals(EVENTS, ledger.lastSequence(done.get()));
            }
        } finally {
            writers.shutdownNow();
        }
        List<Long> positions = new ArrayList<>();
        ledger.scan(1, entry -> positions.add(entry.position()), Cancellation.never());
        assertEquals(LongStream.rangeClosed(1, WRITERS * EVENTS).boxed().toList(), positions);
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(copied())).faults());
    }

    private TestId carryOut(TestId id) throws Exception {
        try (Ledger own = another()) {
            SampleLedger mine = new SampleLedger(own, BenchKeyStore.openOrCreate(keys));
            for (int i = 0; i < EVENTS - 1; i++) {
                own.append(id, i, List.of(mine.observation(id, i)));
            }
            mine.seal(id, EVENTS - 1);
        }
        return id;
    }

    @Test
    void givesEventsTheirPlacesAndGivesThemBack() throws Exception {
        TestId other = sample.newTest();
        EntryDraft opened = sample.draft(test, "opened", "{\"serial\":\"C16-004711\",\"a\":\"\"}");
        List<LedgerEntry> first = ledger.append(test, 0, List.of(opened, sample.observation(test, 1)));
        List<LedgerEntry> second = ledger.append(other, 0, List.of(sample.draft(other, "opened", "{}")));
        List<LedgerEntry> third = ledger.append(test, 2, List.of(sample.observation(test, 2)));

        assertEquals(List.of(1L, 2L, 3L, 4L), positions(first, second, third));
        assertEquals(List.of(first.get(0), first.get(1), third.get(0)), ledger.entries(test));
        assertEquals(second, ledger.entries(other));
        assertEquals(List.of(test, other), ledger.tests());
        assertEquals(3, ledger.lastSequence(test));
        LedgerEntry entry = ledger.entries(test).get(0);
        assertEquals(opened.instant(), entry.instant());
        assertEquals(opened.offset(), entry.offset());
        assertEquals(1, entry.sitting());
        assertEquals(SampleLedger.TECHNICIAN, entry.actor());
        assertEquals("opened", entry.kind());
        assertEquals("{\"a\":\"\",\"serial\":\"C16-004711\"}", entry.payload());
    }

    @Test
    void givesAPartOfATestAndTheOpeningsThatNameAText() throws Exception {
        TestId other = sample.newTest();
        TestId third = sample.newTest();
        LedgerEntry first = ledger.append(test, 0, List.of(sample.draft(test, "opened", "{\"serial\":\"C16-004711\"}"))).get(0);
        LedgerEntry second = ledger.append(other, 0, List.of(sample.draft(other, "opened", "{\"serial\":\"C16-0047\"}"))).get(0);
        LedgerEntry again = ledger.append(third, 0,
                List.of(sample.draft(third, "opened", "{\"a\":{\"b\":\"C16-004711\"},\"q\":\"\\\"A\u030a\\\\\"}"))).get(0);
        List<LedgerEntry> more = ledger.append(test, 1, List.of(sample.draft(test, "note", "{\"text\":\"C16-0047\"}"), sample.observation(test, 2)));

        assertEquals(more, ledger.entries(test, 2));
        assertEquals(more.subList(1, 2), ledger.entries(test, 3));
        assertEquals(List.of(), ledger.entries(test, 4));
        assertEquals(more.subList(0, 1), ledger.entries(test, "note"));
        assertEquals(List.of(first, second, again), ledger.openings());
        assertEquals(List.of(second, again), ledger.openings(second.position()));
        assertEquals(List.of(again, first), ledger.openingsNaming("C16-004711", Long.MAX_VALUE, 10));
        assertEquals(List.of(again), ledger.openingsNaming("C16-004711", Long.MAX_VALUE, 1));
        assertEquals(List.of(first), ledger.openingsNaming("C16-004711", again.position(), 10));
        assertEquals(List.of(second), ledger.openingsNaming("C16-0047", Long.MAX_VALUE, 10),
                "a part of a text is another text, and a note is no opening");
        assertEquals(List.of(again), ledger.openingsNaming("\"\u00c5\\", Long.MAX_VALUE, 10), "as it is kept: composed, with its escapes");
        assertEquals(List.of(), ledger.openingsNaming("\ud800", Long.MAX_VALUE, 10), "what can't be kept is nowhere");
        assertEquals(List.of(), ledger.openingsNaming("C16-%", Long.MAX_VALUE, 10));
    }

    @Test
    void tellsWhichTestsAreNotSealedAndHowFarTheyHaveCome() throws Exception {
        TestId other = sample.newTest();
        TestId third = sample.newTest();
        ledger.append(test, 0, List.of(sample.draft(test, "opened", "{}")));
        ledger.append(other, 0, List.of(sample.draft(other, "opened", "{}")));
        ledger.append(third, 0, List.of(sample.draft(third, "opened", "{}")));
        LedgerEntry last = ledger.append(test, 1, List.of(sample.observation(test, 1))).get(0);
        sample.seal(other, 1);
        assertEquals(List.of(test, third), List.copyOf(ledger.unsealed().keySet()));
        assertEquals(last.link(), ledger.unsealed().get(test));
        sample.seal(test, 2);
        assertEquals(List.of(third), List.copyOf(ledger.unsealed().keySet()));
    }

    @SafeVarargs
    private static List<Long> positions(List<LedgerEntry>... lists) {
        return Arrays.stream(lists).flatMap(List::stream).map(LedgerEntry::position).toList();
    }

    @Test
    void linksEachEventToAllBeforeIt() throws Exception {
        ledger.append(test, 0, List.of(sample.draft(test, "opened", "{}"), sample.observation(test, 1)));
        List<LedgerEntry> entries = ledger.entries(test);
        Digest before = Digest.of(("benchwright.link/1\n" + test + "\n").getBytes(StandardCharsets.UTF_8));
        assertEquals(before, Link.before(test).digest());
        assertEquals(Link.before(test).next(entries.get(0).canonical()), entries.get(0).link());
        assertEquals(entries.get(0).link().next(entries.get(1).canonical()), entries.get(1).link());
    }

    @Test
    void keepsTheBytesThatTheFormatDescribes() throws Exception {
        ledger.append(test, 0, List.of(new EntryDraft(test, SampleLedger.START, 2, Duration.ofMillis(1500), SampleLedger.TECHNICIAN, "note",
                "{\"z\":\"A\\u030a\",\"a\":\"23.90\"}")));
        String canonical = new String(ledger.entries(test).get(0).canonical(), StandardCharsets.UTF_8);
        assertEquals("{\"actor\":\"QN\",\"format\":\"benchwright.event/1\",\"instant\":\"2026-03-02T07:30:00Z\",\"kind\":\"note\","
                + "\"offset\":\"PT1.5S\",\"payload\":{\"a\":\"23.90\",\"z\":\"\u00c5\"},\"role\":\"technician\",\"sequence\":\"1\","
                + "\"sitting\":\"2\",\"test\":\"" + test + "\"}", canonical);
    }

    @Test
    void refusesToOverwriteWhatSomebodyElseAppended() throws Exception {
        ledger.append(test, 0, List.of(sample.draft(test, "opened", "{}")));
        SequenceConflictException conflict = assertThrows(SequenceConflictException.class,
                () -> ledger.append(test, 0, List.of(sample.draft(test, "opened", "{}"))));
        assertEquals(1, conflict.actual());
        assertEquals(0, conflict.expected());
        assertEquals(test, conflict.test());
        assertThrows(SequenceConflictException.class, () -> ledger.append(test, 2, List.of(sample.observation(test, 3))));
        assertThrows(SequenceConflictException.class, () -> sample.seal(test, 0));
        assertEquals(1, ledger.entries(test).size());
        assertEquals(List.of(), ledger.checkpoints());
    }

    @Test
    void appendsAllOrNone() throws Exception {
        EntryDraft good = sample.draft(test, "opened", "{}");
        assertThrows(PayloadException.class, () -> ledger.append(test, 0, List.of(good, sample.draft(test, "note", "{\"volts\":23.9}"))));
        String tooLong = "x".repeat(1 << 20);
        assertThrows(PayloadException.class,
                () -> ledger.append(test, 0, List.of(good, sample.draft(test, "note", "{\"text\":\"" + tooLong + "\"}"))));
        assertEquals(0, ledger.lastSequence(test));
        assertEquals(List.of(), ledger.tests());
    }

    @Test
    void refusesDraftsOfAnotherTestOrNone() {
        assertThrows(IllegalArgumentException.class, () -> ledger.append(test, 0, List.of()));
        assertThrows(IllegalArgumentException.class,
                () -> ledger.append(test, 0, List.of(sample.draft(sample.newTest(), "opened", "{}"))));
        assertThrows(IllegalArgumentException.class, () -> sample.draft(test, "Opened; --", "{}"));
    }

    @Test
    void sealsATestWithACheckpointOfTheWholeLedger() throws Exception {
        List<TestId> tests = sample.carryOut(2, 5);
        LedgerEntry seal = ledger.entries(tests.get(0)).get(4);
        assertEquals("sealed", seal.kind());
        assertTrue(ledger.sealed(tests.get(0)));
        assertFalse(ledger.sealed(tests.get(1)));

        EntrySignature signature = ledger.signatures(tests.get(0)).get(0);
        KnownSigner signer = ledger.signers().get(0);
        assertEquals(Meaning.CARRIED_OUT, signature.meaning());
        assertEquals("technician QN", signature.printedName());
        assertEquals(seal.instant(), signature.instant());
        assertEquals(signer.key().fingerprint(), signature.fingerprint());
        assertEquals(seal.instant(), signer.firstSeen());
        assertEquals(BenchKeyStore.publicKey(keys), Optional.of(signer.key()));

        Checkpoint checkpoint = ledger.checkpoints().get(0);
        List<Digest> leaves = new ArrayList<>();
        ledger.scan(1, entry -> leaves.add(MerkleTree.eventLeaf(entry.test(), entry.sequence(), entry.link())), Cancellation.never());
        assertEquals(leaves.size(), checkpoint.size());
        assertEquals(MerkleTree.root(leaves), checkpoint.root());
        assertEquals(2, checkpoint.documents());
    }

    @Test
    void afterASealOnlySignedAmendmentsAndDecisionsMayFollow() throws Exception {
        TestId sealed = sample.carryOut(2, 5).get(0);
        assertThrows(SealedTestException.class, () -> ledger.append(sealed, 5, List.of(sample.observation(sealed, 6))));
        assertThrows(SealedTestException.class, () -> ledger.append(sealed, 5, List.of(sample.draft(sealed, "amended", "{}"))));
        assertThrows(SealedTestException.class, () -> sample.seal(sealed, 5));
        LedgerEntry handOver = sample.handOver(sealed, 5);
        assertEquals(6, handOver.sequence());
        assertEquals(2, ledger.signatures(sealed).size());
        assertEquals(2, ledger.checkpoints().size());
        assertEquals(1, ledger.signers().size());
    }

    @Test
    void aSealIsAlwaysSignedAndASignatureIsNeverBroughtAlong() {
        assertThrows(SealedTestException.class, () -> ledger.append(test, 0, List.of(sample.draft(test, "sealed", "{}"))));
        assertThrows(PayloadException.class, () -> ledger.append(test, 0, List.of(sample.draft(test, "note", "{\"signature\":{}}"))));
    }

    @Test
    void anAppendIsRefusedWhenABookThatItReliesOnHasGoneOn() throws Exception {
        Register register = new Register(ledger, sample.key());
        register.begin();
        long read = ledger.lastSequence(TestId.PEOPLE);
        register.add("QN", Role.TECHNICIAN);
        EntryDraft opened = sample.draft(test, "opened", "{}");
        assertThrows(SequenceConflictException.class, () -> ledger.append(test, 0, List.of(opened), Map.of(TestId.PEOPLE, read)));
        assertEquals(0, ledger.lastSequence(test));
        ledger.append(test, 0, List.of(opened), Map.of(TestId.PEOPLE, ledger.lastSequence(TestId.PEOPLE)));
        assertEquals(List.of(test), ledger.tests());
    }

    @Test
    void booksTakeOnlyWhatIsSignedAndAreNoTests() throws Exception {
        assertThrows(PayloadException.class,
                () -> ledger.append(TestId.PEOPLE, 0, List.of(sample.draft(TestId.PEOPLE, "person-added", "{}"))));
        new Register(ledger, sample.key()).begin();
        assertEquals(List.of(), ledger.tests());
        assertEquals(ledger.lastSequence(TestId.PEOPLE), ledger.signatures(TestId.PEOPLE).size());
        assertEquals(Optional.empty(), TestId.parse(TestId.PEOPLE.value()));
        assertEquals(ledger.entries(TestId.PEOPLE), SignedBook.read(ledger, TestId.PEOPLE));
    }

    @Test
    void peopleSignWithTheirOwnKeysAndTheBenchSignsTheCheckpoint() throws Exception {
        Register register = new Register(ledger, sample.key());
        register.begin();
        ledger.append(test, 0, List.of(sample.draft(test, "opened", "{}")));
        EntryDraft draft = sample.draft(test, "sealed", "{}");
        ledger.appendSigned(draft, 1, new Signing(register.key("LW"), Meaning.CARRIED_OUT, "administrator LW", sample.key()));
        assertEquals(register.key("LW").key().fingerprint(), ledger.signatures(test).get(0).fingerprint());
        List<Checkpoint> checkpoints = ledger.checkpoints();
        assertEquals(sample.key().key().fingerprint(), checkpoints.get(checkpoints.size() - 1).fingerprint());
        assertEquals("LW", People.read(ledger).holder(ledger.signatures(test).get(0).fingerprint()).orElseThrow().id());
    }

    @Test
    void whatIsSignedHoldsOnlyWhileTheBooksItReliesOnStandWhereTheyWereRead() throws Exception {
        Register register = new Register(ledger, sample.key());
        register.begin();
        long people = ledger.lastSequence(TestId.PEOPLE);
        EntryDraft draft = sample.draft(TestId.REVISIONS, "x", "{}");
        Signing signing = new Signing(register.key("LW"), Meaning.APPROVED, "administrator LW", sample.key());
        assertThrows(SequenceConflictException.class, () -> ledger.appendSigned(draft, 0, signing, Map.of(TestId.PEOPLE, people - 1)));
        assertEquals(0, ledger.lastSequence(TestId.REVISIONS));
        assertEquals(1, ledger.appendSigned(draft, 0, signing, Map.of(TestId.PEOPLE, people)).sequence());
    }

    @Test
    void scansInLedgerOrderFromAnyPlaceUntilStopped() throws Exception {
        sample.carryOut(3, 300);
        List<Long> seen = new ArrayList<>();
        ledger.scan(11, entry -> seen.add(entry.position()), Cancellation.never());
        assertEquals(11L, seen.get(0));
        assertEquals(899L - 10, seen.size());
        assertEquals(seen.stream().sorted().toList(), seen);
        seen.clear();
        ledger.scan(1, entry -> seen.add(entry.position()), () -> seen.size() >= 7);
        assertEquals(7, seen.size());
    }

    @Test
    void keepsDocumentsOnceUnderTheirDigest() throws Exception {
        byte[] text = "procedure tarn-p24 { }".getBytes(StandardCharsets.UTF_8);
        Digest digest = ledger.keep(text, DocumentKind.PROCEDURE_TEXT);
        assertEquals(Digest.of(text), digest);
        assertEquals(digest, ledger.keep(text, DocumentKind.PROCEDURE_TEXT));
        assertArrayEquals(text, ledger.document(digest).orElseThrow());
        assertEquals(Optional.empty(), ledger.document(Digest.of(new byte[] {1})));
        Digest empty = ledger.keep(new byte[0], DocumentKind.ATTACHMENT);
        assertArrayEquals(new byte[0], ledger.document(empty).orElseThrow());
        assertEquals(2, documents());
    }
}
