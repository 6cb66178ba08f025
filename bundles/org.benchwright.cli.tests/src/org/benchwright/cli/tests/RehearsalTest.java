package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;

import org.junit.jupiter.api.Test;

/** Rehearsals by an answers file: exit statuses and last lines are what scripts rely on. */
class RehearsalTest extends OnABench {

    private static final String ID = "T-[2-9A-HJKMNP-TV-Z]{5}-[2-9A-HJKMNP-TV-Z]{5}";

    private static void assertEnded(CommandRunner.Ended ended, int status, String lastLine) {
        assertEquals(status, ended.status(), ended.err());
        assertTrue(ended.lastLine().matches(lastLine), ended.lastLine());
    }

    @Test
    void aGoodUnitWouldBeAccepted() throws Exception {
        CommandRunner.Ended ended = bench.rehearse(SampleProcedure.GOOD);
        assertEnded(ended, 0, "rehearsal: would be accepted \\| Every step conforms\\. \\| " + ID);
        assertEquals("Not needed: lamps.supply.off (line 13)\nNot needed: power (line 26)\n", ended.err());
        ledgerIsSound();
    }

    @Test
    void aUnitThatFailsItsSelfCheckWouldBeRejected() throws Exception {
        CommandRunner.Ended ended = bench.rehearse(SampleProcedure.but("lamps.ok", "no, red and stays red"));
        assertEnded(ended, 3, "rehearsal: would be rejected \\| Power-up self-check failed; .* \\| " + ID);
        assertTrue(ended.said().contains("not as expected; seen: red and stays red"), ended.out());
        assertTrue(ended.said().contains("Nonconformity: "), ended.out());
        assertTrue(ended.err().contains("Not needed: endurance.look (line 25)"), ended.err());
        ledgerIsSound();
    }

    @Test
    void aUnitThatDropsOutOfItsSoakWouldBeRejected() throws Exception {
        String answers = SampleProcedure.but("endurance.look", "as expected; 22 degC; 24.0 V\nendurance.look = no: dark; 22 degC; 24.0 V")
                + "log.fault_log = W01 02:14, second night; E9 who knows\n";
        CommandRunner.Ended ended = bench.rehearse(answers);
        assertEnded(ended, 3, "rehearsal: would be rejected \\| Stopped by itself during endurance, or never started\\. \\| " + ID);
        assertTrue(ended.said().contains("it stopped between 24 h and 48 h"), ended.out());
        assertTrue(ended.said().contains("W01: Watchdog expired"), ended.out());
        assertTrue(ended.said().contains("Often: Oscillator or memory weak when warm."), ended.out());
        assertTrue(ended.said().contains("E9: There is no note on this code"), ended.out());
        ledgerIsSound();
    }

    @Test
    void aBadBenchSupplyWouldLeaveTheUnitUndecided() throws Exception {
        CommandRunner.Ended ended = bench.rehearse(SampleProcedure.but("bench.supply_volts", "21.74 V"));
        assertEnded(ended, 4, "rehearsal: would be undecided \\| The bench supply is at fault; the unit was not tested\\. \\| " + ID);
        assertTrue(ended.said().contains("outside of the limits 23.5 .. 24.5 V"), ended.out());
        ledgerIsSound();
    }

    @Test
    void marginsAreToldInWords() throws Exception {
        CommandRunner.Ended ended = bench.rehearse(SampleProcedure.but("bench.supply_volts", "24.16 V"));
        assertTrue(ended.said().contains("24.16 V accepted: 0.34 V inside of the limits 23.5 .. 24.5 V"), ended.out());
    }

    @Test
    void aReadingTooCloseToALimitIsRepeatedForAReason() throws Exception {
        String answers = SampleProcedure.but("bench.supply_volts", "24.49 V\nbench.supply_volts = 24.30 V")
                + "bench.supply_volts.reason = the lead was loose\n";
        CommandRunner.Ended ended = bench.rehearse(answers);
        assertEnded(ended, 0, "rehearsal: would be accepted .*");
        assertTrue(ended.said().contains("24.49 V undecided"), ended.out());
        assertTrue(ended.said().contains("24.395 V accepted"), ended.out());
    }

