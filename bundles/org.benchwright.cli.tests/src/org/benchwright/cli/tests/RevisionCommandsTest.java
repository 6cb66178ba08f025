package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.time.Duration;
import java.util.List;

import org.benchwright.engine.plan.Plan;
import org.benchwright.language.Reading;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.ChangedPlan;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** From an empty register to a test by an approved revision, at the terminal. */
class RevisionCommandsTest extends OnABench {

    private static final String RIGHT = Approved.PASSWORD + "\n";

    private void done(CommandRunner.Ended ended) {
        assertEquals(0, ended.status(), ended.out() + ended.err());
        assertEquals("", ended.err());
        assertFalse(ended.out().contains(Approved.PASSWORD), ended.out());
    }

    private void revision(int number) {
        Plan other = ChangedPlan.of(SamplePlan.acceptance()).revision(number).plan();
        bench.with((file, family) -> new Reading.Ready(other, "revision " + number, List.of()));
    }

    @Test
    void fromAnEmptyRegisterToATest() throws Exception {
        bench("", "test", "c16.procedure", "--serial", "C16-004711").refused("is a draft: nobody has approved it");
        done(bench(RIGHT, "people", "begin", "LW", "--name", "administrator LW"));
        bench(RIGHT, "prepare", "c16.procedure", "--by", "RB").refused("nobody with the id RB");
        done(bench(RIGHT, "people", "add", "RB", "--name", "engineer RB", "--role", "engineer", "--by", "LW"));
        done(bench(RIGHT + RIGHT, "people", "enroll", "RB", "--by", "LW"));
        done(bench(RIGHT, "people", "add", "KM", "--name", "supervisor KM", "--role", "supervisor", "--by", "LW"));
        done(bench(RIGHT + RIGHT, "people", "enroll", "KM", "--by", "LW"));
        CommandRunner.Ended prepared = bench(RIGHT, "prepare", "c16.procedure", "--by", "RB");
        done(prepared);
        assertEquals("It waits for a second person: bench approve c16.procedure --ledger " + bench.ledger() + " --by ID", prepared.lastLine());
        bench(RIGHT, "approve", "c16.procedure", "--by", "RB").refused("approval takes a second person");
        CommandRunner.Ended approved = bench(RIGHT, "approve", "c16.procedure", "--by", "KM");
        done(approved);
        assertTrue(approved.said().contains("no revision of it is approved yet"), approved.out());
        assertTrue(approved.said().contains("revision 3: approved prepared by RB, 2026-03-02 07:30 approved by KM, 2026-03-02 07:30"), approved.out());
        CommandRunner.Ended test = bench("", "test", "c16.procedure", "--serial", "C16-004711");
        assertEquals(5, test.status(), test.out() + test.err());
        CommandRunner.Ended verified = bench.run("verify", bench.ledger().toString());
        assertEquals(0, verified.status(), verified.out());
        assertTrue(verified.out().contains("of 1 test,"), verified.out());
        assertTrue(verified.out().contains("Signatures: 4 keys, no fault"), verified.out());
        List<String> owners = verified.out().lines().filter(line -> line.startsWith("key ")).map(line -> line.replaceFirst("^key [0-9a-f]{64} ", "")).toList();
        assertEquals(List.of("KM", "LW", "RB", "of a bench"), owners.stream().sorted().toList(), verified.out());
    }

    @Test
    void whoCanNotSignIsToldSoBeforeAnyPasswordIsTypedAndWhatComesNext() {
        done(bench(RIGHT, "people", "begin", "LW", "--name", "administrator LW"));
        CommandRunner.Ended added = bench(RIGHT, "people", "add", "RB", "--name", "engineer RB", "--role", "engineer", "--by", "LW");
        assertTrue(added.out().endsWith("Entered.\nRB can sign with a key only: bench people enroll RB --by LW --ledger " + bench.ledger() + "\n"),
                added.out());
        bench("", "people", "enroll", "KM", "--by", "LW").refused("There is nobody with the id KM in the register of people. An administrator adds");
        bench("", "prepare", "c16.procedure", "--by", "RB").refused("bench people enroll RB");
        bench("", "approve", "c16.procedure", "--by", "KM").refused("There is nobody with the id KM");
        bench("", "people", "grant", "RB", "--role", "supervisor", "--by", "RB").refused("RB has no key in use");
    }

    @Test
    void aLedgerWhoseNameHasBlanksIsQuotedWhereTheNextCommandIsTold() {
        String ledger = bench.folder().resolve("bench two").resolve("bench.ledger").toString();
        done(bench.typing(RIGHT, "people", "begin", "LW", "--name", "administrator LW", "--ledger", ledger));
        CommandRunner.Ended added = bench.typing(RIGHT, "people", "add", "RB", "--name", "engineer RB", "--role", "engineer", "--by", "LW", "--ledger", ledger);
        assertEquals("RB can sign with a key only: bench people enroll RB --by LW --ledger \"" + ledger + "\"", added.lastLine());
    }

