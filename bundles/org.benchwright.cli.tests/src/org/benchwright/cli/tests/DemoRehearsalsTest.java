package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The demo's answer files: each says in its head which procedure and unit it rehearses, and what that should come to. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DemoRehearsalsTest {

    private static final Path PROCEDURES = Path.of("../../procedures").toAbsolutePath().normalize();
    private static final Path ANSWERS = PROCEDURES.resolve("answers");
    private static final Pattern REHEARSES = Pattern.compile("# For a rehearsal of (\\S+) on (\\S+)\\.");
    private static final Pattern COMES_TO = Pattern.compile("# Would-be verdict: (accepted|rejected|undecided)\\.");
    private static final Map<String, Integer> STATUS = Map.of("accepted", 0, "rejected", 3, "undecided", 4);

    private final ProcedureReader procedures = new ProcedureReader(LanguageServices.create());

    Stream<String> answerFiles() throws IOException {
        try (Stream<Path> files = Files.list(ANSWERS)) {
            List<String> names = files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(".answers")).sorted().toList();
            return names.stream();
        }
    }

    @ParameterizedTest
    @MethodSource("answerFiles")
    void comesToWhatItSays(String name, @TempDir Path folder) throws IOException {
        String head = text(name);
        Matcher rehearses = found(REHEARSES, head);
        String verdict = found(COMES_TO, head).group(1);
        CommandRunner bench = new CommandRunner(folder).with(procedures::read);

        CommandRunner.Ended ended = bench.run("test", PROCEDURES.resolve(rehearses.group(1)).toString(), "--serial", rehearses.group(2),
                "--answers", ANSWERS.resolve(name).toString(), "--ledger", bench.ledger().toString(), "--rehearse");

        assertEquals(STATUS.get(verdict), ended.status(), ended.err());
        assertTrue(ended.lastLine().startsWith("rehearsal: would be " + verdict + " | "), ended.lastLine());
        // An answer that was not needed would mean that the test took another way than its author thought.
        assertEquals("", ended.err());
        assertEquals(0, bench.run("verify", bench.ledger().toString()).status());
    }

    @Test
    void everyProcedureHasOneThatIsAccepted() throws IOException {
        try (Stream<Path> files = Files.list(PROCEDURES)) {
            List<String> written = files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(".procedure")).sorted()
                    .toList();
            assertEquals(5, written.size(), written.toString());
            assertEquals(written, answerFiles().filter(DemoRehearsalsTest::accepted).map(DemoRehearsalsTest::procedureOf).distinct().sorted()
                    .toList());
        }
    }

    private static boolean accepted(String name) {
        return found(COMES_TO, text(name)).group(1).equals("accepted");
    }

    private static String procedureOf(String name) {
        return found(REHEARSES, text(name)).group(1);
    }

    private static String text(String name) {
        try {
            return Files.readString(ANSWERS.resolve(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Matcher found(Pattern pattern, String text) {
        Matcher matcher = pattern.matcher(text);
        assertTrue(matcher.find(), () -> "the head of the file says nothing like " + pattern);
        return matcher;
    }
}