    @Test
    void aMissingAnswerIsNamedAndTheSameCommandGoesOnOnceItIsThere() throws Exception {
        CommandRunner.Ended ended = bench.rehearse(SampleProcedure.without("lamps.ok"));
        assertEquals(1, ended.status());
        assertTrue(ended.err().contains("test.answers has no answer to \"lamps.ok\". Asked at Power up: lamps: By the tone: did it show OK "
                + "(Health) red steady, then OK (Health) green steady?"), ended.err());
        CommandRunner.Ended again = bench.rehearse(SampleProcedure.GOOD);
        assertTrue(again.out().contains("is taken up again."), again.out());
        assertEnded(again, 0, "rehearsal: would be accepted .*");
        ledgerIsSound();
    }

    @Test
    void anAnswerThatIsNotTakenIsNamedWithItsLine() throws Exception {
        CommandRunner.Ended ended = bench.rehearse(SampleProcedure.but("bench.supply_volts", "24.02 A"));
        assertEquals(1, ended.status());
        assertTrue(ended.err().contains("test.answers:9: bench.supply_volts = 24.02 A: "), ended.err());
    }

    @Test
    void aReleaseByTheTechnicianIsRefused() throws Exception {
        CommandRunner.Ended ended = bench.rehearse(SampleProcedure.but("start.outputs_bare.release", "yes, qn"));
        assertEquals(1, ended.status());
        assertTrue(ended.err().contains("qn works on this test, so somebody else has to release it."), ended.err());
    }

    @Test
    void answersAreForRehearsalsOnly() throws Exception {
        Path file = Files.writeString(folder.resolve("test.answers"), SampleProcedure.GOOD);
        CommandRunner.Ended ended = bench.run("test", "c16.procedure", "--serial", "C16-004711", "--answers", file.toString(), "--ledger",
                bench.ledger().toString());
        assertEquals(1, ended.status());
        assertEquals("--answers works only together with --rehearse: a test is told by a person who looks at the unit, not by a file.\n",
                ended.err());
        assertFalse(Files.exists(bench.ledger()));
    }

    @Test
    void answersThatAreNoneAreRefusedBeforeAnythingIsRecorded() throws Exception {
        CommandRunner.Ended ended = bench.rehearse("hazard.* = understood\nyes\n");
        assertEquals(1, ended.status());
        assertTrue(ended.err().contains("test.answers:2: this line is no answer. Write: key = answer"), ended.err());
        assertFalse(Files.exists(bench.ledger()));
        CommandRunner.Ended missing = bench.run("test", "c16.procedure", "--serial", "C16-004711", "--answers", "nothing.answers", "--rehearse",
                "--ledger", bench.ledger().toString());
        assertEquals(2, missing.status());
        assertTrue(missing.err().contains("there is no such file"), missing.err());
        Path binary = Files.write(folder.resolve("binary.answers"), new byte[] {(byte) 0xff, 0, 1});
        CommandRunner.Ended noText = bench.run("test", "c16.procedure", "--serial", "C16-004711", "--answers", binary.toString(),
                "--rehearse", "--ledger", bench.ledger().toString());
        assertEquals(1, noText.status());
        assertTrue(noText.err().contains("is not a text file in UTF-8"), noText.err());
    }

    @Test
    void aSerialNumberOfAnotherFamilyIsRefused() throws Exception {
        Path file = Files.writeString(folder.resolve("test.answers"), SampleProcedure.GOOD);
        CommandRunner.Ended ended = bench.run("test", "c16.procedure", "--serial", "P24-000001", "--answers", file.toString(), "--ledger",
                bench.ledger().toString(), "--rehearse");
        assertEquals(1, ended.status());
        assertTrue(ended.err().contains("P24-000001 does not fit Tarn C16 modular controller"), ended.err());
    }

    @Test
    void aLedgerThatCannotBeMadeIsTold() throws Exception {
        Path file = Files.writeString(folder.resolve("test.answers"), SampleProcedure.GOOD);
        Path noLedger = Files.writeString(folder.resolve("letter.txt"), "Dear Sirs");
        CommandRunner.Ended ended = bench.run("test", "c16.procedure", "--serial", "C16-004711", "--answers", file.toString(), "--ledger",
                noLedger.toString(), "--rehearse");
        assertEquals(2, ended.status());
        assertEquals("Dear Sirs", Files.readString(noLedger));
        assertFalse(ended.err().contains("Exception"), ended.err());
    }

    @Test
    void everyLineFitsIn80Columns() throws Exception {
        CommandRunner.Ended ended = bench.rehearse(SampleProcedure.GOOD).done();
        ended.out().lines().filter(line -> !line.startsWith("[") && !line.startsWith("rehearsal: "))
                .forEach(line -> assertTrue(line.codePointCount(0, line.length()) <= 80, line));
    }
}
