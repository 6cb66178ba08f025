package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Checkpoint;
import org.benchwright.ledger.ConsistencyProof;
import org.benchwright.ledger.InclusionProof;
import org.benchwright.ledger.KnownSigner;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerProofs;
import org.benchwright.ledger.MerkleTree;
import org.benchwright.ledger.NoProofException;
import org.benchwright.ledger.ProofFormatException;
import org.benchwright.ledger.SignedCheckpoint;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Proofs out of a ledger: they agree with the tree's definition, hold, and stop holding as soon as a character is changed. */
class ProofsTest {

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void build() throws Exception {
        file = SampleLedger.build(folder, 4, 10);
    }

    private static List<Digest> leaves(Ledger ledger) throws Exception {
        List<Digest> leaves = new ArrayList<>();
        ledger.scan(1, entry -> leaves.add(MerkleTree.eventLeaf(entry.test(), entry.sequence(), entry.link())), Cancellation.never());
        return leaves;
    }

    @Test
    void everyPathIsThatOfTheDefinition() throws Exception {
        try (Ledger ledger = SqliteLedger.openReadOnly(file)) {
            List<Digest> leaves = leaves(ledger);
            assertEquals(39, leaves.size());
            for (int size = 1; size <= leaves.size(); size++) {
                for (int other = 1; other <= size; other++) {
                    assertEquals(MerkleTree.inclusionProof(other - 1, leaves.subList(0, size)), ledger.inclusionPath(other, size));
                    assertEquals(MerkleTree.consistencyProof(other, leaves.subList(0, size)), ledger.consistencyPath(other, size));
                }
            }
        }
    }

    @Test
    void pathsOfWhatIsNotThereAreRefused() throws Exception {
        try (Ledger ledger = SqliteLedger.openReadOnly(file)) {
            assertThrows(IllegalArgumentException.class, () -> ledger.inclusionPath(0, 39));
            assertThrows(IllegalArgumentException.class, () -> ledger.inclusionPath(5, 4));
            assertThrows(IllegalArgumentException.class, () -> ledger.consistencyPath(1, 40));
        }
    }

    @Test
    void everyEventUnderTheCheckpointIsProvedAndReadBackTheSame() throws Exception {
        try (Ledger ledger = SqliteLedger.openReadOnly(file)) {
            LedgerProofs proofs = new LedgerProofs(ledger);
            for (TestId test : ledger.tests()) {
                for (long sequence = 1; sequence <= ledger.lastSequence(test); sequence++) {
                    InclusionProof proof = proofs.inclusion(test, OptionalLong.of(sequence), sequence % 2 == 0);
                    assertTrue(proof.holds());
                    assertEquals(proof, InclusionProof.read(proof.text()));
                    assertEquals(ledger.entries(test).get((int) sequence - 1).link(), proof.link());
                }
            }
        }
    }

    @Test
    void withoutANumberTheLastCoveredEventIsProved() throws Exception {
        try (Ledger ledger = SqliteLedger.open(file)) {
            LedgerProofs proofs = new LedgerProofs(ledger);
            TestId open = ledger.tests().get(3);
            ledger.append(open, 9, List.of(new SampleLedger(ledger, BenchKeyStore.openOrCreate(folder)).observation(open, 9)));
            assertEquals(9, proofs.inclusion(open, OptionalLong.empty(), false).sequence(), "the tenth is not under a checkpoint yet");
            assertThrows(NoProofException.class, () -> proofs.inclusion(open, OptionalLong.of(10), false));
            assertThrows(NoProofException.class, () -> proofs.inclusion(new TestId("T-22222-22222"), OptionalLong.empty(), false));
        }
    }

    @Test
    void withoutASignatureNothingCanBeProved() throws Exception {
        Path empty = folder.resolve("empty.ledger");
        try (Ledger ledger = SqliteLedger.open(empty)) {
            assertThrows(NoProofException.class, () -> new LedgerProofs(ledger).latest());
        }
    }

    @Test
    void eachCheckpointIsTheBeginningOfTheNewest() throws Exception {
        try (Ledger ledger = SqliteLedger.openReadOnly(file)) {
            LedgerProofs proofs = new LedgerProofs(ledger);
            KnownSigner signer = ledger.signers().get(0);
            assertEquals(3, ledger.checkpoints().size());
            for (Checkpoint checkpoint : ledger.checkpoints()) {
                SignedCheckpoint older = new SignedCheckpoint(checkpoint, signer.key());
                assertEquals(older, SignedCheckpoint.read(older.text()));
                ConsistencyProof proof = proofs.consistency(older);
                assertTrue(proof.holds());
                assertEquals(proof, ConsistencyProof.read(proof.text()));
            }
        }
    }

