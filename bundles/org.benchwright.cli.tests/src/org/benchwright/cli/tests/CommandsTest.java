package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.Statement;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

import org.benchwright.cli.Surroundings;
import org.benchwright.cli.internal.Commands;
import org.benchwright.core.Digest;
import org.benchwright.language.Reading;
import org.benchwright.present.Bench;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.sqlite.SQLiteDataSource;

/** Arguments, help, exit statuses, and the commands that only read. */
class CommandsTest extends OnABench {

    @Test
    void theVersionIsPrintedAndNothingElse() {
        assertEquals(new CommandRunner.Ended(0, "Benchwright 0.1.0\n", ""), bench.run("--version"));
    }

    static List<String> commands() {
        Surroundings none = new Surroundings(InputStream.nullInputStream(), OutputStream.nullOutputStream(), OutputStream.nullOutputStream(), false,
                Map.of(), Path.of(""), Optional.empty(), Bench.Clocks.system(), ZoneOffset.UTC, "0.1.0");
        return new Commands(none, SampleProcedure.SOURCE, around -> {
            throw new AssertionError("nobody is asked anything");
        }).names();
    }

    @ParameterizedTest
    @MethodSource("commands")
    void everyCommandHasHelp(String command) {
        CommandRunner.Ended ended = bench.run(command, "--help");
        assertEquals(0, ended.status());
        assertEquals("", ended.err());
        assertTrue(ended.out().startsWith("Usage: bench " + command), ended.out());
        assertTrue(ended.said().contains("Exit status:"), ended.out());
        assertTrue(bench.run("--help").out().contains("  " + command), "the commands are listed");
        assertFalse(ended.out().contains("--password"), "whoever lists the processes would read it");
    }

    @Test
    void badArgumentsAreToldInALineOrTwo() {
        for (String[] arguments : List.of(new String[] {"test"}, new String[] {"test", "x"}, new String[] {"fly"}, new String[] {"check"},
                new String[] {"units", "--fast"}, new String[] {"verify", "a", "b"})) {
            CommandRunner.Ended ended = bench.run(arguments);
            assertEquals(1, ended.status(), String.join(" ", arguments));
            assertEquals("", ended.out());
            assertTrue(ended.err().lines().count() <= 3, ended.err());
            assertTrue(ended.err().contains("--help"), ended.err());
        }
    }

    /** A list that ends where the disk was full looks whole. */
    @Test
    void whatCouldNotBePrintedIsNotDone() throws Exception {
        bench.rehearse(SampleProcedure.GOOD);
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        String[] export = {"export", "--rehearsals", "--ledger", bench.ledger().toString()};
        assertEquals(2, bench.talking(InputStream.nullInputStream(), full("No space left on device"), err, export));
        assertEquals("Not all that was to be printed could be written: No space left on device. What was recorded is safe.\n", err.toString(StandardCharsets.UTF_8));
        err.reset();
        assertEquals(2, bench.talking(InputStream.nullInputStream(), full("Broken pipe"), err, export));
        assertEquals("", err.toString(StandardCharsets.UTF_8), "whoever has read enough goes away");
    }

