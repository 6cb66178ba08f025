package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.time.ZoneOffset;
import java.util.Arrays;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Backups, what is made of them again, and archives of a year, at the terminal. */
class CopyCommandsTest extends OnAnApprovedBench {

    /** As verify says it of the same file. */
    @Test
    void aKeptCheckpointThatIsNoTextIsRefusedByAll() throws Exception {
        done(run("backup", "kept"), "The copy is sound.");
        Files.write(folder.resolve("picture.jpg"), new byte[] {(byte) 0xff, (byte) 0xd8, 0, 1});
        bench.run("verify", "kept/bench.ledger", "--checkpoint", "picture.jpg").refused("picture.jpg is not a text file in UTF-8");
        bench.run("restore", "kept", "--ledger", "new/bench.ledger", "--checkpoint", "picture.jpg").refused("picture.jpg is not a text file in UTF-8");
        assertEquals(2, bench.run("restore", "kept", "--ledger", "new/bench.ledger", "--checkpoint", "nothing.json").status());
        assertTrue(Files.notExists(folder.resolve("new")), "nothing was made");
    }

    @BeforeEach
    void work() throws Exception {
        bench.rehearse(SampleProcedure.GOOD);
    }

    private CommandRunner.Ended run(String... arguments) {
        String[] all = Arrays.copyOf(arguments, arguments.length + 2);
        all[arguments.length] = "--ledger";
        all[arguments.length + 1] = bench.ledger().toString();
        return bench.run(all);
    }

    private static void done(CommandRunner.Ended ended, String words) {
        assertEquals(0, ended.status(), ended.out() + ended.err());
        assertTrue(ended.said().contains(words), ended.out());
    }

    @Test
    void aBackupIsVerifiedAndNeverOverwritten() {
        done(run("backup", "kept"), "The copy is sound.");
        done(bench.run("verify", "kept/bench.ledger", "--checkpoint", "kept/checkpoint.json"), "The ledger is sound.");
        CommandRunner.Ended again = run("backup", "kept");
        assertEquals(1, again.status());
        assertTrue(again.err().contains("left as it is"), again.err());
    }

    @Test
    void workGoesOnAfterARestoreAndWhatLacksIsTold() throws Exception {
        done(run("backup", "kept", "--with-keys"), "The copy is sound.");
        bench.rehearse(SampleProcedure.GOOD);
        done(run("checkpoint", "--out", "later.json"), "Written");
        CommandRunner.Ended older = bench.run("restore", "kept", "--ledger", "new/bench.ledger", "--checkpoint", "later.json");
        assertEquals(1, older.status());
        assertTrue(older.said().contains("this is an older copy, or the end was cut off"), older.out());
        done(bench.run("verify", "new/bench.ledger"), "The ledger is sound.");
        CommandRunner.Ended taken = bench.run("restore", "kept", "--ledger", "new/bench.ledger");
        assertEquals(1, taken.status());
        assertTrue(taken.err().contains("empty folder only"), taken.err());
        assertEquals(2, bench.run("restore", "nowhere", "--ledger", "other/bench.ledger").status());
    }

    @Test
    void anArchiveOfAYearIsCheckedAlone() throws Exception {
        int year = bench.time().instant().atZone(ZoneOffset.UTC).getYear();
        done(run("archive", "--year", String.valueOf(year), "--out", "year.zip"), "1 test, ");
        Files.delete(bench.ledger());
        done(bench.run("archive", "--check", "year.zip"), "The archive is sound.");
        assertEquals(1, bench.run("archive", "--check", "year.zip", "--year", "2026").status());
        assertEquals(2, bench.run("archive", "--check", "plate.jpg").status());
    }
}
