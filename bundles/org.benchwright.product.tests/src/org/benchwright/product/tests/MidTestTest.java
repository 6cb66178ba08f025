package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The finished window killed or closed in mid-test, and at work beside the terminal: real processes, real keys. Needs a display. */
class MidTestTest {

    private static final Pattern EVENTS = Pattern.compile("Links: (\\d+) events? of (\\d+) tests?,");
    /** What the procedure asks before its first stage, in order. */
    private static final List<String> ANSWERS = List.of("yes, KG-2026-311", "yes", "yes, EB-0417", "yes", "yes, 1.08 Mohm",
            "yes, 22.4 degC");
    private static final int LEFT_OPEN = 5;

    @TempDir
    private Path folder;

    @Test
    void aKilledWindowHasLostNothingThatItSaidWasRecorded() throws Exception {
        String serial = "C16-700001";
        long acknowledged = 0;
        for (int round = 0; round < 3; round++) {
            try (WindowProcess window = WindowProcess.open(folder, ledger())) {
                acknowledged = round == 0 ? window.newTest(serial) : window.takeUp(serial);
                for (String answer : ANSWERS.subList(2 * round, 2 * round + 2)) {
                    window.answer(answer);
                    acknowledged = window.awaitRecorded(serial, acknowledged);
                }
                window.answer("+ typed as the power failed");
                TimeUnit.MILLISECONDS.sleep(25L * round);
                window.kill();
            }
            long kept = soundEvents(1);
            assertTrue(kept == acknowledged || kept == acknowledged + 1, kept + " events, " + acknowledged + " acknowledged");
        }
        assertGoesOnInTheTerminal(serial);
    }

    /** By the other face, so that no memory of the window's own can help it. */
    private void assertGoesOnInTheTerminal(String serial) throws Exception {
        try (TerminalProcess terminal = TerminalProcess.test(folder, ledger(), serial)) {
            terminal.awaitPrinted("is taken up again.");
            terminal.line("??");
            terminal.line("q");
            assertEquals(LEFT_OPEN, terminal.awaitEnd());
            String printed = terminal.awaitPrinted("stays in test");
            for (String kept : List.of("KG-2026-311", "EB-0417", "1.08 Mohm", "22.4 degC", "Interrupted for")) {
                assertTrue(printed.contains(kept), printed);
            }
            assertFalse(printed.contains("Does this hold?"), "no precondition is asked again: " + printed);
        }
    }

    @Test
    void aClosedWindowHasRecordedEvenWhatWasEnteredJustBefore() throws Exception {
        String serial = "C16-700002";
        try (WindowProcess window = WindowProcess.open(folder, ledger())) {
            long opened = window.newTest(serial);
            window.answer(ANSWERS.get(0));
            window.awaitRecorded(serial, opened);
            window.answer("+ entered at the very end");
            assertEquals(0, window.quit());
            assertEquals(opened + 2, soundEvents(1));
        }
        try (WindowProcess window = WindowProcess.open(folder, ledger())) {
            long last = window.takeUp(serial);
            window.answer(ANSWERS.get(1));
            window.awaitRecorded(serial, last);
            window.kill();
        }
        soundEvents(1);
    }

    @Test
    void windowAndTerminalWorkOnOneBenchEachOnATestOfItsOwn() throws Exception {
        try (WindowProcess window = WindowProcess.open(folder, ledger());
                TerminalProcess terminal = TerminalProcess.test(folder, ledger(), "C16-700004")) {
            long here = window.newTest("C16-700003");
            terminal.awaitPrinted("is opened.");
            for (int i = 0; i < ANSWERS.size(); i++) {
                terminal.line(ANSWERS.get(i));
                window.answer(ANSWERS.get(i));
                here = window.awaitRecorded("C16-700003", here);
                terminal.awaitPrinted("[" + (i + 2) + "] recorded");
            }
            terminal.line("q");
            assertEquals(LEFT_OPEN, terminal.awaitEnd());
            assertEquals(0, window.quit());
            assertEquals(2 * here, soundEvents(2), "the same entries in both");
        }
    }

    @Test
    void onOneTestTheSecondIsToldAndNothingIsOverwritten() throws Exception {
        String serial = "C16-700005";
        try (WindowProcess window = WindowProcess.open(folder, ledger())) {
            window.newTest(serial);
            try (TerminalProcess terminal = TerminalProcess.test(folder, ledger(), serial)) {
                terminal.awaitPrinted("is taken up again.");
                terminal.line("yes, KG-FROM-THE-TERMINAL");
                terminal.awaitPrinted("recorded");
                long before = soundEvents(1);

                window.answer("yes, KG-FROM-THE-WINDOW");
                Keyboard.awaitTitle(serial + ": taken up elsewhere - Benchwright");
                assertEquals(before, soundEvents(1), "nothing was written over it");

                assertTrue(window.takeUp(serial) > before);
                terminal.line("yes");
                String printed = terminal.awaitPrinted("Press Enter to take it up here");
                assertTrue(printed.contains("Somebody else has written to test"), printed);
                terminal.line("q");
                assertEquals(LEFT_OPEN, terminal.awaitEnd());
            }
            assertEquals(0, window.quit());
        }
        soundEvents(1);
    }

    private Path ledger() {
        return folder.resolve("bench").resolve("bench.ledger");
    }

    /** Has the ledger verified, which must be sound; returns how many events there are in it. */
    private long soundEvents(int tests) throws Exception {
        Product.Ended verified = new Product(folder).run("verify", ledger().toString());
        assertEquals(0, verified.status(), verified.out() + verified.err());
        Matcher events = EVENTS.matcher(verified.out());
        assertTrue(events.find(), verified.out());
        assertEquals(tests, Integer.parseInt(events.group(2)), verified.out());
        return Long.parseLong(events.group(1));
    }
}
