package org.benchwright.ledger.tests;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.benchwright.ledger.SharedPlace;
import org.postgresql.Driver;

/** A real PostgreSQL server of the tests' own, on this machine only, in a folder that goes with it. */
public final class PostgresServer implements AutoCloseable {

    /** The login that owns all databases. */
    public static final String OWNER = "owner";
    /** The login of benches. */
    public static final String BENCH = "bench";
    /** The password of both. */
    public static final String PASSWORD = "trial";

    private static final int START_SECONDS = 240;

    private final Path folder;
    private final int port;
    private Process server;
    private Optional<String> smallDisk = Optional.empty();
    private int databases;

    private PostgresServer(Path folder, int port) {
        this.folder = folder;
        this.port = port;
    }

    /** Starts one. */
    public static PostgresServer start() throws Exception {
        return start(Optional.empty());
    }

    /** Whether {@link #startWithSmallDisk} can be done here: it takes the right to mount. */
    static boolean canMount() throws Exception {
        Process probe = new ProcessBuilder("unshare", "--mount", "sh", "-c", "mount -t tmpfs tmpfs /mnt && nsenter --version")
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        return isRoot() && probe.waitFor(START_SECONDS, TimeUnit.SECONDS) && probe.exitValue() == 0;
    }

    /**
     * Starts one that sees a disk of its own, which nobody else sees and which goes with the server.
     *
     * @param size such as {@code 12m}
     */
    static PostgresServer startWithSmallDisk(String size) throws Exception {
        return start(Optional.of(size));
    }

    private static PostgresServer start(Optional<String> smallDisk) throws Exception {
        Path folder = Files.createTempDirectory("postgres");
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        PostgresServer started = new PostgresServer(folder, port);
        started.smallDisk = smallDisk;
        try {
            started.begin();
            return started;
        } catch (IOException | InterruptedException | SQLException | RuntimeException failure) {
            started.close();
            throw failure;
        }
    }

    private void begin() throws Exception {
        Path password = Files.writeString(folder.resolve("password"), PASSWORD);
        if (isRoot()) {
            // PostgreSQL refuses to run as root.
            run(List.of("chown", "-R", "postgres", folder.toString()));
        }
        Path data = folder.resolve("data");
        run(asOrdinaryUser(program("initdb"), "-D", data.toString(), "-U", OWNER, "--auth=scram-sha-256", "--pwfile=" + password, "--no-sync",
                "--locale=C", "--encoding=UTF8"));
        startAgain();
        sql("postgres", "CREATE ROLE " + BENCH + " LOGIN PASSWORD '" + PASSWORD + "'");
    }

    /** Starts the server on what it left on its disk. */
    public void startAgain() throws Exception {
        Path data = folder.resolve("data");
        // What is in memory only goes with a killed server, as with a power cut of the machine; the operating system's cache stays.
        server = new ProcessBuilder(mounted(program("postgres"), "-D", data.toString(), "-k", folder.toString(), "-p",
                String.valueOf(port), "-c", "listen_addresses=127.0.0.1", "-c", "fsync=off")).directory(folder.toFile())
                .redirectErrorStream(true).redirectOutput(folder.resolve("server.log").toFile()).start();
        awaitReady();
    }

    private List<String> mounted(String... command) throws IOException {
        if (smallDisk.isEmpty()) {
            return asOrdinaryUser(command);
        }
        Path disk = Files.createDirectories(disk());
        List<String> whole = new ArrayList<>(List.of("unshare", "--mount", "sh", "-c", "mount -t tmpfs -o mode=0700,size=" + smallDisk.get()
                + ",uid=$(id -u postgres) tmpfs '" + disk + "' && exec \"$@\"", "sh"));
        whole.addAll(asOrdinaryUser(command));
        return whole;
    }

    private Path disk() {
        return folder.resolve("disk");
    }

    /** A new database without tables, on the small disk. */
    String newDatabaseOnSmallDisk() throws SQLException {
        sql("postgres", "CREATE TABLESPACE small LOCATION '" + disk() + "'", "CREATE DATABASE small TABLESPACE small");
        return "small";
    }

    /** Makes the small disk another size. */
    void resizeDisk(String size) throws Exception {
        run(List.of("nsenter", "--target", String.valueOf(server.pid()), "--mount", "mount", "-o", "remount,size=" + size, disk().toString()));
    }

    int port() {
        return port;
    }

    private void awaitReady() throws Exception {
        long patience = System.nanoTime() + TimeUnit.SECONDS.toNanos(START_SECONDS);
        while (true) {
            try {
                connect("postgres", OWNER).close();
                return;
            } catch (SQLException notYet) {
                if (System.nanoTime() > patience || !server.isAlive()) {
                    throw notYet;
                }
                Thread.sleep(50);
            }
        }
    }

    private static boolean isRoot() {
        return "root".equals(System.getProperty("user.name"));
    }

    private static List<String> asOrdinaryUser(String... command) {
        List<String> whole = new ArrayList<>(isRoot() ? List.of("setpriv", "--reuid=postgres", "--regid=postgres", "--clear-groups") : List.of());
        whole.addAll(List.of(command));
        return whole;
    }

    /** Debian keeps the server's programs out of the path, one folder for each version. */
    private static String program(String name) throws IOException {
        Path versions = Path.of("/usr/lib/postgresql");
        if (Files.isDirectory(versions)) {
            try (Stream<Path> folders = Files.list(versions)) {
                return folders.map(version -> version.resolve("bin").resolve(name)).filter(Files::isExecutable)
                        .max(Comparator.naturalOrder()).orElseThrow(PostgresServer::missing).toString();
            }
        }
        throw missing();
    }

    private static IOException missing() {
        return new IOException("these tests need a PostgreSQL server on this machine; releng/verify installs one");
    }

    private void run(List<String> command) throws IOException, InterruptedException {
        Path log = Files.createTempFile("postgres", ".log");
        Process process = new ProcessBuilder(command).directory(Path.of("/").toFile()).redirectErrorStream(true).redirectOutput(log.toFile()).start();
        if (!process.waitFor(START_SECONDS, TimeUnit.SECONDS) || process.exitValue() != 0) {
            throw new IOException(command + ": " + Files.readString(log));
        }
        Files.delete(log);
    }

    /** A new database without tables. */
    public String newDatabase() throws SQLException {
        databases++;
        String name = "ledger" + databases;
        sql("postgres", "CREATE DATABASE " + name);
        return name;
    }

    /** A database as its owner gets at it. */
    SharedPlace owned(String database) {
        return new SharedPlace(url(database), OWNER, PASSWORD);
    }

    /** A database as a bench gets at it. */
    SharedPlace shared(String database) {
        return new SharedPlace(url(database), BENCH, PASSWORD);
    }

    /** The address of a database. */
    public String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    Connection connect(String database, String user) throws SQLException {
        Properties login = new Properties();
        login.setProperty("user", user);
        login.setProperty("password", PASSWORD);
        return new Driver().connect(url(database), login);
    }

    /** Carries a statement out as the owner, who may do anything. */
    void sql(String database, String... statements) throws SQLException {
        try (Connection connection = connect(database, OWNER); Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    /** Kills the server as a power cut would. */
    public void kill() throws Exception {
        server.descendants().forEach(ProcessHandle::destroyForcibly);
        server.destroyForcibly().waitFor();
    }

    @Override
    public void close() throws Exception {
        if (server != null) {
            server.destroy();
            if (!server.waitFor(START_SECONDS, TimeUnit.SECONDS)) {
                kill();
            }
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        }
    }
}
