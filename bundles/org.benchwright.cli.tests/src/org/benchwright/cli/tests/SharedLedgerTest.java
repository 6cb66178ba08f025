package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;

import org.benchwright.ledger.tests.PostgresServer;
import org.benchwright.ledger.tests.WithServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Two benches on one shared ledger, at the terminal. */
class SharedLedgerTest extends WithServer {

    private String url;
    private CommandRunner one;
    private CommandRunner two;

    @BeforeEach
    void benches() throws Exception {
        url = server.url(server.newDatabase());
        Path place = Files.createTempDirectory(folder, "benches");
        one = new CommandRunner(Files.createDirectories(place.resolve("one")));
        two = new CommandRunner(Files.createDirectories(place.resolve("two")));
    }

    private void share(CommandRunner bench) throws Exception {
        Path home = Files.createDirectories(bench.ledger().getParent());
        Files.writeString(home.resolve("shared.properties"), "url = " + url + "\nuser = " + PostgresServer.BENCH + "\n");
        Path password = Files.writeString(home.resolve("shared.password"), PostgresServer.PASSWORD + "\n");
        Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-------"));
    }

    private static CommandRunner.Ended run(CommandRunner bench, String... arguments) {
        return typing(bench, "", arguments);
    }

    private static CommandRunner.Ended typing(CommandRunner bench, String typed, String... arguments) {
        String[] all = Arrays.copyOf(arguments, arguments.length + 2);
        all[arguments.length] = "--ledger";
        all[arguments.length + 1] = bench.ledger().toString();
        return bench.typing(typed, all);
    }

    private static void done(CommandRunner.Ended ended, String words) {
        assertEquals(0, ended.status(), ended.out() + ended.err());
        assertTrue(ended.said().contains(words), ended.out());
    }

    private void install(CommandRunner bench) throws Exception {
        share(bench);
        done(typing(bench, PostgresServer.PASSWORD + "\n", "share", "--install", "--owner", PostgresServer.OWNER), "The shared ledger is made");
    }

    @Test
    void aBenchWithoutSettingsSharesNothing() {
        CommandRunner.Ended ended = run(one, "forward");
        assertEquals(1, ended.status());
        assertTrue(ended.err().contains("shared.properties"), ended.err());
    }

    @Test
    void theBooksOfTheFirstBenchBecomeTheSharedOnesAndReachTheSecond() throws Exception {
        one.approved();
        one.rehearse(SampleProcedure.GOOD);
        install(one);
        CommandRunner.Ended refused = run(one, "forward");
        assertEquals(1, refused.status());
        assertTrue(refused.err().contains("bench share --books"), refused.err());
        done(run(one, "share", "--books"), "entries were put");
        done(run(one, "forward"), "Nothing waits to be forwarded.");
        share(two);
        Files.createDirectories(two.ledger().getParent());
        done(two.rehearse(SampleProcedure.GOOD), "would be accepted");
        assertTrue(run(two, "share").said().contains("wait to be forwarded since"), run(two, "share").out());
        done(run(two, "forward"), "Nothing waits to be forwarded.");
        assertEquals(run(one, "people").out(), run(two, "people").out());
        assertEquals(run(one, "revisions").out(), run(two, "revisions").out());
        Path copy = folder.resolve("copy").resolve(one.folder().getParent().getFileName() + ".ledger");
        done(run(one, "share", "--copy", copy.toString()), "Written");
        done(one.run("verify", copy.toString()), "The ledger is sound.");
        assertTrue(one.run("verify", copy.toString()).out().contains("of 2 tests"), one.run("verify", copy.toString()).out());
        done(run(two, "verify"), "The ledger is sound.");
    }

    @Test
    void peopleAreSignedInTheSharedLedgerFromAnyBench() throws Exception {
        install(one);
        share(two);
        done(typing(one, "a long enough word\n", "people", "begin", "LW", "--name", "administrator LW"), "Entered.");
        Files.createDirectories(two.ledger().getParent());
        two.rehearse(SampleProcedure.GOOD);
        done(run(two, "forward"), "Forwarded:");
        CommandRunner.Ended elsewhere = typing(two, "a long enough word\n", "people", "add", "RB", "--name", "engineer RB", "--by", "LW");
        assertEquals(1, elsewhere.status());
        assertTrue(elsewhere.err().contains("The key of LW is not on this bench"), elsewhere.err());
        done(typing(one, "a long enough word\n", "people", "add", "RB", "--name", "engineer RB", "--by", "LW"), "Entered.");
        done(run(two, "forward"), "Forwarded: nothing");
        assertEquals(run(one, "people").out(), run(two, "people").out());
        assertTrue(run(two, "people").out().contains("engineer RB"));
        done(run(one, "verify"), "The ledger is sound.");
        done(run(two, "verify"), "The ledger is sound.");
    }

    @Test
    void withoutAServerWorkGoesOnAndWhatWaitsIsTold() throws Exception {
        install(one);
        server.kill();
        try {
            CommandRunner.Ended lost = run(one, "forward");
            assertEquals(2, lost.status());
            done(one.rehearse(SampleProcedure.GOOD), "would be accepted");
            lost = run(one, "forward");
            assertEquals(2, lost.status());
            assertTrue(lost.err().contains("can't be reached"), lost.err());
            assertEquals(1, lost.err().lines().count(), lost.err());
            CommandRunner.Ended state = run(one, "share");
            assertTrue(state.said().contains("can't be reached"), state.out());
            assertTrue(state.said().contains("wait to be forwarded since"), state.out());
            CommandRunner.Ended people = typing(one, "a long enough word\n", "people", "begin", "LW", "--name", "administrator LW");
            assertEquals(2, people.status());
            assertTrue(people.err().contains("can't be reached"), people.err());
        } finally {
            server.startAgain();
        }
        done(run(one, "forward"), "Nothing waits to be forwarded.");
        assertFalse(run(one, "share").said().contains("can't be reached"));
    }

    @Test
    void aPasswordThatOthersCanReadIsNotUsed() throws Exception {
        share(one);
        one.rehearse(SampleProcedure.GOOD);
        Path password = one.ledger().resolveSibling("shared.password");
        Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-r-----"));
        CommandRunner.Ended ended = run(one, "forward");
        assertEquals(2, ended.status());
        assertTrue(ended.err().contains("chmod 600"), ended.err());
        Files.delete(password);
        assertTrue(run(one, "forward").err().contains("BENCHWRIGHT_SHARED_PASSWORD"));
        Files.writeString(one.ledger().resolveSibling("shared.properties"), "url = " + url + "\nuser = bench\npassword = trial\n");
        assertTrue(run(one, "forward").err().contains("no place for a password"));
        Files.writeString(one.ledger().resolveSibling("shared.properties"), "url = " + url + "?sslmode=disable\nuser = bench\n");
        assertTrue(run(one, "forward").err().contains("nothing behind it"));
    }
}
