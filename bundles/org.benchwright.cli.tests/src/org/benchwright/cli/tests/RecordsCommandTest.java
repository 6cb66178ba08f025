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

    private CommandRunner bench;
    private String departed;
    private String rehearsed;

    @BeforeAll
    void oneTestAndOneRehearsal(@TempDir Path folder) throws Exception {
        bench = new CommandRunner(folder).approved().audited();
        departed = bench.carryOut(SampleProcedure.GIVEN_UP).test();
        rehearsed = bench.rehearse(SampleProcedure.GOOD).test();
    }

    private CommandRunner.Ended run(String typed, String... words) {
        return bench.typingOnLedger(typed, words);
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
