package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

import org.benchwright.workshop.tests.SamplePhoto;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteConfig;

/**
 * The terminal on a disk that is really full or really read-only: a small file system of its own, mounted in a name space of its own, which an
 * ordinary user may do on Linux where it is allowed.
 */
class TroubledDiskTest {

    private static final int SECONDS = 300;
    private static final int ROUNDS = Integer.getInteger("benchwright.disk.rounds", 1);
    private static final long SEED = Long.getLong("benchwright.disk.seed", 3);
    /** Room for the first few events of a test, and for nearly all. */
    private static final int SMALLEST_KIB = 230;
    private static final int LARGEST_KIB = 420;

    @TempDir
    Path folder;

    @BeforeEach
    void prepare() throws Exception {
        Files.createDirectory(folder.resolve("disk"));
        Files.write(folder.resolve("plate.jpg"), SamplePhoto.of("plate"));
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

    /** Filled up at random by something else in mid-test; {@code releng/campaign --disk} does it as often as it is told. */
    @Test
    void wheneverTheDiskFillsUpNothingAcknowledgedIsMissing() throws Exception {
        Random random = new Random(SEED);
        int full = 0;
        for (int round = 1; round <= ROUNDS; round++) {
            int kib = SMALLEST_KIB + random.nextInt(LARGEST_KIB - SMALLEST_KIB);
            Ended ended = shell("""
                    mount -o remount,size=%dk disk
                    rehearse > first; echo "first $?"
                    mount -o remount,size=20m disk
                    if [ -s disk/bench.ledger ]; then bench verify disk/bench.ledger > found; echo "found $?"; else echo "found 0"; fi
                    rehearse > second; echo "second $?"
                    bench verify disk/bench.ledger > again; echo "again $?"
                    """.formatted(kib));
            String where = "round " + round + " of seed " + SEED + ", " + kib + " KiB: " + ended.out();
            boolean filled = ended.out().contains("first 2");
            assertTrue(filled || ended.out().contains("first 0"), where);
            assertEquals(filled ? 1 : 0, ended.out().lines().filter(line -> line.contains("There is no room left")).count(), where);
            assertTrue(ended.out().contains("found 0") && ended.out().contains("second 0") && ended.out().contains("again 0"), where);
            OptionalInt acknowledged = numbers("first").max();
            if (filled && acknowledged.isPresent()) {
                assertTrue(numbers("second").min().orElse(0) > acknowledged.getAsInt(), "acknowledged, but written over: " + where);
            }
            full += filled ? 1 : 0;
        }
        assertTrue(full > 0, "no disk was ever full");
        String report = System.getProperty("benchwright.disk.report", "");
        if (!report.isEmpty()) {
            Files.writeString(Path.of(report), "seed %d: %d disks of %d to %d KiB, %d of them full in mid-test: told plainly, nothing acknowledged is missing, it went on when there was room%n"
                    .formatted(SEED, ROUNDS, SMALLEST_KIB, LARGEST_KIB, full));
        }
    }

    /** The numbers of the events that a run of the terminal acknowledged. */
    private IntStream numbers(String file) throws IOException {
        return Pattern.compile("^\\[(\\d+)\\] ", Pattern.MULTILINE).matcher(Files.readString(folder.resolve(file))).results()
                .mapToInt(found -> Integer.parseInt(found.group(1)));
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
