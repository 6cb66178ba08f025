package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;

import org.benchwright.ledger.ConsistencyProof;
import org.benchwright.ledger.InclusionProof;
import org.benchwright.ledger.SignedCheckpoint;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Checkpoints and proofs on the command line. */
class ProofCommandsTest extends OnABench {

    private String test;

    @BeforeEach
    void rehearseOnce() throws Exception {
        test = bench.rehearse(SampleProcedure.GOOD).test();
    }

    /** The system would name a file that is written first, and that nobody asked for. */
    @Test
    void whereNothingCanBeWrittenIsSaidInPlainWords() throws Exception {
        Files.createDirectory(folder.resolve("papers"));
        CommandRunner.Ended onFolder = bench.onLedger("checkpoint", "--out", "papers");
        assertEquals(2, onFolder.status());
        assertEquals(folder.resolve("papers") + " can't be written: it is a folder. Name a file.\n", onFolder.err());
        CommandRunner.Ended nowhere = bench.onLedger("checkpoint", "--out", "nowhere/kept.json");
        assertEquals(2, nowhere.status());
        assertEquals(folder.resolve("nowhere/kept.json") + " can't be written: there is no folder " + folder.resolve("nowhere")
                + ". Make it, or name another one.\n", nowhere.err());
    }

    @Test
    void aTestIsProvedToTheScreenAndToAFile() throws Exception {
        CommandRunner.Ended printed = bench.onLedger("prove", test);
        assertEquals(0, printed.status(), printed.err());
        InclusionProof proof = InclusionProof.read(printed.out());
        assertTrue(proof.holds());
        assertEquals(test, proof.test().value());
        assertEquals(List.of(), proof.earlier());
        CommandRunner.Ended written = bench.onLedger("prove", test, "--with-events", "--event", "3", "--out", "proof.json");
        assertEquals("Written: " + folder.resolve("proof.json") + "\n", written.out());
        InclusionProof third = InclusionProof.read(Files.readString(folder.resolve("proof.json")));
        assertTrue(third.holds());
        assertEquals(3, third.sequence());
        assertEquals(2, third.earlier().size());
    }

    @Test
    void aKeptCheckpointTellsALedgerThatGrewFromAnOlderCopy() throws Exception {
        assertEquals(0, bench.onLedger("checkpoint", "--out", "first.json").status());
        Path copy = Files.copy(bench.ledger(), folder.resolve("yesterday"));
        bench.rehearse(SampleProcedure.GOOD);
        assertEquals(0, bench.onLedger("checkpoint", "--out", "second.json").status());
        assertTrue(SignedCheckpoint.read(Files.readString(folder.resolve("second.json"))).holds());
        ConsistencyProof grown = ConsistencyProof.read(bench.onLedger("prove", "--since", "first.json").out());
        assertTrue(grown.holds());
        CommandRunner.Ended sound = bench.onLedger("verify", "--checkpoint", "first.json", "--checkpoint", "second.json");
        assertEquals(0, sound.status(), sound.out());
        assertTrue(sound.out().contains("Compared with 2 kept checkpoints."), sound.out());

        Files.copy(copy, bench.ledger(), StandardCopyOption.REPLACE_EXISTING);
        assertEquals(0, bench.onLedger("verify").status(), "in itself an older copy is sound");
        CommandRunner.Ended older = bench.onLedger("verify", "--checkpoint", "second.json");
        assertEquals(1, older.status());
        assertTrue(older.said().contains("this is an older copy, or the end was cut off."), older.out());
        CommandRunner.Ended unproved = bench.onLedger("prove", "--since", "second.json");
        assertEquals(1, unproved.status());
        assertTrue(unproved.err().contains("older copy"), unproved.err());
    }

    @Test
    void whatCannotBeProvedIsSaidInALine() throws Exception {
        Files.writeString(folder.resolve("letter.txt"), "Dear Sirs");
        Files.write(folder.resolve("photo.jpg"), new byte[] {(byte) 0xff, (byte) 0xd8});
        try (RandomAccessFile endless = new RandomAccessFile(folder.resolve("endless.json").toFile(), "rw")) {
            endless.setLength(1L << 42);
        }
        for (String[] arguments : List.of(new String[] {"prove"}, new String[] {"prove", test, "--since", "letter.txt"},
                new String[] {"prove", "T-22222-22222"}, new String[] {"prove", "that"}, new String[] {"prove", test, "--event", "100000"},
                new String[] {"prove", "--since", "letter.txt"}, new String[] {"verify", "--checkpoint", "letter.txt"},
                new String[] {"verify", "--checkpoint", "photo.jpg"}, new String[] {"verify", "--checkpoint", "endless.json"},
                new String[] {"prove", "--since", "endless.json"})) {
            CommandRunner.Ended ended = bench.onLedger(arguments);
            assertEquals(1, ended.status(), String.join(" ", arguments) + ended.err());
            assertEquals(1, ended.err().lines().count(), ended.err());
            assertEquals("", ended.out());
        }
        assertEquals(2, bench.onLedger("prove", "--since", "missing.json").status());
        assertEquals(2, bench.onLedger("prove", test, "--out", "no/such/folder/proof.json").status());
        assertFalse(Files.exists(folder.resolve("no")));
    }

    @Test
    void aProofInThePlaceOfACheckpointIsSaidToBeOne() {
        assertEquals(0, bench.onLedger("prove", test, "--out", "proof.json").status());
        assertEquals("This is no file of the form benchwright.checkpoint-file/1: it says to be \"benchwright.inclusion-proof/1\".\n",
                bench.onLedger("verify", "--checkpoint", "proof.json").err());
    }

    @Test
    void aLinkToALedgerIsVerifiedByTheKeyBesideTheLedger() throws Exception {
        Path link = Files.createSymbolicLink(folder.resolve("today.ledger"), bench.ledger());
        for (CommandRunner.Ended ended : List.of(bench.run("verify", link.toString()), bench.run("verify", "--ledger", "today.ledger"))) {
            assertEquals(0, ended.status(), ended.err());
            assertFalse(ended.said().contains("There is no bench-key.pub"), ended.said());
        }
    }

    @Test
    void nothingIsWrittenOverALedgerOrAKey() throws Exception {
        for (String name : List.of("bench.ledger", "bench-key.pem", "bench-key.pub")) {
            Path file = bench.ledger().resolveSibling(name);
            byte[] before = Files.readAllBytes(file);
            CommandRunner.Ended ended = bench.onLedger("prove", test, "--out", file.toString());
            assertEquals(2, ended.status(), ended.out());
            assertTrue(ended.err().contains("a ledger or a key is there. Name another file."), ended.err());
            assertArrayEquals(before, Files.readAllBytes(file));
        }
    }

    @Test
    void twoLedgersAreNotVerifiedAsOne() {
        assertEquals(1, bench.onLedger("verify", bench.ledger().toString()).status(), "one by its place, one by its option");
        ledgerIsSound();
    }

    @Test
    void whereNothingSaysWhoseLedgerItIsThatIsTold() throws Exception {
        assertFalse(bench.onLedger("verify").out().contains("There is no bench-key.pub"));
        Files.delete(bench.ledger().resolveSibling("bench-key.pub"));
        assertTrue(bench.onLedger("verify").said().contains("There is no bench-key.pub beside this ledger, so any bench may have signed it."));
    }
}
