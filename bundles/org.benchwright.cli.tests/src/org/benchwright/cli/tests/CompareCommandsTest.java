package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;

import org.benchwright.workshop.tests.Approved;
import org.junit.jupiter.api.Test;

/** Two tests of one unit beside each other, and all that an instrument touches which read wrong, at the terminal. */
class CompareCommandsTest extends OnAnApprovedBench {

    @Test
    void whatWasDecidedOtherwiseComesFirstThenOtherReadingsAndTheRestIsCounted() throws Exception {
        String first = bench.rehearse(SampleProcedure.GOOD).test();
        String alike = bench.rehearse(SampleProcedure.GOOD).test();
        CommandRunner.Ended none = bench.onLedger("compare", alike);
        assertEquals(0, none.status(), none.err());
        assertTrue(none.said().startsWith("Unit C16-004711: " + first + " (rehearsal, would be accepted) and " + alike), none.out());
        assertTrue(none.said().contains("None of "), none.out());
        String failed = bench.rehearse(SampleProcedure.GOOD.replace("lamps.pwr = yes", "lamps.pwr = no").replace("24,02V", "24,3V")).test();
        CommandRunner.Ended other = bench.onLedger("compare", failed, "--with", first);
        assertEquals(0, other.status(), other.err());
        String out = other.said();
        assertTrue(out.contains("* lamps, pwr: then as expected (conforms); now not as expected (does not conform)"), out);
        assertTrue(out.indexOf("lamps, pwr") < out.indexOf("bench, supply volts: then"), "what was decided otherwise comes first: " + out);
        assertEquals(0, bench.onLedger("compare", failed, "--csv", "c.csv", "--json", "c.json").status());
        assertTrue(Files.readString(folder.resolve("c.csv")).contains("\"decided otherwise\""));
        assertTrue(Files.readString(folder.resolve("c.json")).contains("\"difference\": \"another reading\""));
    }

    @Test
    void aVerdictThatDoesNotHoldAnyMoreIsNotToldAlone() throws Exception {
        bench.audited();
        String first = bench.carryOut(SampleProcedure.GIVEN_UP).test();
        String second = bench.carryOut(SampleProcedure.GIVEN_UP).test();
        CommandRunner.Ended voided = bench.typing(Approved.PASSWORD + "\n", "void", first, "--reason", "wrong unit", "--by", "MJ", "--ledger",
                bench.ledger().toString());
        assertEquals(0, voided.status(), voided.err());
        assertTrue(bench.onLedger("compare", second).said().startsWith("Unit C16-004711: " + first + " (undecided, void) and " + second + " (undecided)"));
    }

    @Test
    void whatCannotBeComparedIsSaid() throws Exception {
        String first = bench.rehearse(SampleProcedure.GOOD).test();
        CommandRunner.Ended alone = bench.onLedger("compare", first);
        assertEquals(1, alone.status());
        assertTrue(alone.err().contains("names no test of its unit before it"), alone.err());
        assertEquals("There is no test T-22222-22222 in this ledger.\n", bench.onLedger("compare", first, "--with", "T-22222-22222").err());
    }

    @Test
    void anInstrumentThatReadWrongTouchesTheTestsInWhichItWasRead() throws Exception {
        String test = bench.carryOut(SampleProcedure.GIVEN_UP).test();
        CommandRunner.Ended slight = bench.onLedger("impact", "M-17", "--reads", "0.1 V too high", "--from", "2026-03-01", "--to", "2026-03-31");
        assertEquals(0, slight.status(), slight.out() + slight.err());
        assertTrue(slight.said().contains("Instrument M-17 reads 0.1 V too high, from 2026-03-01 to 2026-03-31."), slight.out());
        assertTrue(slight.said().contains(test + " C16-004711 undecided -> undecided"), slight.out());
        assertTrue(slight.said().contains("On record: 0.4 V accepted: 4.6 V inside"), slight.out());
        assertTrue(slight.said().contains("uncertainty 0.02 V. With what is right: 0.3 V accepted: 4.7 V inside"), slight.out());
        assertTrue(slight.lastLine().startsWith("1 test has a reading by it; none comes to something else."), slight.out());
        assertTrue(bench.onLedger("impact", "M-17", "--reads", "0.1 V too high", "--from", "2026-04-01", "--to", "2026-04-30").out().contains("No test has"));
        assertEquals(0, bench.onLedger("impact", "M-17", "--reads", "0.3 % low", "--from", "2026-03-01", "--to", "2026-03-31", "--sheet", "s.txt", "--csv", "s.csv").status());
        String sheet = Files.readString(folder.resolve("s.txt"));
        assertTrue(sheet.startsWith("benchwright.impact/1\n") && sheet.contains("\nsame  " + test), sheet);
        assertTrue(sheet.lines().reduce((a, b) -> b).orElseThrow().startsWith("signature "), sheet);
        assertFalse(Files.readString(folder.resolve("s.csv")).isEmpty());
    }

    /** It comes to no verdict, so nothing that an instrument did in it goes out with a unit. */
    @Test
    void aRehearsalIsNotLookedAtForAnInstrument() throws Exception {
        bench.rehearse(SampleProcedure.GOOD);
        bench.rehearse(SampleProcedure.without("endurance.look"));
        CommandRunner.Ended impact = bench.onLedger("impact", "M-17", "--reads", "0.1 V too high", "--from", "2026-03-01", "--to", "2026-03-31");
        assertFalse(impact.out().contains("is not over"), impact.out());
        assertEquals(0, impact.status(), impact.out() + impact.err());
    }

    @Test
    void aQuestionThatCannotBeReadIsRefused() {
        for (String reads : new String[] {"wrong", "-0.1 V high", "0.1 high", "0.1 V", "2 degC high", "100 % low", "0.1 V high low"}) {
            CommandRunner.Ended refused = bench.onLedger("impact", "M-17", "--reads", reads, "--from", "2026-03-01", "--to", "2026-03-31");
            assertEquals(1, refused.status(), reads);
            assertTrue(refused.err().contains("doesn't say how it reads wrong"), refused.err());
        }
        CommandRunner.Ended backwards = bench.onLedger("impact", "M-17", "--reads", "1 V high", "--from", "2026-03-31", "--to", "2026-03-01");
        assertTrue(backwards.err().startsWith("Say which instrument"), backwards.err());
    }
}