    @Test
    void whatIsRefusedLeavesNothingBehind() {
        bench("", "test", "c16.procedure", "--serial", "C16-004711").refused("is a draft: nobody has approved it");
        bench(RIGHT, "people", "begin", "LW", "--name", "administrator LW", "--role", "watch").refused("watch");
        bench("short\nshort\n", "people", "begin", "LW", "--name", "administrator LW").refused("password");
        assertFalse(Files.exists(bench.ledger()), "no ledger for what was refused");
        done(bench(RIGHT, "people", "begin", "LW", "--name", "administrator LW"));
        bench(RIGHT, "people", "add", "RB", "--name", "engineer RB", "--role", "engineer", "--role", "bench", "--by", "LW").refused("bench");
        String people = bench("", "people").said();
        assertTrue(people.contains("LW") && !people.contains("RB"), people);
        done(bench(RIGHT, "people", "add", "RB", "--name", "engineer RB", "--role", "engineer", "--by", "LW"));
    }

    @Test
    void anApproverSeesFirstWhatTheRevisionChanges() throws Exception {
        bench.approved();
        revision(4);
        done(bench(RIGHT, "prepare", "c16.procedure", "--by", "RB"));
        CommandRunner.Ended looked = bench("\n", "approve", "c16.procedure", "--by", "KM");
        looked.refused("No password was given. Nothing was signed.");
        assertTrue(looked.said().contains("what revision 4 changes against revision 3, which is approved:"), looked.out());
        CommandRunner.Ended list = bench("", "revisions", "c16.procedure");
        assertEquals(0, list.status(), list.err());
        assertTrue(list.out().startsWith("C16 acceptance on the bench, revision 4: prepared\n"), list.out());
        assertTrue(list.out().contains("revision 3: approved"), list.out());
        done(bench(RIGHT, "approve", "c16.procedure", "--by", "KM"));
        assertTrue(bench("", "revisions").out().contains("revision 3: superseded"));
        done(bench(RIGHT, "withdraw", "c16.procedure", "--by", "KM", "--reason", "limit is wrong"));
        String after = bench("", "revisions").said();
        assertTrue(after.contains("revision 3: approved"), after);
        assertTrue(after.contains("revision 4: withdrawn"), after);
        assertTrue(after.contains("withdrawn by KM, 2026-03-02 07:30: limit is wrong"), after);
        bench(RIGHT, "withdraw", "c16.procedure", "--by", "KM", "--reason", "x", "--revision", "four").refused("--revision");
    }

    @ParameterizedTest
    @ValueSource(strings = {"4294967299", "-4294967293", "0", "-1", "9223372036854775807"})
    void aNumberThatNoRevisionHasIsRefusedAndNothingIsWithdrawn(String number) throws Exception {
        bench.approved();
        bench(RIGHT, "withdraw", "c16.procedure", "--by", "KM", "--reason", "x", "--revision=" + number).refused(number + " is no revision number");
        assertTrue(bench("", "revisions").out().contains("revision 3: approved"));
    }

