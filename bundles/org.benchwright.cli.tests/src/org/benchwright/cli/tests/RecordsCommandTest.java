package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Records are found at the terminal by whatever the window finds them by. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class RecordsCommandTest {

    /** Strap, room, then the make-safe key and why; supply off, dead. */
    private static final String GIVEN_UP = "y, 4711\n22,5 degC\n! The plate is missing.\n\nM-17, 0.02 V, k 2, due 2027-03-01\n0,4\n";

    private CommandRunner bench;
    private String departed;
    private String rehearsed;

    @BeforeAll
    void oneTestAndOneRehearsal(@TempDir Path folder) throws Exception {
        bench = new CommandRunner(folder).approved().audited();
        departed = bench.carryOut(GIVEN_UP).lastLine().replaceAll("^.*\\| ", "");
        rehearsed = bench.rehearse(SampleProcedure.GOOD).lastLine().replaceAll("^.*\\| ", "");
    }

    private CommandRunner.Ended run(String typed, String... words) {
        List<String> arguments = new ArrayList<>(List.of(words));
        arguments.addAll(List.of("--ledger", bench.ledger().toString()));
        return bench.typing(typed, arguments.toArray(String[]::new));
    }

    private List<String> found(String... words) {
        List<String> arguments = new ArrayList<>(List.of("records"));
        arguments.addAll(List.of(words));
        CommandRunner.Ended ended = run("", arguments.toArray(String[]::new));
        assertEquals(0, ended.status(), ended.err());
        return ended.out().lines().filter(line -> line.startsWith("T-")).map(line -> line.substring(0, departed.length())).toList();
    }

    @Test
    void withoutWordsAllAreListedTheLatestFirst() {
        assertEquals(List.of(rehearsed, departed), found());
        assertTrue(run("", "records").out().contains("2 of 2 tests."), run("", "records").out());
        assertEquals(List.of(), found("nothing of the kind"));
    }

    /** Serial number, family, procedure, verdict, departure, person, instrument, date. */
    @ParameterizedTest
    @ValueSource(strings = {"c16-004711 undecided", "tarn undecided", "acceptance undecided", "undecided", "departure missing", "QN undecided", "M-17 undecided",
        "2026-03-02 undecided"})
    void aTestIsFoundBy(String words) {
        assertEquals(List.of(departed), found(words.split(" ")));
    }
}
