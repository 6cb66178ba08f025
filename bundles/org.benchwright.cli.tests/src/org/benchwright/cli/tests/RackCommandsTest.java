package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;

import org.benchwright.workshop.tests.Approved;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Along the rack and with people's keys, at the terminal. */
class RackCommandsTest extends OnAnApprovedBench {

    /** Nobody holds a unit in hand for a rehearsal that was left open. */
    @Test
    void anOpenRehearsalIsNoOtherUnitInHand() throws Exception {
        bench.rehearse(SampleProcedure.without("endurance.look"));
        CommandRunner.Ended alone = bench.carryOut("y, 4711\n");
        assertFalse(alone.said().contains("Scan or type the serial number"), alone.out());
    }

    @BeforeEach
    void setUp() throws Exception {
        bench.audited();
    }

    private Conversation test(String serial, String... more) throws Exception {
        String[] first = {"test", "c16.procedure", "--serial", serial, "--ledger", bench.ledger().toString()};
        return Conversation.byLines(bench, java.util.stream.Stream.concat(java.util.Arrays.stream(first), java.util.Arrays.stream(more)).toArray(String[]::new));
    }

    /** Nothing was measured yet, so the meter is named first. */
    private static Conversation safe(Conversation talk) throws Exception {
        return talk.hears("MAKE SAFE: OFF").hears("done >").types("").hears("*** TONE ***").hears("Which instrument").hears(">")
                .types("M-17, 0.02 V, k 2, due 2027-03-01").hears("Measure residual").hears("V >").types("0,4");
    }

    @Test
    void aRoundComesToEveryUnitOnSoakAndALookIsAnEventOfItsOwn() throws Exception {
        assertTrue(bench.run("round", "--ledger", bench.ledger().toString()).out().contains("No unit is on soak."));
        try (Conversation talk = test("C16-004711", "--position", "A 3")) {
            PersonTest.look(PersonTest.toSoak(talk)).hears("what you saw >").types("q");
            assertEquals(5, talk.ends());
        }
        assertTrue(unitsSay().startsWith("  C16-004711 "), unitsSay());
        bench.time().advance(Duration.ofHours(23).plusMinutes(50));
        assertTrue(unitsSay().startsWith("1 look soon\n  A 3  C16-004711: look at it at "), unitsSay());
        bench.time().advance(Duration.ofMinutes(10));
        assertTrue(unitsSay().startsWith("1 LOOK DUE\n  A 3  C16-004711: LOOK NOW, due since "), unitsSay());
        try (Conversation talk = Conversation.byLines(bench, "round", "--ledger", bench.ledger().toString())) {
            talk.hears("Position A 3: C16-004711").hears("Was this on all the time").hears(">").types("y");
            PersonTest.look(talk).hears("24 h witnessed.").hears("1 of 1 unit looked at.");
            assertEquals(0, talk.ends());
        }
        bench.time().advance(Duration.ofHours(26).plusSeconds(1));
        assertTrue(unitsSay().startsWith("1 LOOK MISSED\n  A 3  C16-004711: LOOK MISSED, was due at "), unitsSay());
        ledgerIsSound();
    }

    /** In the rack it is told by its place; where nobody said which that is, by a scan, which may bring control characters along. */
    @Test
    void aRoundAsksWhichUnitItIsWhereItsPlaceDoesNotTell() throws Exception {
        try (Conversation talk = test("C16-004711")) {
            PersonTest.look(PersonTest.toSoak(talk)).hears("what you saw >").types("q");
            assertEquals(5, talk.ends());
        }
        bench.time().advance(Duration.ofHours(24));
        try (Conversation talk = Conversation.byLines(bench, "round", "--ledger", bench.ledger().toString())) {
            talk.hears("Position not said: C16-004711").hears("Scan or type the serial number").hears(">").types("y").hears("That is y")
                    .hears(">").types("\u0002C16-004711\u0003").hears("Was this on all the time").hears(">").types("q").hears("0 of 1 unit looked at.");
            assertEquals(5, talk.ends());
        }
        assertTrue(unitsSay().startsWith("1 LOOK DUE\n  C16-004711: LOOK NOW, due since "), unitsSay());
        assertTrue(unitsSay().contains("on soak, interrupted, 72 h left"), unitsSay());
        ledgerIsSound();
    }

    private String unitsSay() {
        return bench.run("units", "--ledger", bench.ledger().toString()).out();
    }

