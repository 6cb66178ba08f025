package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;

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

    private void install(CommandRunner bench) throws Exception {
        share(bench);
        bench.typingOnLedger(PostgresServer.PASSWORD + "\n", "share", "--install", "--owner", PostgresServer.OWNER).says("The shared ledger is made");
    }

    @Test
    void aBenchWithoutSettingsSharesNothing() {
        CommandRunner.Ended ended = one.onLedger("forward");
        assertEquals(1, ended.status());
        assertTrue(ended.err().contains("shared.properties"), ended.err());
    }

    @Test
    void theBooksOfTheFirstBenchBecomeTheSharedOnesAndReachTheSecond() throws Exception {
        one.approved();
        one.rehearse(SampleProcedure.GOOD);
        install(one);
        CommandRunner.Ended refused = one.onLedger("forward");
        assertEquals(1, refused.status());
        assertTrue(refused.err().contains("bench share --books"), refused.err());
        one.onLedger("share", "--books").says("entries were put");
        one.onLedger("forward").says("Nothing waits to be forwarded.");
        share(two);
        Files.createDirectories(two.ledger().getParent());
        two.rehearse(SampleProcedure.GOOD).says("would be accepted");
        assertTrue(two.onLedger("share").said().contains("wait to be forwarded since"), two.onLedger("share").out());
        two.onLedger("forward").says("Nothing waits to be forwarded.");
        assertEquals(one.onLedger("people").out(), two.onLedger("people").out());
        assertEquals(one.onLedger("revisions").out(), two.onLedger("revisions").out());
        Path copy = folder.resolve("copy").resolve(one.folder().getParent().getFileName() + ".ledger");
        one.onLedger("share", "--copy", copy.toString()).says("Written");
        one.run("verify", copy.toString()).says("The ledger is sound.");
        assertTrue(one.run("verify", copy.toString()).out().contains("of 2 tests"), one.run("verify", copy.toString()).out());
        two.onLedger("verify").says("The ledger is sound.");
    }

    @Test
    void peopleAreSignedInTheSharedLedgerFromAnyBench() throws Exception {
        install(one);
        share(two);
        one.typingOnLedger("a long enough word\n", "people", "begin", "LW", "--name", "administrator LW").says("Entered.");
        Files.createDirectories(two.ledger().getParent());
        two.rehearse(SampleProcedure.GOOD);
        two.onLedger("forward").says("Forwarded:");
        CommandRunner.Ended elsewhere = two.typingOnLedger("a long enough word\n", "people", "add", "RB", "--name", "engineer RB", "--by", "LW");
        assertEquals(1, elsewhere.status());
        assertTrue(elsewhere.err().contains("The key of LW is not on this bench"), elsewhere.err());
        one.typingOnLedger("a long enough word\n", "people", "add", "RB", "--name", "engineer RB", "--by", "LW").says("Entered.");
        two.onLedger("forward").says("Forwarded: nothing");
        assertEquals(one.onLedger("people").out(), two.onLedger("people").out());
        assertTrue(two.onLedger("people").out().contains("engineer RB"));
        one.onLedger("verify").says("The ledger is sound.");
        two.onLedger("verify").says("The ledger is sound.");
    }

    @Test
    void withoutAServerWorkGoesOnAndWhatWaitsIsTold() throws Exception {
        install(one);
        server.kill();
        try {
            CommandRunner.Ended lost = one.onLedger("forward");
            assertEquals(2, lost.status());
            one.rehearse(SampleProcedure.GOOD).says("would be accepted");
            lost = one.onLedger("forward");
            assertEquals(2, lost.status());
            assertTrue(lost.err().contains("can't be reached"), lost.err());
            assertEquals(1, lost.err().lines().count(), lost.err());
            CommandRunner.Ended state = one.onLedger("share");
            assertTrue(state.said().contains("can't be reached"), state.out());
            assertTrue(state.said().contains("wait to be forwarded since"), state.out());
            CommandRunner.Ended people = one.typingOnLedger("a long enough word\n", "people", "begin", "LW", "--name", "administrator LW");
            assertEquals(2, people.status());
            assertTrue(people.err().contains("can't be reached"), people.err());
        } finally {
            server.startAgain();
        }
        one.onLedger("forward").says("Nothing waits to be forwarded.");
        assertFalse(one.onLedger("share").said().contains("can't be reached"));
    }

    @Test
    void aPasswordThatOthersCanReadIsNotUsed() throws Exception {
        share(one);
        one.rehearse(SampleProcedure.GOOD);
        Path password = one.ledger().resolveSibling("shared.password");
        Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-r-----"));
        CommandRunner.Ended ended = one.onLedger("forward");
        assertEquals(2, ended.status());
        assertTrue(ended.err().contains("chmod 600"), ended.err());
        Files.delete(password);
        assertTrue(one.onLedger("forward").err().contains("BENCHWRIGHT_SHARED_PASSWORD"));
        Files.writeString(one.ledger().resolveSibling("shared.properties"), "url = " + url + "\nuser = bench\npassword = trial\n");
        assertTrue(one.onLedger("forward").err().contains("no place for a password"));
        Files.writeString(one.ledger().resolveSibling("shared.properties"), "url = " + url + "?sslmode=disable\nuser = bench\n");
        assertTrue(one.onLedger("forward").err().contains("nothing behind it"));
    }
}
