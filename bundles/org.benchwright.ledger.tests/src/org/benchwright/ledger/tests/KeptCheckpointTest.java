package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Checkpoint;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerProofs;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.SignedCheckpoint;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.VerificationRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What only somebody can find who kept a checkpoint elsewhere: the ledger as it stands is clean in itself each time. */
class KeptCheckpointTest {

    @TempDir
    Path folder;

    private Path ledger;
    private BenchKey key;

    @BeforeEach
    void build() throws Exception {
        ledger = SampleLedger.build(folder, 4, 10);
        key = BenchKeyStore.openOrCreate(folder);
    }

    private SignedCheckpoint latest() throws Exception {
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            return SignedCheckpoint.read(new LedgerProofs(open).latest().text());
        }
    }

    private Set<FaultKind> kinds(SignedCheckpoint... kept) throws Exception {
        return LedgerVerifier.verify(VerificationRequest.of(ledger).against(List.of(kept))).faults().stream().map(Fault::kind)
                .collect(Collectors.toSet());
    }

    private void sealTheFourth() throws Exception {
        try (Ledger open = SqliteLedger.open(ledger)) {
            new SampleLedger(open, key).seal(open.tests().get(3), 9);
        }
    }

    @Test
    void aLedgerThatWentOnAgreesWithEverythingKeptOfIt() throws Exception {
        SignedCheckpoint before = latest();
        sealTheFourth();
        assertEquals(Set.of(), kinds(before, latest()));
        assertTrue(latest().checkpoint().size() > before.checkpoint().size());
    }

    @Test
    void olderCopy() throws Exception {
        Path copy = Files.copy(ledger, folder.resolve("yesterday"));
        try (Ledger open = SqliteLedger.open(ledger)) {
            open.keep("procedure of today".getBytes(), DocumentKind.PROCEDURE_TEXT);
        }
        sealTheFourth();
        SignedCheckpoint kept = latest();
        Files.copy(copy, ledger, StandardCopyOption.REPLACE_EXISTING);
        assertEquals(Set.of(), kinds(), "without the checkpoint an older copy is clean");
        assertEquals(Set.of(FaultKind.OLDER_COPY), kinds(kept));
        List<String> words = LedgerVerifier.verify(VerificationRequest.of(ledger).against(List.of(kept))).faults().stream().map(Fault::words)
                .toList();
        assertEquals(2, words.size(), words.toString());
        assertTrue(words.get(0).contains("tells of 3 documents, and there are 2") && words.get(1).contains("tells of 40 events, and there are 39"),
                words.toString());
    }

    @Test
    void tailCutWithItsCheckpoints() throws Exception {
        SignedCheckpoint kept = latest();
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.behindTheTriggers(work -> work.run("DELETE FROM checkpoint WHERE number = 3").run("DELETE FROM event WHERE position = 39"));
        }
        assertEquals(Set.of(), kinds(), "without the checkpoint the cut is clean");
        assertEquals(Set.of(FaultKind.OLDER_COPY), kinds(kept));
    }

    @Test
    void historyMadeAnewWithTheBenchsOwnKey() throws Exception {
        SignedCheckpoint kept = latest();
        Files.delete(ledger);
        try (Ledger forged = SqliteLedger.open(ledger)) {
            SampleLedger sample = new SampleLedger(forged, key);
            sample.carryOut(4, 10);
            TestId more = TestId.create(new Random(5));
            forged.append(more, 0, List.of(sample.observation(more, 1)));
        }
        try (Tamper tamper = Tamper.with(ledger)) {
            assertEquals(40, tamper.number("SELECT count(*) FROM event"));
        }
        assertEquals(Set.of(), kinds(kept), "the same work again makes the same tree");
        Files.delete(ledger);
        try (Ledger forged = SqliteLedger.open(ledger)) {
            new SampleLedger(forged, key).carryOut(5, 10);
        }
        assertEquals(Set.of(), kinds(), "with all keys it is clean in itself");
        assertEquals(Set.of(FaultKind.HISTORY_REWRITTEN), kinds(kept));
    }

    @Test
    void documentsExchangedWithAllKeys() throws Exception {
        SignedCheckpoint kept = latest();
        assertEquals(2, kept.checkpoint().documents());
        Files.delete(ledger);
        try (Ledger forged = SqliteLedger.open(ledger)) {
            forged.keep("procedure of another day".getBytes(), DocumentKind.PROCEDURE_TEXT);
            new SampleLedger(forged, key).carryOut(4, 10);
        }
        assertEquals(Set.of(FaultKind.HISTORY_REWRITTEN), kinds(kept));
        assertEquals(Set.of(), kinds());
    }

    @Test
    void aKeptCheckpointThatSomebodyChangedOrSignedHimself() throws Exception {
        SignedCheckpoint kept = latest();
        Checkpoint said = kept.checkpoint();
        SignedCheckpoint changed = new SignedCheckpoint(new Checkpoint(said.number() + 1, said.size(), said.root(), said.documents(),
                said.documentsLink(), said.instant(), said.fingerprint(), said.signature()), kept.key());
        assertEquals(Set.of(FaultKind.KEPT_CHECKPOINT_FALSE), kinds(changed));
        Path stranger = Files.createDirectory(folder.resolve("stranger"));
        Path theirs = SampleLedger.build(stranger, 4, 10);
        try (Ledger open = SqliteLedger.openReadOnly(theirs)) {
            assertTrue(kinds(new LedgerProofs(open).latest()).contains(FaultKind.FOREIGN_KEY));
        }
    }
}
