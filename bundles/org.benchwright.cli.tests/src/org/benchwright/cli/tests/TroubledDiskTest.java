package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteConfig;

/**
 * The terminal on a disk that is really full or really read-only: a small file system of its own, mounted in a name space of its own, which an
 * ordinary user may do on Linux where it is allowed.
 */
class TroubledDiskTest {

    private static final int SECONDS = 120;

    @TempDir
    Path folder;

    @BeforeEach
    void prepare() throws Exception {
        Files.createDirectory(folder.resolve("disk"));
        Files.write(folder.resolve("plate.jpg"), new byte[] {1, 2, 3});
        Files.writeString(folder.resolve("good.answers"), SampleProcedure.GOOD);
        assumeTrue(shell("true").status() == 0, "no name spaces of one's own here");
    }

    private record Ended(int status, String out) {
    }

    /** Runs a script on a disk of 700 KiB, mounted at {@code disk}; {@code bench} is the terminal. */
    private Ended shell(String script) throws IOException, InterruptedException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Path file = Files.writeString(folder.resolve("script"), "set -e\nmount -t tmpfs -o size=700k,mode=0777 tmpfs disk\nset +e\n"
                + "bench() { '" + java + "' -Xshare:auto -XX:TieredStopAtLevel=1 -cp \"$BENCH_CLASSES\" " + PlainBench.class.getName() + " \"$@\"; }\n"
                + "rehearse() { bench test c16.procedure --serial C16-004711 --answers good.answers --rehearse --ledger disk/bench.ledger; }\n" + script + "\n");
        Path log = folder.resolve("log");
        ProcessBuilder builder = new ProcessBuilder(List.of("unshare", "--user", "--map-root-user", "--mount", "sh", file.toString()))
                .directory(folder.toFile()).redirectErrorStream(true).redirectOutput(log.toFile());
        builder.environment().put("BENCH_CLASSES", ClassPath.text());
        Process process = builder.start();
        assertTrue(process.waitFor(SECONDS, TimeUnit.SECONDS));
        return new Ended(process.exitValue(), Files.readString(log));
    }

    @Test
    void aTestOnADiskThatFillsUpEndsPlainlyAndGoesOnWhenThereIsRoom() throws Exception {
        Ended ended = shell("""
                mount -o remount,size=300k disk
                rehearse > first; echo "first $?"
                bench verify disk/bench.ledger > found; echo "verify $?"
                mount -o remount,size=20m disk
                rehearse > second; echo "second $?"
                bench verify disk/bench.ledger > again; echo "again $?"
                """);
        assertTrue(ended.out().contains("first 2"), ended.out() + Files.readString(folder.resolve("first")));
        assertEquals(1, ended.out().lines().filter(line -> line.contains("There is no room left")).count(), ended.out());
        assertTrue(ended.out().contains("verify 0"), ended.out() + Files.readString(folder.resolve("found")));
        assertTrue(ended.out().contains("second 0"), ended.out() + Files.readString(folder.resolve("second")));
        assertTrue(ended.out().contains("again 0"), ended.out());
        String second = Files.readString(folder.resolve("second"));
        assertTrue(second.contains("is taken up again"), "nothing acknowledged was lost: " + second);
    }

    @Test
    void aBackupOnADiskThatIsTooSmallLeavesNothingHalf() throws Exception {
        Ended ended = shell("""
                mkdir home
                bench test c16.procedure --serial C16-004711 --answers good.answers --rehearse --ledger home/bench.ledger > first; echo "first $?"
                dd if=/dev/zero of=disk/other bs=1k count=640 2> /dev/null
                bench backup disk/kept --ledger home/bench.ledger > out; echo "backup $?"
                ls disk
                """);
        assertTrue(ended.out().contains("first 0"), ended.out());
        assertTrue(ended.out().contains("backup 2"), ended.out());
        assertTrue(ended.out().contains("There is no room left"), ended.out());
        assertTrue(ended.out().endsWith("other\n") && !ended.out().contains("part"), ended.out());
    }

    @Test
    void aDiskThatIsReadOnlyIsToldBeforeAnythingIsAsked() throws Exception {
        Ended ended = shell("""
                mount -o remount,size=20m disk
                rehearse > first; echo "first $?"
                mount -o remount,ro disk
                rehearse > second; echo "second $?"
                bench verify disk/bench.ledger > found; echo "verify $?"
                """);
        assertTrue(ended.out().contains("first 0"), ended.out());
        assertTrue(ended.out().contains("second 2"), ended.out());
        assertEquals(1, ended.out().lines().filter(line -> line.contains("can't be written to")).count(), ended.out());
        assertTrue(ended.out().contains("verify 0"), ended.out());
    }

    @Test
    void aNewerFormatIsToldAndLeftAsItIs() throws Exception {
        CommandRunner bench = new CommandRunner(folder);
        bench.rehearse(SampleProcedure.GOOD);
        try (var connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + bench.ledger());
                var statement = connection.createStatement()) {
            statement.execute("PRAGMA user_version = 9");
        }
        CommandRunner.Ended ended = bench.rehearse(SampleProcedure.GOOD);
        assertEquals(2, ended.status());
        assertTrue(ended.err().contains("newer release"), ended.err());
        assertEquals(1, ended.err().lines().count(), ended.err());
    }
}
