package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.stream.Stream;

import org.benchwright.cli.internal.LanguageSource;
import org.benchwright.workshop.tests.Approved;
import org.junit.jupiter.api.Test;

/** Handing records over on the command line. */
class HandOverCommandsTest extends OnAnApprovedBench {

    private CommandRunner.Ended report(String test, String... more) {
        return bench.onLedger(Stream.concat(Stream.of("report", test), Stream.of(more)).toArray(String[]::new));
    }

    private String content(String file) throws Exception {
        return new String(Files.readAllBytes(folder.resolve(file)), StandardCharsets.ISO_8859_1);
    }

    @Test
    void ofARealTestThereIsEverything() throws Exception {
        CommandRunner.Ended ended = bench.carryOut(SampleProcedure.GIVEN_UP);
        assertEquals(4, ended.status(), ended.out() + ended.err());
        CommandRunner.Ended waits = report(ended.test(), "--pdf", "c.pdf");
        assertEquals(1, waits.status());
        assertTrue(waits.err().startsWith("There is no certificate of test " + ended.test() + " yet. 1 to decide first. An auditor who had no hand"), waits.err());
        bench.audited();
        String event = waits.err().replaceAll("(?s)^.*departure (\\d+):.*$", "$1");
        CommandRunner.Ended decided = bench.typing(Approved.PASSWORD + "\n", "decide", ended.test(), event, "--as", "accepted", "--reason", "nothing was begun",
                "--by", "MJ", "--ledger", bench.ledger().toString());
        assertEquals(0, decided.status(), decided.err());
        CommandRunner.Ended report = report(ended.test(), "--pdf", "c.pdf", "--record", "r.pdf", "--label", "l.pdf", "--html", "r.html", "--json",
                "r.json", "--csv", "r.csv");
        assertEquals(0, report.status(), report.err());
        assertEquals(6, report.out().lines().count());
        for (String pdf : new String[] {"c.pdf", "r.pdf", "l.pdf"}) {
            assertTrue(content(pdf).startsWith("%PDF-1."), pdf);
        }
        assertTrue(content("r.json").contains("\"verdict\": \"undecided\""), content("r.json"));
        assertTrue(content("r.json").contains("\"approvedBy\": \"KM\""), content("r.json"));
        assertTrue(content("r.html").contains("prepared by RB, approved by KM, 2026-03-02"), content("r.html"));
        assertTrue(content("r.html").contains("revision 3, prepared by RB, approved by KM on 2026-03-02"), content("r.html"));
        assertTrue(content("r.html").contains("The plate is missing."));
        assertTrue(content("r.html").contains(": accepted by MJ, 2026-03-02T"), content("r.html"));
        assertTrue(content("r.csv").lines().count() > 5);
        CommandRunner.Ended list = bench.run("export", "--ledger", bench.ledger().toString());
        assertEquals(2, list.out().lines().count(), list.out());
        assertTrue(list.out().contains("\"undecided\",\"Ended early by the technician"), list.out());
    }

    @Test
    void aQuestionThatJudgesNothingIsNoCheckOnPaper() throws Exception {
        Files.writeString(folder.resolve("lark.procedure"), """
                family lark "Lark" { supply 24 V dc option fan "Fan tray" }
                procedure small "Small" revision 1 {
                    applies to lark
                    stage work "Work" {
                        step fan "Look at the fan." only if fitted fan { confirm "It turns." or conclude rejected "It stands still." }
                        step listen "Listen." { confirm "It is quiet." or conclude rejected "It is not quiet." }
                    }
                    make safe "Make safe" { step off "Switch off." { isolates supply } }
                    conclude accepted
                }
                """);
        Files.writeString(folder.resolve("small.answers"), "*fan* = no\nlisten.* = yes\noff.* = done\n");
        CommandRunner drafts = new CommandRunner(folder).with(new LanguageSource());
        CommandRunner.Ended ended = drafts.onLedger("test", "lark.procedure", "--serial", "L1", "--answers", "small.answers", "--rehearse");
        assertEquals(0, ended.status(), ended.out() + ended.err());
        CommandRunner.Ended report = drafts.onLedger("report", ended.test(), "--json", "small.json");
        assertEquals(0, report.status(), report.err());
        String results = content("small.json").replaceAll("(?s)^.*\"results\": \\[(.*?)\\].*$", "$1");
        assertTrue(results.matches("(?s).*only asked.*Fan tray: fitted.*") || results.matches("(?s).*Fan tray: fitted.*only asked.*"), results);
        assertTrue(results.contains("It is quiet.") && results.contains("conforms"), results);
    }

    @Test
    void whatWasStruckIsNoResultButStaysInTheRecord() throws Exception {
        CommandRunner.Ended ended = bench.carryOut("y, 4711\n22,5 degC\nplate.jpg\nnone\nu\n\nM-17, 0.02 V, k 2, due 2027-03-01\n24,11\n-\n24,02\n"
                + "! Enough for today.\n\n0,4\n");
        assertEquals(4, ended.status(), ended.out() + ended.err());
        assertTrue(ended.out().contains("-> Struck: supply volts: 24.11 V"), ended.out());
        assertEquals(0, report(ended.test(), "--json", "r.json", "--csv", "r.csv").status());
        String results = content("r.json").replaceAll("(?s)^.*\"results\": \\[(.*?)\\].*$", "$1");
        assertTrue(results.contains("24.02") && !results.contains("24.11"), content("r.json"));
        assertTrue(content("r.csv").lines().anyMatch(line -> line.contains("24.11") && line.endsWith("\"yes\"")), content("r.csv"));
    }

    @Test
    void aRehearsalHasARecordButNoCertificateAndIsLeftOutOfLists() throws Exception {
        String test = bench.rehearse(SampleProcedure.GOOD).test();
        CommandRunner.Ended refused = report(test, "--pdf", "c.pdf");
        assertEquals(1, refused.status());
        assertEquals("Test " + test + " is a rehearsal: there is no certificate and no label of it.\n", refused.err());
        assertEquals(1, report(test, "--label", "l.pdf").status());
        assertFalse(Files.exists(folder.resolve("c.pdf")));
        assertEquals(0, report(test, "--record", "r.pdf", "--html", "r.html").status());
        assertTrue(content("r.html").contains("REHEARSAL") && content("r.html").contains("Waiting times were skipped."));
        assertTrue(content("r.html").contains("would reveal, with 90 % probability"), "what the soak would prove");
        assertEquals(1, bench.run("export", "--ledger", bench.ledger().toString()).out().lines().count());
        assertEquals(0, bench.run("export", "--ledger", bench.ledger().toString(), "--rehearsals", "--csv", "all.csv", "--json", "all.json").status());
        assertEquals(2, content("all.csv").lines().count());
        assertTrue(content("all.json").contains("\"wouldBe\": \"accepted\""));
    }

    @Test
    void whatCannotBeHandedOverIsSaidInALine() throws Exception {
        String test = bench.rehearse(SampleProcedure.without("lamps.ok")).test();
        assertEquals(1, report("T-22222-22222", "--html", "r.html").status());
        assertEquals("There is no test T-22222-22222 in this ledger.\n", report("T-22222-22222", "--html", "r.html").err());
        assertEquals(1, report(test).status());
        CommandRunner.Ended nowhere = report("T-22222-22222", "--ledger", folder.resolve("none.ledger").toString(), "--html", "r.html");
        assertTrue(nowhere.status() > 0 && nowhere.err().lines().count() <= 3, nowhere.err());
        assertFalse(Files.exists(folder.resolve("none.ledger")));
    }
}