    @Test
    void aDraftSaysThatWhatWasSignedUnderItsNumberIsAnotherText() throws Exception {
        bench.approved();
        bench.with((file, family) -> new Reading.Ready(SamplePlan.acceptance(), "another text", List.of()));
        String changed = bench("", "revisions", "c16.procedure").said();
        assertTrue(changed.startsWith("C16 acceptance on the bench, revision 3: draft, changed since it was approved: it needs the next revision number"), changed);
        revision(4);
        done(bench(RIGHT, "prepare", "c16.procedure", "--by", "RB"));
        Plan prepared = SamplePlan.acceptance();
        revision(5);
        assertTrue(bench("", "revisions", "c16.procedure").said().startsWith(prepared.title() + ", revision 5: draft text"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"prepare c16.procedure --by RB", "approve c16.procedure --by KM", "withdraw c16.procedure --by KM --reason x",
        "people add RB --name engineer --by LW", "people enroll RB --by LW", "people rotate RB", "people revoke RB --by LW --reason x",
        "people grant RB --role engineer --by LW", "people end RB --role engineer --by LW --reason x", "people", "revisions",
        "revisions c16.procedure", "check ."})
    void aMistypedLedgerIsNotMadeAndNoPasswordIsAskedFor(String words) throws Exception {
        Files.writeString(folder.resolve("c16.procedure"), "");
        CommandRunner.Ended ended = bench(RIGHT, words.split(" "));
        assertEquals(2, ended.status(), ended.out() + ended.err());
        assertTrue(ended.err().startsWith("There is no ledger at " + bench.ledger()), ended.err());
        assertFalse(ended.out().contains("assword"), ended.out());
        assertFalse(Files.exists(bench.ledger().getParent()), "neither ledger nor key");
    }

    @Test
    void onAFreshBenchTheRegisterIsEmptyAndHowToBeginItIsSaid() throws Exception {
        assumeTrue(System.getenv("XDG_DATA_HOME") == null, "the bench's folder is to be below the home folder");
        String home = System.setProperty("user.home", folder.resolve("home").toString());
        try {
            CommandRunner.Ended ended = bench.run("people");
            assertEquals(0, ended.status(), ended.err());
            assertTrue(ended.out().startsWith("Nobody is in the register yet. Begin it: bench people begin ID"), ended.out());
            CommandRunner.Ended prepared = bench.typing(RIGHT, "prepare", "c16.procedure", "--by", "RB");
            assertEquals(2, prepared.status(), prepared.out());
            assertTrue(prepared.err().startsWith("There is no ledger at "), prepared.err());
            assertFalse(Files.exists(folder.resolve("home")));
        } finally {
            System.setProperty("user.home", home);
        }
    }

    @Test
    void wrongPasswordsLockTheKeyAndTheWaitOutlastsTheCommand() throws Exception {
        bench.approved();
        revision(4);
        for (int i = 0; i < 5; i++) {
            bench("wrong guess\n", "prepare", "c16.procedure", "--by", "RB").refused("not the password of RB");
        }
        bench(RIGHT, "prepare", "c16.procedure", "--by", "RB").refused("5 wrong passwords were given");
        bench.time().advance(Duration.ofMinutes(1));
        done(bench(RIGHT, "prepare", "c16.procedure", "--by", "RB"));
    }

    @Test
    void theRegisterIsListedAndKept() throws Exception {
        bench.approved();
        done(bench(RIGHT + "five dry badgers\n", "people", "rotate", "RB"));
        bench.time().advance(Duration.ofMinutes(1));
        done(bench(RIGHT, "people", "revoke", "KM", "--by", "LW", "--reason", "token lost"));
        done(bench(RIGHT, "people", "grant", "RB", "--role", "supervisor", "--by", "LW"));
        done(bench(RIGHT, "people", "end", "RB", "--role", "engineer", "--by", "LW", "--reason", "moved on"));
        String list = bench("", "people").out();
        assertTrue(list.contains("RB  engineer RB  (supervisor)\n"), list);
        assertTrue(list.contains(": replaced by a later one\n"), list);
        assertTrue(list.contains(": revoked: token lost\n"), list);
        bench(RIGHT, "people", "grant", "RB", "--role", "king", "--by", "LW").refused("\"king\" is no role");
        bench(RIGHT, "people", "revoke", "RB", "--by", "LW", "--reason", "x", "--from", "yesterday").refused("is no instant");
        bench(RIGHT, "people", "add", "XX", "--name", "X", "--by", "KM").refused("KM has no key in use, and can't sign. An administrator gives one at the terminal: bench people enroll KM");
        ledgerIsSound();
    }

    @Test
    void aPasswordThatIsGivenAsAnArgumentIsRefused() {
        bench(RIGHT, "prepare", "c16.procedure", "--by", "RB", "--password", "x").refused("--password");
    }

    @Test
    void aTerminalHidesWhatIsTypedAndAsksForANewPasswordTwice() throws Exception {
        String[] begin = {"people", "begin", "LW", "--name", "administrator LW", "--ledger", bench.ledger().toString()};
        try (Conversation talk = Conversation.atTerminal(bench, begin)) {
            talk.hears("New password of LW, 10 characters or more:").types("otters");
            assertEquals(1, talk.ends(), talk.everything());
            assertTrue(talk.errors().contains("10 to 128"), talk.errors());
            assertFalse(talk.everything().contains("once more"), "it is typed again only where it will do: " + talk.everything());
        }
        try (Conversation talk = Conversation.atTerminal(bench, begin)) {
            talk.hears("New password of LW, 10 characters or more:").types("!our wet otters").hears("The same once more:").types("four wet otters");
            assertEquals(1, talk.ends(), talk.everything());
            assertTrue(talk.errors().contains("The two are not the same."), talk.errors());
        }
        try (Conversation talk = Conversation.atTerminal(bench, begin)) {
            talk.hears("New password of LW, 10 characters or more:").types("!our wet otters").hears("The same once more:").types("!our wet otters").hears("Entered.");
            assertEquals(0, talk.ends(), talk.everything());
            assertFalse(talk.everything().contains("otters"), talk.everything());
        }
    }
}