    private static OutputStream full(String why) {
        return new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException(why);
            }
        };
    }

    /** Standard output has the files that were laid out, for whoever reads them from there. */
    @Test
    void whatIsNotLaidOutIsNoFileThatWas() throws Exception {
        Files.writeString(folder.resolve("odd.procedure"), "procedure nothing");
        CommandRunner.Ended ended = bench.run("format", "odd.procedure");
        ended.refused("has syntax errors and stays as it is");
        assertEquals("", ended.out());
    }

    /** It would be taken for a ledger that nothing was written into yet. */
    @Test
    void anEmptyFileIsNoLedger() throws Exception {
        Path empty = Files.createFile(folder.resolve("empty.ledger"));
        for (String command : List.of("watch --for 0", "receive C16-004711", "instruments add M-1 --title Meter", "departures")) {
            String[] words = (command + " --ledger empty.ledger").split(" ");
            CommandRunner.Ended ended = bench.run(words);
            assertEquals(2, ended.status(), command);
            assertEquals(empty + " is empty, and no ledger. Name the right file; it was left as it is.\n", ended.err());
            assertEquals(0, Files.size(empty), command);
        }
    }

    @Test
    void whatDiffCannotCompareIsNoDifference() throws Exception {
        bench.run("diff", "one.procedure").refused("Name two files");
        Files.writeString(folder.resolve("empty.procedure"), "");
        bench.run("diff", "empty.procedure", "empty.procedure").refused("holds no single procedure");
    }

    @Test
    void wordsFollowTheirNumber() throws Exception {
        Path empty = Files.createDirectory(folder.resolve("empty"));
        assertTrue(bench.run("check", empty.toString()).err().contains("0 files checked: 0 errors, 0 warnings."));
        Files.writeString(empty.resolve("odd.family"), "nothing");
        CommandRunner.Ended one = bench.run("check", empty.toString());
        assertTrue(one.err().contains("1 file checked: 1 error, 0 warnings."), one.err() + one.out());
    }

    @Test
    void aProcedureThatIsNotOneIsTold() {
        bench.with((file, family) -> new Reading.Refused(List.of(), 2));
        CommandRunner.Ended ended = bench.run("test", "two.procedure", "--serial", "C16-004711", "--ledger", bench.ledger().toString());
        assertEquals(1, ended.status());
        assertTrue(ended.err().contains("holds 2 procedures. Give a file with exactly one."), ended.err());
        assertFalse(Files.exists(bench.ledger()));
    }

    @Test
    void whatNobodyExpectedIsOneLineAndAFile() throws Exception {
        String before = System.setProperty("user.home", folder.toString());
        try {
            bench.with((file, family) -> {
                throw new IllegalStateException("a thing that cannot be");
            });
            CommandRunner.Ended ended = bench.run("test", "x.procedure", "--serial", "C16-004711", "--ledger", bench.ledger().toString());
            assertEquals(2, ended.status());
            assertEquals(1, ended.err().lines().count(), ended.err());
            assertTrue(ended.err().startsWith("Something unexpected happened (IllegalStateException). What was recorded before is safe."),
                    ended.err());
            Path log = Path.of(ended.err().strip().replaceAll("^.*For the developers: ", ""));
            assertTrue(Files.readString(log).contains("a thing that cannot be"));
            Files.delete(log);
        } finally {
            System.setProperty("user.home", before);
        }
    }

    @Test
    void aLedgerThatIsNotThereIsNotMade() {
        Path missing = folder.resolve("nowhere").resolve("bench.ledger");
        CommandRunner.Ended units = bench.run("units", "--ledger", missing.toString());
        CommandRunner.Ended verify = bench.run("verify", missing.toString());
        assertEquals(2, units.status());
        assertEquals(2, verify.status());
        assertEquals(1, verify.err().lines().count(), verify.err());
        assertFalse(Files.exists(missing.getParent()));
    }

    @Test
    void aFileThatIsNoLedgerCannotBeVerified() throws Exception {
        Path letter = Files.writeString(folder.resolve("letter.txt"), "Dear Sirs, ".repeat(1000));
        assertEquals(2, bench.run("verify", letter.toString()).status());
        assertEquals(2, bench.run("verify", folder.toString()).status());
    }

    @Test
    void verifyingChangesNothing() throws Exception {
        bench.rehearse(SampleProcedure.without("lamps.ok"));
        bench.rehearse(SampleProcedure.GOOD);
        bench.rehearse(SampleProcedure.without("lamps.ok"));
        Map<String, String> before = state();
        CommandRunner.Ended ended = bench.run("verify", bench.ledger().toString());
        assertEquals(0, ended.status(), ended.out());
        assertTrue(ended.said().contains("Decisions: 2 of 2 tests derived again, no fault"), ended.out());
        assertTrue(ended.said().contains("Open tests, verified as far as they go: 1 C16-004711 Power up, LIVE at step \"lamps\""), ended.out());
        assertEquals(0, bench.run("units", "--ledger", bench.ledger().toString()).status());
        assertEquals(before.toString().replace(", ", ",\n"), state().toString().replace(", ", ",\n"));
    }

    private Map<String, String> state() throws IOException {
        Map<String, String> state = new TreeMap<>();
        try (Stream<Path> files = Files.walk(bench.ledger().getParent())) {
            // The store's log and its index come and go with every reader; the log must hold nothing.
            for (Path file : files.filter(Files::isRegularFile).filter(file -> !file.toString().endsWith("-shm")).toList()) {
                if (file.toString().endsWith("-wal")) {
                    assertEquals(0, Files.size(file));
                    continue;
                }
                FileTime changed = Files.getLastModifiedTime(file);
                state.put(file.toString(), changed + " " + Digest.of(Files.readAllBytes(file)).hex());
            }
        }
        return state;
    }

    @Test
    void aChangedByteIsFoundWithTestAndEvent() throws Exception {
        CommandRunner.Ended rehearsed = bench.rehearse(SampleProcedure.GOOD);
        String test = rehearsed.test();
        changeAnEvent("24,02V", "24,03V");
        CommandRunner.Ended ended = bench.run("verify", bench.ledger().toString());
        assertEquals(1, ended.status());
        assertEquals("The ledger is NOT sound.", ended.lastLine());
        assertTrue(ended.out().lines().anyMatch(line -> line.startsWith("  Test " + test + ", event ")), ended.out());
    }

    /** Changes an event as somebody with a database tool would, who first takes the triggers out of his way. */
    private void changeAnEvent(String from, String to) throws Exception {
        SQLiteDataSource database = new SQLiteDataSource();
        database.setUrl("jdbc:sqlite:" + bench.ledger());
        try (Connection connection = database.getConnection(); Statement statement = connection.createStatement()) {
            List<String> triggers = new ArrayList<>();
            try (var rows = statement.executeQuery("SELECT name FROM sqlite_master WHERE type = 'trigger'")) {
                while (rows.next()) {
                    triggers.add(rows.getString(1));
                }
            }
            for (String trigger : triggers) {
                statement.execute("DROP TRIGGER " + trigger);
            }
            String set = """
                    UPDATE event SET canonical = CAST(REPLACE(CAST(canonical AS TEXT), '%s', '%s') AS BLOB)
                    WHERE instr(CAST(canonical AS TEXT), '%s') > 0""".formatted(from, to, from);
            assertEquals(1, statement.executeUpdate(set));
        }
    }

    @Test
    void nothingOnTheBenchIsSaidToo() throws Exception {
        bench.rehearse(SampleProcedure.GOOD);
        assertEquals(new CommandRunner.Ended(0, "No unit is on the bench.\n", ""), bench.run("units", "--ledger", bench.ledger().toString()));
    }

    @Test
    void withoutArgumentsAndDemoItIsSaid() {
        CommandRunner.Ended ended = bench.run();
        assertEquals(1, ended.status());
        assertTrue(ended.out().startsWith("There is no folder with the demo procedures"), ended.out());
    }
}