    @Test
    void allUnitsAreMadeSafeWithOneReason() throws Exception {
        for (String serial : new String[] {"C16-004711", "C16-004712"}) {
            try (Conversation talk = test(serial)) {
                if (serial.endsWith("2")) {
                    talk.hears("Scan or type the serial number").hears(">").types(serial);
                }
                talk.hears("WRIST STRAP").hears(">").types("q");
                assertEquals(5, talk.ends());
            }
        }
        bench.run("make-safe", "--reason", "  ", "--ledger", bench.ledger().toString()).refused("No unit was told, as no reason was given.");
        CommandRunner.Ended untold = bench.run("make-safe", "--reason", "fire alarm", "--technician", "?", "--ledger", bench.ledger().toString());
        assertEquals(1, untold.status(), untold.out());
        assertTrue(untold.said().contains("NOT made safe") && untold.said().endsWith("No unit was told. Go to each that is live, and make it safe there. "), untold.out());
        CommandRunner.Ended ended = bench.run("make-safe", "--reason", "fire alarm", "--ledger", bench.ledger().toString());
        assertEquals(0, ended.status(), ended.err());
        assertEquals(2, ended.out().lines().filter(line -> line.endsWith("to be made safe")).count(), ended.out());
        assertTrue(bench.run("make-safe", "--reason", "again", "--ledger", bench.ledger().toString()).out().contains("is being made safe already"));
        try (Conversation talk = test("C16-004711")) {
            talk.hears("Scan or type the serial number").hears(">").types("C16-004712").hears("Go to the unit").hears(">").types("C16-004711");
            safe(talk).hears("undecided | Ended early by the technician: fire alarm");
            assertEquals(4, talk.ends());
        }
        ledgerIsSound();
    }

    /** A test that is open is not told to be bad input. */
    @Test
    void aPositionThatIsNoneIsToldAndTheTestGoesOn() throws Exception {
        try (Conversation talk = test("C16-004711", "--position", "the third rack from the door")) {
            talk.hears("WRIST STRAP").hears(">").types("@ \u0002A 3\u0003").hears("recorded").hears(">").types("q");
            assertEquals(5, talk.ends());
            assertTrue(talk.errors().contains("A position in the rack is a short text, at most 20 characters."), talk.errors());
        }
        assertTrue(bench.run("units", "--ledger", bench.ledger().toString()).done().said().contains("revision 3, position A 3, technician QN"));
    }

    @Test
    void whoeverSignsInSignsWithThePin() throws Exception {
        try (Conversation talk = test("C16-004711", "--technician", "QN", "--sign-in")) {
            talk.hears("Password of QN").types(Approved.PASSWORD).hears("PIN or badge for QN").types("4711").hears("WRIST STRAP").hears(">").types("! practice");
            safe(talk).hears("undecided |").hears("to sign this test").types("0000").hears("The PIN is wrong. 2 more").hears("to sign this test")
                    .types("4711").hears("Signed as carried out by QN.");
            assertEquals(4, talk.ends());
        }
        ledgerIsSound();
    }

    @Test
    void whoeverCannotSignInIsToldSoBeforeAPasswordIsAskedFor() {
        CommandRunner.Ended ended = bench.run("test", "c16.procedure", "--serial", "C16-004711", "--technician", "ZZ", "--sign-in", "--ledger",
                bench.ledger().toString());
        ended.refused("There is nobody with the id ZZ in the register of people.");
        assertFalse(ended.out().contains("Password"), ended.out());
    }

    /** Without a ledger of its own a bench has no units, and gets none by being asked for them. */
    @ParameterizedTest
    @CsvSource({"round, No unit is on soak.", "make-safe --reason smoke, No unit is on the bench."})
    void whereThereIsNoLedgerYetThereIsNothingToGoRound(String command, String words) {
        assumeTrue(System.getenv("XDG_DATA_HOME") == null, "the bench's folder is to be below the home folder");
        Path home = bench.folder().resolve("home");
        String before = System.setProperty("user.home", home.toString());
        try {
            assertTrue(bench.run(command.split(" ")).done().out().contains(words));
            assertFalse(Files.exists(home), "nothing was made");
        } finally {
            System.setProperty("user.home", before);
        }
    }

    @Test
    void onlyWhoeverIsAuthorisedCarriesItOut() throws Exception {
        String ledger = bench.ledger().toString();
        CommandRunner.Ended granted = bench.typing(Approved.PASSWORD + "\n", "people", "authorise", "QN", "--family", "*", "--procedure", "*", "--from",
                "2026-01-01", "--until", "2026-12-31", "--by", "LW", "--ledger", ledger);
        assertEquals(0, granted.status(), granted.err());
        assertTrue(bench.run("people", "--ledger", ledger).out().contains("may carry out * for *, 2026-01-01 to 2026-12-31"));
        try (Conversation talk = test("C16-004711", "--technician", "TM")) {
            assertEquals(1, talk.ends());
            assertTrue(talk.errors().contains("TM is not authorised for"), talk.errors());
        }
        try (Conversation talk = test("C16-004711", "--technician", "QN")) {
            talk.hears("WRIST STRAP").hears(">").types("> TM").hears("TM is not authorised").hears(">").types("q");
            assertEquals(5, talk.ends());
        }
        ledgerIsSound();
    }
}
