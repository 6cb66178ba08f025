package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.time.ZoneOffset;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Backups, what is made of them again, and archives of a year, at the terminal. */
class CopyCommandsTest extends OnAnApprovedBench {

    @BeforeEach
    void work() throws Exception {
        bench.rehearse(SampleProcedure.GOOD);
    }

    /** As verify says it of the same file. */
    @Test
    void aKeptCheckpointThatIsNoTextIsRefusedByAll() throws Exception {
        bench.onLedger("backup", "kept").says("The copy is sound.");
        Files.write(folder.resolve("picture.jpg"), new byte[] {(byte) 0xff, (byte) 0xd8, 0, 1});
        bench.run("verify", "kept/bench.ledger", "--checkpoint", "picture.jpg").refused("picture.jpg is not a text file in UTF-8");
        bench.run("restore", "kept", "--ledger", "new/bench.ledger", "--checkpoint", "picture.jpg").refused("picture.jpg is not a text file in UTF-8");
        assertEquals(2, bench.run("restore", "kept", "--ledger", "new/bench.ledger", "--checkpoint", "nothing.json").status());
        assertTrue(Files.notExists(folder.resolve("new")), "nothing was made");
    }

    @Test
    void aBackupIsVerifiedAndNeverOverwritten() {
        bench.onLedger("backup", "kept").says("The copy is sound.");
        bench.run("verify", "kept/bench.ledger", "--checkpoint", "kept/checkpoint.json").says("The ledger is sound.");
        CommandRunner.Ended again = bench.onLedger("backup", "kept");
        assertEquals(1, again.status());
        assertTrue(again.err().contains("left as it is"), again.err());
    }

    @Test
    void workGoesOnAfterARestoreAndWhatLacksIsTold() throws Exception {
        bench.onLedger("backup", "kept", "--with-keys").says("The copy is sound.");
        bench.rehearse(SampleProcedure.GOOD);
        bench.onLedger("checkpoint", "--out", "later.json").says("Written");
        CommandRunner.Ended older = bench.run("restore", "kept", "--ledger", "new/bench.ledger", "--checkpoint", "later.json");
        assertEquals(1, older.status());
        assertTrue(older.said().contains("this is an older copy, or the end was cut off"), older.out());
        bench.run("verify", "new/bench.ledger").says("The ledger is sound.");
        CommandRunner.Ended taken = bench.run("restore", "kept", "--ledger", "new/bench.ledger");
        assertEquals(1, taken.status());
        assertTrue(taken.err().contains("empty folder only"), taken.err());
        assertEquals(2, bench.run("restore", "nowhere", "--ledger", "other/bench.ledger").status());
    }

    @Test
    void anArchiveOfAYearIsCheckedAlone() throws Exception {
        int year = bench.time().instant().atZone(ZoneOffset.UTC).getYear();
        bench.onLedger("archive", "--year", String.valueOf(year), "--out", "year.zip").says("1 test, ");
        Files.delete(bench.ledger());
        bench.onLedger("archive", "--check", "year.zip").says("The archive is sound.");
        assertEquals(1, bench.onLedger("archive", "--check", "year.zip", "--year", "2026").status());
        assertEquals(2, bench.onLedger("archive", "--check", "plate.jpg").status());
    }
}
