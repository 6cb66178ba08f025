package org.benchwright.ledger.tests;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.DocumentReference;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;

/** Makes ledgers to look at: invented work on invented units, the same each time. */
final class SampleLedger {

    static final Actor TECHNICIAN = new Actor("QN", Role.TECHNICIAN);
    static final Instant START = Instant.parse("2026-03-02T07:30:00Z");

    private static final long SEED = 20260302;
    private static final int MANY = 500;

    private final Random random;
    private final Ledger ledger;
    private final BenchKey key;
    private long ticks;

    SampleLedger(Ledger ledger, BenchKey key) {
        this(ledger, key, SEED);
    }

    /** With other ids than those of another seed. */
    SampleLedger(Ledger ledger, BenchKey key, long seed) {
        this.random = new Random(seed);
        this.ledger = ledger;
        this.key = key;
    }

    /** A ledger in {@code folder} with several tests at once on the bench, the last one open. */
    static Path build(Path folder, int tests, int eventsEach) throws Exception {
        Path file = folder.resolve("bench.ledger");
        try (Ledger ledger = SqliteLedger.open(file)) {
            new SampleLedger(ledger, BenchKeyStore.openOrCreate(folder)).carryOut(tests, eventsEach);
        }
        return file;
    }

    BenchKey key() {
        return key;
    }

    TestId newTest() {
        return TestId.create(random);
    }

    /** Carries out {@code tests} tests, their events interleaved, and seals all but the last. */
    List<TestId> carryOut(int tests, int eventsEach) throws Exception {
        String text = DocumentReference.of(ledger.keep("procedure tarn-c16 { }".getBytes(), DocumentKind.PROCEDURE_TEXT));
        String plan = DocumentReference.of(ledger.keep("{\"plan\":\"tarn-c16\"}".getBytes(), DocumentKind.PLAN));
        List<TestId> ids = Stream.generate(this::newTest).limit(tests).toList();
        for (TestId id : ids) {
            ledger.append(id, 0, List.of(draft(id, "opened", "{\"text\":\"" + text + "\",\"plan\":\"" + plan
                    + "\",\"serial\":\"C16-004711\",\"rehearsal\":false,\"previous\":null}")));
        }
        for (int i = 1; i < eventsEach - 1; i++) {
            for (TestId id : ids) {
                ledger.append(id, i, List.of(observation(id, i)));
            }
        }
        for (TestId id : ids.subList(0, tests - 1)) {
            seal(id, eventsEach - 1);
        }
        return ids;
    }

    /** A test of so many observations, appended many at a time, and sealed. */
    TestId many(int observations) throws Exception {
        TestId id = newTest();
        for (int at = 0; at < observations; at += MANY) {
            List<EntryDraft> drafts = new ArrayList<>();
            for (int i = at; i < Math.min(at + MANY, observations); i++) {
                drafts.add(observation(id, i));
            }
            ledger.append(id, at, drafts);
        }
        seal(id, observations);
        return id;
    }

    /** Where an attachment lies that is too large for a ledger's database. */
    static Path beside(Path ledger, Digest attachment) {
        String hex = attachment.hex();
        return ledger.resolveSibling("attachments").resolve(hex.substring(0, 2)).resolve(hex.substring(2));
    }

    /** Keeps an attachment that lies beside a ledger, and says where. */
    static Path keptBeside(Path ledger) throws Exception {
        try (Ledger open = SqliteLedger.open(ledger)) {
            return beside(ledger, open.keep(new byte[300 << 10], DocumentKind.ATTACHMENT));
        }
    }

    EntryDraft observation(TestId id, int number) {
        return draft(id, "observed", "{\"step\":\"measure 24 V rail\",\"typed\":\"23,9" + number % 10 + " V\",\"value\":\"23.9" + number % 10
                + "\",\"unit\":\"V\",\"note\":\"Prüfling läuft\",\"marks\":[\"a" + number + "\",\"b\"]}");
    }

    EntryDraft draft(TestId id, String kind, String payload) {
        ticks++;
        return new EntryDraft(id, START.plusMillis(ticks * 1500), 1, Duration.ofMillis(ticks * 1500), TECHNICIAN, kind, payload);
    }

    LedgerEntry seal(TestId id, long expectedSequence) throws Exception {
        EntryDraft moment = draft(id, "observed", "{}");
        return ledger.seal(id, expectedSequence, moment.instant(), 1, moment.offset(), TECHNICIAN, key, "technician QN");
    }

    LedgerEntry handOver(TestId id, long expectedSequence) throws Exception {
        EntryDraft draft = draft(id, "handed-over", "{\"to\":\"Millbrook Bench Works\"}");
        return ledger.appendSigned(draft, expectedSequence, new Signing(key, Meaning.HANDED_OVER, "auditor LW"));
    }
}
