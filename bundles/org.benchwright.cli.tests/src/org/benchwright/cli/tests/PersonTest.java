package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A person carries a real test out, by lines and at a terminal; the clocks are moved by hand. */
class PersonTest extends OnAnApprovedBench {

    /** The two ways to talk. */
    enum Face {
        LINES, TERMINAL;

        Conversation talk(CommandRunner bench, String... more) throws Exception {
            String[] arguments = {"test", "c16.procedure", "--serial", "C16-004711", "--ledger", bench.ledger().toString()};
            String[] all = java.util.stream.Stream.concat(java.util.Arrays.stream(arguments), java.util.Arrays.stream(more))
                    .toArray(String[]::new);
            return this == LINES ? Conversation.byLines(bench, all) : Conversation.atTerminal(bench, all);
        }
    }

    private static Conversation toPowerUp(Conversation talk) throws Exception {
        return talk.hears("WRIST STRAP TESTED.").hears("y, then a comma and this: Tester number or n >").types("y, 4711")
                .hears("Limits: 18 .. 28 degC.").hears("> ").types("22,5 degC")
                .hears("Attach photo: Type plate").hears("file name >").types("plate.jpg")
                .hears("Visible damage").hears("text >").types("none")
                .hears("### DANGER").hears("kill by electric shock").hears("understood >").types("u")
                .hears("Is supply on?").hears("done >").types("")
                .hears("Which instrument").hears("due 2027-03-01 >").types("M-17, 0.02 V, k 2, due 2027-03-01")
                .hears("Measure supply volts").hears("value in V >").types("24,02");
    }

    private static Conversation toLamps(Conversation talk) throws Exception {
        return toPowerUp(talk).hears("24.02 V accepted: 0.48 V inside")
                .hears("Is supply off").hears("done >").types("done")
                .hears("### NOTICE").hears("understood >").types("u")
                .hears("Is that so?").hears("y or n >").types("y")
                .hears("### DANGER").hears("understood >").types("u")
                .hears("Press as you close the switch.").hears("at that instant >");
    }

    static Conversation toSoak(Conversation talk) throws Exception {
        return toLamps(talk).types("").hears("*** TONE ***").hears("*** TONE ***").hears("*** TONE ***")
                .hears("did it show PWR (Power) green steady?").hears(">").types("y")
                .hears("OK (Health) red steady, then OK (Health) green steady?").hears(">").types("y")
                .hears("did it show FLT (Fault) off all the time?").hears(">").types("y")
                .hears("fault log as it came").hears("then an empty line >").types("none").hears("> ").types("")
                .hears("Type on the plate >").types("TC16").hears("Type configured >").types("tc16")
                .hears("Erase Processor fault log. Is it done?").hears(">").types("y")
                .hears("PROTECTED").hears("Is it spared?").hears(">").types("y")
                .hears("This takes a release (second person)").hears(">").types("y, GW")
                .hears("Press as you turn the switch.").hears("instant >").types("")
                .hears("*** TONE ***").hears("did it show mode run").hears(">").types("y");
    }

    static Conversation look(Conversation talk) throws Exception {
        return talk.hears("what you saw >").types("y").hears("ambient (limits 18 .. 28 degC) >").types("22 degC")
                .hears("supply (limits 23.5 .. 24.5 V) >").types("24,0 V");
    }

    static Conversation makeSafe(Conversation talk) throws Exception {
        return talk.hears("MAKE SAFE: OFF").hears("done >").types("").hears("*** TONE ***").hears("Measure residual").hears("V >").types("0,4");
    }