    @Test
    void noLetterOrDigitOfAFileCanBeChanged() throws Exception {
        for (String text : Samples.of(file)) {
            int changes = 0;
            for (int i = 0; i < text.length(); i++) {
                if (Character.isLetterOrDigit(text.charAt(i))) {
                    String changed = Samples.changed(text, i);
                    assertFalse(Samples.holds(changed), () -> changed);
                    changes++;
                }
            }
            assertTrue(changes > 400, changes + " changes");
        }
    }

    /** The same numbers, instants and hashes in another form: nobody signed those, and another checker would not take them. */
    @Test
    void whatWouldBeWrittenOtherwiseIsRefused() throws Exception {
        List<String> samples = Samples.of(file);
        for (String[] form : Samples.OTHER_FORMS) {
            List<String> changed = samples.stream().map(text -> text.replaceFirst(form[0], form[1])).filter(text -> !samples.contains(text)).toList();
            assertFalse(changed.isEmpty(), form[0]);
            changed.forEach(text -> assertFalse(Samples.holds(text), text));
        }
    }

    @Test
    void whatIsNoProofFileIsRefusedInPlainWords() {
        for (String text : List.of("", "{}", "[]", "{\"format\":\"benchwright.checkpoint-file/2\"}", "not JSON", "{\"format\":1}")) {
            assertThrows(ProofFormatException.class, () -> SignedCheckpoint.read(text));
            assertThrows(ProofFormatException.class, () -> InclusionProof.read(text));
            assertThrows(ProofFormatException.class, () -> ConsistencyProof.read(text));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '#', value = {"not JSON | it is not the text of one JSON object without numbers.",
        "[] | it is not the text of one JSON object without numbers.", "{\"size\":1} | it is not the text of one JSON object without numbers.",
        "{} | it does not say what it is.", "{\"format\":[]} | it does not say what it is.",
        "{\"format\":\"benchwright.inclusion-proof/1\"} | it says to be \"benchwright.inclusion-proof/1\".",
        "{\"format\":\"benchwright.checkpoint-file/1\"} | it lacks some of the members of that form, or has others."})
    void whatIsNoCheckpointIsToldWithWhatWasExpectedAndWhatWasFound(String text, String words) {
        assertEquals("This is no file of the form benchwright.checkpoint-file/1: " + words, refusal(text));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"\"publicKey\" : \"[^\"]+\" | \"publicKey\" : \"AAAA\" | \"publicKey\" is missing in it, or is not what it must be.",
        "\"root\" : | \"roof\" : | \"root\" is missing in it, or is not what it must be.",
        "(\"size\" : \") | $1+ | something in it is written in another way than this program writes it.",
        "(\"instant\" : \") | $1soon | something in it is written in another way than this program writes it."}, quoteCharacter = '#')
    void whatIsOddInACheckpointIsTold(String pattern, String other, String words) throws Exception {
        String text = Samples.of(file).get(0);
        assertEquals("This is no file of the form benchwright.checkpoint-file/1: " + words, refusal(text.replaceFirst(pattern, other)));
    }

    /** Whoever made the file may have written a book into it. */
    @Test
    void whatAFileSaysOfItselfIsNotRepeatedToItsEnd() {
        String told = refusal("{\"format\":\"" + "x".repeat(100_000) + "\"}");
        assertTrue(told.length() < 200 && told.contains("xxx\u2026"), told);
    }

    private static String refusal(String text) {
        return assertThrows(ProofFormatException.class, () -> SignedCheckpoint.read(text)).getMessage();
    }

    @Test
    void aLedgerThatDoesNotLeadToItsCheckpointProvesNothing() throws Exception {
        Reckoning.rewrite(file, 14, "23.9", "24.1");
        try (Ledger ledger = SqliteLedger.openReadOnly(file)) {
            LedgerProofs proofs = new LedgerProofs(ledger);
            TestId changed = ledger.tests().get(1);
            assertThrows(LedgerDamagedException.class, () -> proofs.inclusion(changed, OptionalLong.empty(), false));
        }
    }

    @Test
    void theEventsInAProofAreTheBytesOfTheLedger() throws Exception {
        try (Ledger ledger = SqliteLedger.openReadOnly(file)) {
            TestId test = ledger.tests().get(0);
            InclusionProof proof = new LedgerProofs(ledger).inclusion(test, OptionalLong.empty(), true);
            List<String> kept = ledger.entries(test).stream().map(entry -> new String(entry.canonical(), StandardCharsets.UTF_8)).toList();
            List<String> told = new ArrayList<>(InclusionProof.read(proof.text()).earlier());
            told.add(proof.event());
            assertEquals(kept, told);
        }
    }
}
