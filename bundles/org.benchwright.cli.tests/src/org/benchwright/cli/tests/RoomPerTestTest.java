package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Locale;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.benchwright.cli.internal.LanguageSource;
import org.benchwright.ledger.tests.PostgresServer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.postgresql.Driver;

/** How much room a test takes in a bench's ledger and in a shared one is what {@code docs/deployment.md} reckons with. */
class RoomPerTestTest {

    private static final Path PROCEDURES = Path.of("../../procedures").toAbsolutePath().normalize();
    private static final Path PAGE = Path.of("../../docs/deployment.md");
    private static final Pattern SAID = Pattern.compile("\\| a C16 acceptance \\| (\\d+) events \\| ([0-9,]+) bytes \\| ([0-9,]+) bytes \\|");
    private static final int BEFORE = 1;
    private static final int MEASURED = 4;
    private static final double TESTS = 10_000_000;
    private static final double GB = 1e9;
    private static final double TB = 1e12;
    private static final int DAYS = 2500;
    private static final double HOUR = 3600;
    private static final int SECONDS = 8 * 3600;

    @TempDir
    private Path folder;

    @Test
    void theRoomIsWhatThePageReckonsWith() throws Exception {
        CommandRunner bench = new CommandRunner(folder).with(new LanguageSource());
        try (PostgresServer server = PostgresServer.start()) {
            String url = server.url(server.newDatabase());
            share(bench, url);
            carryOut(bench, BEFORE);
            forward(bench);
            long eventsBefore = events(bench);
            long bytesBefore = bytes(bench);
            long sharedBefore = sharedBytes(url);
            carryOut(bench, MEASURED);
            forward(bench);

            Matcher said = SAID.matcher(Files.readString(PAGE));
            assertTrue(said.find(), "the page tells it");
            assertEquals(number(said, 1), (events(bench) - eventsBefore) / MEASURED, "events of a test");
            assertNear(number(said, 2), (bytes(bench) - bytesBefore) / MEASURED);
            assertNear(number(said, 3), (sharedBytes(url) - sharedBefore) / MEASURED);
        }
    }

    /** What is reckoned for a large site is reckoned from that, and from nothing else. */
    @Test
    void whatALargeSiteNeedsFollowsFromIt() throws IOException {
        String page = Files.readString(PAGE);
        Matcher said = SAID.matcher(page);
        assertTrue(said.find(), "the page tells it");
        long events = number(said, 1);
        long bench = number(said, 2);
        long shared = number(said, 3);
        String[] rows = {
            String.format(Locale.ROOT, "| 50,000 x %,d bytes | %.1f GB |", bench, 50_000.0 * bench / GB),
            String.format(Locale.ROOT, "| 10,000,000 x %d | %.2f thousand million |", events, TESTS * events / 1e9),
            String.format(Locale.ROOT, "| 10,000,000 x %,d bytes | %.1f TB |", shared, TESTS * shared / TB),
            String.format(Locale.ROOT, "| %.1f TB + 10,000,000 x %,d bytes | %.1f TB |", TESTS * shared / TB, bench, TESTS * (shared + bench) / TB)};
        for (String row : rows) {
            assertTrue(page.contains(row), row);
        }
        String[] times = {
            String.format(Locale.ROOT, "| 50,000 x %d / 300,000 = %.0f s | 10,000,000 x %d / 300,000 = %.1f h |", events, 50_000.0 * events / 300_000, events,
                    TESTS * events / 300_000 / HOUR),
            String.format(Locale.ROOT, "| 50,000 x %d / 150,000 = %.0f s | 10,000,000 x %d / 150,000 = %.1f h |", events, 50_000.0 * events / 150_000, events,
                    TESTS * events / 150_000 / HOUR),
            String.format(Locale.ROOT, "| 50,000 / 1,000 = %.0f s | 10,000,000 / 1,000 = %.1f h |", 50_000.0 / 1_000, TESTS / 1_000 / HOUR)};
        for (String row : times) {
            assertTrue(page.contains(row), row);
        }
        long day = (long) TESTS / DAYS;
        String pace = String.format(Locale.ROOT, "%,d x %d events are %,d a day or %d a second over the whole site, and %,d x %,d bytes are %.1f GB a day", day, events,
                day * events, Math.round((double) day * events / SECONDS), day, shared, (double) day * shared / GB);
        assertTrue(page.replaceAll("\\s+", " ").contains(pace), pace);
    }

    private static long number(Matcher said, int group) {
        return Long.parseLong(said.group(group).replace(",", ""));
    }

    private static void assertNear(long said, long measured) {
        assertTrue(Math.abs(measured - said) <= said / 5, "said are " + said + " bytes, measured " + measured);
    }

    private static void share(CommandRunner bench, String url) throws IOException {
        Path home = Files.createDirectories(bench.ledger().getParent());
        Files.writeString(home.resolve("shared.properties"), "url = " + url + "\nuser = " + PostgresServer.BENCH + "\n");
        Path password = Files.writeString(home.resolve("shared.password"), PostgresServer.PASSWORD + "\n");
        Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-------"));
        CommandRunner.Ended installed = bench.typing(PostgresServer.PASSWORD + "\n", "share", "--install", "--owner", PostgresServer.OWNER, "--ledger",
                bench.ledger().toString());
        assertEquals(0, installed.status(), installed.err());
    }

    private static void forward(CommandRunner bench) {
        CommandRunner.Ended ended = bench.run("forward", "--ledger", bench.ledger().toString());
        assertEquals(0, ended.status(), ended.out() + ended.err());
    }

    /** Tables with their indexes. */
    private static long sharedBytes(String url) throws SQLException {
        Properties login = new Properties();
        login.put("user", PostgresServer.OWNER);
        login.put("password", PostgresServer.PASSWORD);
        try (Connection connection = new Driver().connect(url, login);
                ResultSet size = connection.createStatement().executeQuery(
                        "SELECT sum(pg_total_relation_size(oid)) FROM pg_class WHERE relkind = 'r' AND relnamespace NOT IN "
                                + "(SELECT oid FROM pg_namespace WHERE nspname IN ('pg_catalog', 'information_schema'))")) {
            size.next();
            return size.getLong(1);
        }
    }

    private static void carryOut(CommandRunner bench, int times) {
        for (int i = 0; i < times; i++) {
            CommandRunner.Ended ended = bench.run("test", PROCEDURES.resolve("tarn-c16-acceptance.procedure").toString(), "--serial", "C16-004711", "--answers",
                    PROCEDURES.resolve("answers/accepted.answers").toString(), "--ledger", bench.ledger().toString(), "--rehearse");
            assertEquals(0, ended.status(), ended.err());
        }
    }

    private static long events(CommandRunner bench) {
        String verified = bench.run("verify", bench.ledger().toString()).out();
        Matcher links = Pattern.compile("Links: (\\d+) events").matcher(verified);
        assertTrue(links.find(), verified);
        return Long.parseLong(links.group(1));
    }

    /** The store's files; documents lie beside them and count once however often they are attached. */
    private static long bytes(CommandRunner bench) throws IOException {
        long bytes = 0;
        try (Stream<Path> files = Files.list(bench.ledger().getParent())) {
            for (Path file : files.filter(each -> each.getFileName().toString().startsWith(bench.ledger().getFileName().toString())).toList()) {
                bytes += Files.size(file);
            }
        }
        return bytes;
    }
}
