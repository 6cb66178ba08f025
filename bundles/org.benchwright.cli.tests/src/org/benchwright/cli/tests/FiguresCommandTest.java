package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;

class FiguresCommandTest extends OnAnApprovedBench {

    private CommandRunner.Ended figures(String... more) {
        return bench.onLedger(Stream.concat(Stream.of("figures"), Stream.of(more)).toArray(String[]::new));
    }

    @Test
    void aLedgerOfRehearsalsSaysThatNothingCounts() throws Exception {
        bench.rehearse(SampleProcedure.GOOD);
        CommandRunner.Ended ended = figures();
        assertEquals(0, ended.status(), ended.err());
        assertEquals("", ended.err());
        assertTrue(ended.out().startsWith("0 tests count: 0 ended with a verdict, 0 still open.\n"), ended.out());
        assertTrue(ended.out().contains("Left out: 1 rehearsal."), ended.out());
        assertTrue(ended.out().contains("First-pass yield\n  No first test has ended with a verdict."), ended.out());
        assertFalse(ended.out().contains("NaN"), ended.out());
    }

    @Test
    void whoeverAsksForFilesOfNothingIsToldThatNoneIsWritten() throws Exception {
        bench.rehearse(SampleProcedure.GOOD);
        CommandRunner.Ended ended = figures("--csv", folder.resolve("out").toString(), "--svg", folder.resolve("out").toString());
        assertEquals(0, ended.status(), ended.err());
        assertTrue(ended.out().endsWith("No file of numbers is written: no figure has a table yet.\nNo chart is written: there is too little to draw.\n"), ended.out());
        assertFalse(Files.exists(folder.resolve("out")));
    }

    @Test
    void aRealTestIsCountedAndWritten() throws Exception {
        // The sample's keys answer a person's questions in their order too; the test is left open when they are used up.
        bench.carryOut("4711\n");
        Path out = folder.resolve("out");
        CommandRunner.Ended ended = figures("--csv", out.toString(), "--html", out.resolve("page.html").toString(), "--svg", out.toString());
        assertEquals(0, ended.status(), ended.err());
        assertTrue(ended.out().startsWith("1 test counts: 0 ended with a verdict, 1 still open.\n"), ended.out());
        String page = Files.readString(out.resolve("page.html"), StandardCharsets.UTF_8);
        assertTrue(page.contains("<h2>First-pass yield</h2>") && page.endsWith("</html>\n"), page);
        assertTrue(ended.out().contains("Written: " + out.resolve("page.html")), ended.out());
    }

    @Test
    void whatIsNotGoodIsTold() throws Exception {
        bench.rehearse(SampleProcedure.GOOD);
        CommandRunner.Ended noDay = figures("--from", "yesterday");
        assertEquals(1, noDay.status());
        assertTrue(noDay.err().contains("\"yesterday\" is not a day; write it as 2026-01-31."), noDay.err());
        for (String never : List.of("+999999999-12-31", "-999999999-01-01", "12026-01-31", "2026-02-30", "26-01-31")) {
            figures("--from", never).refused("\"" + never + "\" is not a day; write it as 2026-01-31.");
            figures("--to", never).refused("\"" + never + "\" is not a day; write it as 2026-01-31.");
        }
        Path blocked = Files.writeString(folder.resolve("blocked"), "a file where a folder should be");
        CommandRunner.Ended unwritten = figures("--html", blocked.resolve("page.html").toString());
        assertEquals(2, unwritten.status());
        assertTrue(unwritten.err().contains("page.html can't be written"), unwritten.err());
        assertEquals(2, bench.run("figures", "--ledger", folder.resolve("none.ledger").toString()).status());
    }

    @Test
    void theLedgerStaysAsItWas() throws Exception {
        bench.rehearse(SampleProcedure.GOOD);
        byte[] before = Files.readAllBytes(bench.ledger());
        assertEquals(figures("--family", "tarn_c16", "--to", "2030-01-01").out(), figures("--family", "tarn_c16", "--to", "2030-01-01").out());
        assertArrayEquals(before, Files.readAllBytes(bench.ledger()));
        ledgerIsSound();
        Files.writeString(bench.ledger().resolveSibling("bench.ledger.figures"), "spoilt by somebody, which verification does not mind ".repeat(20));
        ledgerIsSound();
        assertTrue(figures().out().contains("Left out: 1 rehearsal."));
    }
}