    /** Line by line it would read a hazard for somebody, or say that something is done. */
    @Test
    void whatIsPastedAtATerminalAnswersOneQuestion() throws Exception {
        try (Conversation talk = Face.TERMINAL.talk(bench)) {
            talk.hears("y, then a comma and this: Tester number or n >").types("y, 4711").hears("Limits: 18 .. 28 degC.").hears("> ").types("22,5 degC")
                    .hears("file name >").types("plate.jpg").hears("Visible damage").hears("text >")
                    .presses("\u001b[200~dent on lid\r\ru\r! no label\u001b[201~").types("")
                    .hears("### DANGER").hears("understood >").types("??").hears("switch positions: dent on lid u ! no label").hears("understood >").types("q");
            assertEquals(5, talk.ends());
            assertFalse(talk.everything().contains("MAKE SAFE:"), talk.everything());
        }
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void aRealTestIsAcceptedAfterItsRealSoak(Face face) throws Exception {
        try (Conversation talk = face.talk(bench)) {
            look(toSoak(talk)).hears("The soak has begun. Next look due in 24 h.");
            for (int day = 0; day < 3; day++) {
                bench.time().advance(Duration.ofHours(24));
                look(talk).hears(day < 2 ? " witnessed. Next look due" : "72 h without a stop");
            }
            makeSafe(talk.hears("would have revealed, with 90 % probability"));
            talk.hears("72 h witnessed, 0 stops: would have revealed").hears("accepted | Every step conforms. | T-");
            assertEquals(0, talk.ends());
            assertFalse(talk.everything().contains("rehearsal"));
        }
        ledgerIsSound();
        comesBack();
        ledgerIsSound();
    }

    /** The accepted unit comes back after 40 days, and the figures tell. */
    private void comesBack() {
        String ledger = bench.ledger().toString();
        String list = bench.run("export", "--ledger", ledger).out().lines().skip(1).findFirst().orElseThrow();
        String test = list.substring(list.indexOf("T-"), list.indexOf("T-") + 13);
        bench.time().advance(Duration.ofDays(40));
        String[] back = {"returned", test, "--complaint", "stops when warm", "--fault", "not-found", "--ledger", ledger, "--on", "2026-04-10"};
        CommandRunner.Ended written = bench.run(back);
        assertEquals("", written.err());
        assertEquals("It is in the record of test " + test + " that its unit came back on 2026-04-10.", written.lastLine());
        assertEquals(1, bench.run(back).status(), "once");
        assertTrue(bench.run(back).err().contains("It is on record that it came back on 2026-04-10."));
        CommandRunner.Ended figures = bench.run("figures", "--ledger", ledger);
        assertTrue(figures.said().contains("1 unit went out accepted, 1 of them came back; a fault was confirmed in 0, not found in 1"),
                figures.out());
        assertEquals(1, bench.run("returned", "T-4K7M2-QXD9R", "--on", "2026-04-10", "--complaint", "x", "--ledger", ledger).status());
        assertEquals(1, bench.run("returned", test, "--on", "10 April", "--complaint", "x", "--ledger", ledger).status());
        assertEquals(2, bench.run("returned", test, "--on", "2026-04-10", "--complaint", "x", "--ledger", ledger + ".none").status());
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void aTestLeftOnSoakIsTakenUpByTheSameCommand(Face face) throws Exception {
        try (Conversation talk = face.talk(bench)) {
            look(toSoak(talk)).hears("what you saw >").types("q").hears("Start the same command again to go on.").hears("It stays LIVE: supply.");
            assertEquals(5, talk.ends());
        }
        bench.time().advance(Duration.ofHours(23));
        CommandRunner.Ended units = bench.run("units", "--ledger", bench.ledger().toString());
        assertEquals(0, units.status());
        assertTrue(units.said().contains("C16-004711 Unattended endurance, on soak, 72 h left, next look due 2026-03-03 07:3"),
                units.out());
        try (Conversation talk = face.talk(bench)) {
            talk.hears("is taken up again.").hears("Was this on all the time").hears(">").types("y");
            bench.time().advance(Duration.ofHours(1));
            look(talk).hears("24 h witnessed.").types("q");
            assertEquals(5, talk.ends());
        }
        ledgerIsSound();
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void makeSafeIsOneKeyAwayFromEveryQuestion(Face face) throws Exception {
        try (Conversation talk = face.talk(bench)) {
            toLamps(talk);
            if (face == Face.TERMINAL) {
                talk.presses("!");
            } else {
                talk.types("!");
            }
            talk.hears("Why is the test given up?").hears(">").types("").hears("Why is the test given up?").hears(">")
                    .types("smoke from the rack").hears("The unit is made safe first; then the test ends as undecided: Ended early by the technician: smoke from the rack");
            makeSafe(talk).hears("undecided | Ended early by the technician: smoke from the rack | T-");
            assertEquals(4, talk.ends());
        }
        ledgerIsSound();
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void aWrongEntryIsStruckAndStaysReadable(Face face) throws Exception {
        try (Conversation talk = face.talk(bench)) {
            talk.hears("Tester number or n >").types("y, 4711").hears("Limits: 18 .. 28 degC.").hears("> ").types("-")
                    .hears("recorded").hears("y, then a comma and this: Tester number or n >").types("y, 4712").hears("Limits: 18").hears("> ").types("??")
                    .hears("STRUCK: strap: yes, 4711 (QN)").hears("Entry 2 struck (QN)").hears("strap: yes, 4712 (QN)")
                    .hears("> ").types("+ the tester has a new sticker").hears("recorded").hears("> ").types("?")
                    .hears("! make safe now").hears("strike the last entry").hears("> ").types("q");
            assertEquals(5, talk.ends());
        }
        ledgerIsSound();
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void whatIsNotTakenIsSaidAndAskedAgain(Face face) throws Exception {
        try (Conversation talk = face.talk(bench)) {
            talk.hears("Tester number or n >").types("perhaps").hears("Enter y or n.").hears("Tester number or n >").types("y")
                    .hears("Enter y, then a comma and this: Tester number").hears("Tester number or n >").types("-")
                    .hears("There is no entry that can be struck any more.").hears("Tester number or n >").types("y, 4711").hears("Limits:");
            talk.hangsUp();
            assertEquals(5, talk.ends());
        }
        ledgerIsSound();
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void makeSafeIsHeardAtOnceDuringACountdown(Face face) throws Exception {
        bench.standingStill();
        try (Conversation talk = face.talk(bench)) {
            toLamps(talk).types("").hears("2 s until the tone");
            if (face == Face.TERMINAL) {
                talk.presses("!");
            } else {
                talk.types("!");
            }
            talk.hears("Why is the test given up?").hears(">").types("-").hears("until the tone");
            if (face == Face.TERMINAL) {
                talk.presses("!");
            } else {
                talk.types("! smoke");
            }
            if (face == Face.TERMINAL) {
                talk.hears("Why is the test given up?").hears(">").types("smoke");
            }
            talk.hears("Ended early by the technician: smoke").hears("MAKE SAFE: OFF").hears("done >").types("").hears("to wait");
            bench.time().advance(Duration.ofMinutes(5));
            talk.hears("Measure residual").hears("V >").types("0.4").hears("undecided | Ended early");
            assertEquals(4, talk.ends());
        }
        ledgerIsSound();
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void theToneSoundsWhenItsTimeHasComeAndNotBefore(Face face) throws Exception {
        bench.standingStill();
        try (Conversation talk = face.talk(bench)) {
            toLamps(talk).types("").hears("2 s until the tone");
            Thread.sleep(100);
            assertFalse(talk.everything().contains("TONE"));
            bench.time().advance(Duration.ofMillis(1900));
            Thread.sleep(100);
            assertFalse(talk.everything().contains("TONE"));
            bench.time().advance(Duration.ofMillis(100));
            talk.hears("*** TONE ***").hears("8 s until the tone").presses(face == Face.TERMINAL ? "q" : "q\n");
            assertEquals(5, talk.ends());
        }
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void whoIsOvertakenIsToldAndCanTakeTheTestUpAgain(Face face) throws Exception {
        try (Conversation talk = face.talk(bench)) {
            talk.hears("Tester number or n >").types("y, 4711").hears("Limits: 18 .. 28 degC.").hears("> ");
            assertEquals(5, bench.carryOut("").status());
            talk.types("22 degC").hears("Press Enter to take it up here, or q to leave it").hears("> ");
            assertTrue(talk.errors().contains("Somebody else has written to test T-"), talk.errors());
            talk.types("").hears("is taken up again.").hears("Limits: 18 .. 28 degC.").hears("> ").types("22 degC")
                    .hears("Attach photo").hears("> ").types("q");
            assertEquals(5, talk.ends());
        }
        ledgerIsSound();
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void aRehearsalByAPersonSkipsItsSoak(Face face) throws Exception {
        try (Conversation talk = face.talk(bench, "--rehearse")) {
            look(toSoak(talk)).hears("The soak has begun.");
            for (int day = 0; day < 3; day++) {
                look(talk.hears("(24 h pass at once: this is a rehearsal)")).hears("recorded");
            }
            makeSafe(talk).hears("rehearsal: would be accepted | Every step conforms. | T-");
            assertEquals(0, talk.ends());
        }
        ledgerIsSound();
    }
}
