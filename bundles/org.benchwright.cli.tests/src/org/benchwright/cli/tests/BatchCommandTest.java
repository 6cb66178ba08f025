package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.benchwright.present.Bench;
import org.benchwright.present.TimelineLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The tests of several units are begun one after the other. */
class BatchCommandTest extends OnAnApprovedBench {

    private static final Pattern OPENED = Pattern.compile("(\\S+ \\S+)  (C16-\\d+): test (\\S+) is opened\\.");

    private CommandRunner.Ended batch(String serials, String... more) {
        String[] first = {"test", "c16.procedure", "--ledger", bench.ledger().toString()};
        Stream<String> each = Stream.of(serials.split(" ")).flatMap(serial -> Stream.of("--serial", serial));
        return bench.run(Stream.of(Stream.of(first), each, Stream.of(more)).flatMap(part -> part).toArray(String[]::new));
    }

    private List<MatchResult> opened(CommandRunner.Ended ended) {
        return OPENED.matcher(ended.out()).results().toList();
    }

    private Instant onRecord(String test) throws Exception {
        try (Bench read = Bench.read(bench.ledger(), bench.clocks())) {
            TimelineLine first = read.record(test).orElseThrow().story().get(0);
            return first.instant();
        }
    }

    private String units() {
        return bench.run("units", "--ledger", bench.ledger().toString()).out();
    }

    @Test
    void eachIsOpenedAtItsTimeWithAnEventOfItsOwnAndLeftOpen() throws Exception {
        Instant before = bench.time().instant();
        CommandRunner.Ended ended = batch("C16-004711 C16-004712,C16-004713", "--apart", "5 min");
        assertEquals(5, ended.status(), ended.err());
        assertTrue(ended.out().startsWith("2026-03-02 07:30:00  C16-004712: begins 07:35, in 5 min"), ended.out());
        List<MatchResult> opened = opened(ended);
        assertEquals(List.of("C16-004711", "C16-004712", "C16-004713"), opened.stream().map(one -> one.group(2)).toList());
        for (int i = 0; i < 3; i++) {
            assertEquals(before.plus(Duration.ofMinutes(5L * i)), onRecord(opened.get(i).group(3)));
        }
        assertTrue(ended.out().contains("3 of 3 begun."), ended.out());
        assertEquals("", ended.err());
        assertEquals(3, opened.stream().filter(one -> units().contains(one.group(3))).count());
        ledgerIsSound();
    }

    @Test
    void whoeverEndsItIsToldWhichWereNotBegun() throws Exception {
        AtomicInteger waited = new AtomicInteger();
        bench.waitingBy(time -> {
            bench.time().advance(time);
            if (waited.incrementAndGet() > 400) {
                throw new InterruptedException();
            }
        });
        CommandRunner.Ended ended = batch("C16-004711 C16-004712 C16-004713 C16-004714", "--apart", "5 min");
        // The thread that was interrupted is this one.
        Thread.interrupted();
        assertEquals(List.of("C16-004711", "C16-004712"), opened(ended).stream().map(one -> one.group(2)).toList());
        assertTrue(ended.err().contains("Not begun: C16-004713, C16-004714"), ended.err());
        assertFalse(units().contains("C16-004713"), "it is not begun later either");
    }

    @Test
    void oneThatWasOpenedElsewhereMeanwhileIsToldAndTheOthersGoOn() throws Exception {
        AtomicInteger waited = new AtomicInteger();
        bench.waitingBy(time -> {
            bench.time().advance(time);
            if (waited.incrementAndGet() == 10) {
                Thread other = new Thread(() -> new Elsewhere().opens("C16-004712"));
                other.start();
                other.join();
            }
        });
        CommandRunner.Ended ended = batch("C16-004711 C16-004712 C16-004713", "--apart", "1 min");
        assertEquals(1, ended.status(), ended.out());
        assertTrue(ended.out().contains("07:31:00  C16-004712: NOT BEGUN: C16-004712 is open already in test T-"), ended.out());
        assertEquals(List.of("C16-004711", "C16-004713"), opened(ended).stream().map(one -> one.group(2)).toList());
        assertTrue(ended.err().contains("Not begun: C16-004712"), ended.err());
        assertTrue(ended.out().contains("2 of 3 begun."), ended.out());
    }

    /** Another terminal on the same bench. */
    private final class Elsewhere {

        void opens(String serial) {
            CommandRunner.Ended ended = bench.typing("q\n", "test", "c16.procedure", "--serial", serial, "--technician", "TM", "--ledger", bench.ledger().toString());
            // It has to say first which of the two units it is; leaving does.
            assertTrue(ended.out().contains("is opened."), ended.out() + ended.err());
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "C16-004711 C16-004712 | --technician QN | How far apart do these tests begin?",
            "C16-004711 C16-004711 | --apart 5_min | C16-004711 is there twice.",
            "C16-004711 C16-12 | --apart 5_min | C16-12 does not look like a serial number of",
            "C16-004711 C16-004712 | --apart soon | How far apart do they begin?",
            "C16-004711 C16-004712 | --apart 5_min --position A_3 | --position is for a single unit."})
    void whatIsWrongIsSaidBeforeAnythingIsOpened(String serials, String more, String words) {
        CommandRunner.Ended ended = batch(serials, Stream.of(more.split(" ")).map(part -> part.replace('_', ' ')).toArray(String[]::new));
        assertEquals(1, ended.status(), ended.out());
        assertTrue(ended.err().contains(words), ended.err());
        assertTrue(units().contains("No unit is on the bench."), units());
    }

    @Test
    void aUnitThatIsOpenAlreadyIsNotTakenOutOfSomebodysHands() {
        new Elsewhere().opens("C16-004712");
        CommandRunner.Ended ended = batch("C16-004711 C16-004712", "--apart", "5 min");
        assertEquals(1, ended.status(), ended.out());
        assertTrue(ended.err().contains("C16-004712 is open already in test T-"), ended.err());
        assertFalse(units().contains("C16-004711"), units());
    }

    @Test
    void whereNothingIsApprovedNoLedgerIsMade() throws Exception {
        bench = new CommandRunner(Files.createDirectory(folder.resolve("fresh")));
        CommandRunner.Ended ended = batch("C16-004711 C16-004712", "--apart", "5 min");
        assertEquals(1, ended.status(), ended.out());
        assertFalse(Files.exists(bench.ledger()));
        assertFalse(ended.err().isBlank());
    }
}
