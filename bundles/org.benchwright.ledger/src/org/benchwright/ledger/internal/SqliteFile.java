package org.benchwright.ledger.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.Set;
import org.benchwright.ledger.BenchFolder;
import org.benchwright.ledger.DurableFiles;
import org.benchwright.ledger.FolderLock;
import org.benchwright.ledger.LedgerBusyException;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFormatException;
import org.benchwright.ledger.LedgerMissingException;
import org.benchwright.ledger.LedgerOptions;
import org.benchwright.ledger.LedgerReadOnlyException;
import org.benchwright.ledger.LedgerVersionException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteOpenMode;

/** One connection to a ledger's file, known to be a ledger of a format that this release understands. */
public final class SqliteFile implements Database {

    private final Path path;
    private final Connection connection;
    private final ReadOnlyPlace place;
    private final boolean writable;
    private final Optional<Object> identity;

    private SqliteFile(Path path, Connection connection, ReadOnlyPlace place, boolean writable) {
        this.identity = identity(path);
        this.path = path;
        this.connection = connection;
        this.place = place;
        this.writable = writable;
    }

    /** Opens the ledger for writing; makes it, and its folder, when there is none. */
    public static SqliteFile openOrCreate(Path file, LedgerOptions options) throws LedgerException {
        return openInTurn(file, options, true);
    }

    @SuppressWarnings("try") // the lock is held, not used
    private static SqliteFile openInTurn(Path file, LedgerOptions options, boolean make) throws LedgerException {
        Path path = BenchFolder.file(file);
        if (Files.exists(path) && !Files.isRegularFile(path)) {
            throw new LedgerFormatException(Messages.text("notALedger", path));
        }
        // The change of a new file to WAL mode doesn't wait for others, so starts take turns.
        try (FolderLock lock = FolderLock.take(path.getParent(), options.patience())
                .orElseThrow(() -> new LedgerBusyException(Messages.text("folderBusy", path.getParent())))) {
            return openAlone(path, options, make);
        } catch (IOException refused) {
            throw new LedgerReadOnlyException(Messages.text("readOnly", path), refused);
        } catch (SQLException failure) {
            throw SqliteErrors.translate(failure, path);
        }
    }

    private static SqliteFile openAlone(Path path, LedgerOptions options, boolean make) throws SQLException, LedgerException {
        SideFiles.requireHarmless(path);
        Connection connection = connect(path.toUri().toString(), false, options);
        try {
            if (!make && identified(connection, path) == 0) {
                throw new LedgerFormatException(Messages.text("notALedger", path));
            }
            prepare(connection, path, options);
            return new SqliteFile(path, connection, ReadOnlyPlace.inPlace(path), true);
        } catch (SQLException | LedgerException | RuntimeException failure) {
            close(connection, failure);
            throw failure;
        }
    }

    /** Opens the ledger for work; makes none, out of an empty file neither. */
    public static SqliteFile openExisting(Path file, LedgerOptions options) throws LedgerException {
        return openInTurn(existing(file), options, false);
    }

    private static Path existing(Path file) throws LedgerMissingException {
        Path path = BenchFolder.file(file);
        if (!Files.exists(path)) {
            throw new LedgerMissingException(Messages.text("missing", path));
        }
        return path;
    }

    /** Opens the ledger for reading only; makes and changes nothing that a writer would see. */
    public static SqliteFile openReadOnly(Path file, LedgerOptions options) throws LedgerException {
        Path path = existing(file);
        if (!Files.isRegularFile(path)) {
            throw new LedgerFormatException(Messages.text("notALedger", path));
        }
        SideFiles.requireHarmless(path);
        try {
            return openReadOnly(path, ReadOnlyPlace.inPlace(path), options);
        } catch (SQLException failure) {
            if (!SqliteErrors.isPlaceRefused(failure)) {
                throw SqliteErrors.translate(failure, path);
            }
            return openWherePlaceRefuses(path, options);
        }
    }

    /** Opens the ledger for reading in a folder where SQLite can't put its own files. */
    public static SqliteFile openWherePlaceRefuses(Path path, LedgerOptions options) throws LedgerException {
        try {
            return openReadOnly(path, ReadOnlyPlace.refusing(path), options);
        } catch (SQLException failure) {
            throw SqliteErrors.translate(failure, path);
        } catch (IOException failure) {
            throw new LedgerException(Messages.text("failed", path, failure.getMessage()), failure);
        }
    }

    /** Opens the file in {@code place} and looks whether it is a ledger. */
    static SqliteFile openReadOnly(Path path, ReadOnlyPlace place, LedgerOptions options) throws SQLException, LedgerException {
        try {
            Connection connection = connect(place.uri(), true, options);
            try {
                if (identified(connection, path) == 0) {
                    throw new LedgerFormatException(Messages.text("notALedger", path));
                }
                return new SqliteFile(path, connection, place, false);
            } catch (SQLException | LedgerException | RuntimeException failure) {
                close(connection, failure);
                throw failure;
            }
        } catch (SQLException | LedgerException | RuntimeException failure) {
            place.close();
            throw failure;
        }
    }

    private static Connection connect(String uri, boolean readOnly, LedgerOptions options) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setOpenMode(SQLiteOpenMode.OPEN_URI);
        config.setReadOnly(readOnly);
        config.setBusyTimeout(Math.toIntExact(options.patience().toMillis()));
        Connection connection = config.createConnection("jdbc:sqlite:" + uri);
        try (Statement statement = connection.createStatement()) {
            // A file that nobody vouches for must not run functions out of its own schema.
            statement.execute("PRAGMA trusted_schema = OFF");
            statement.execute("PRAGMA cell_size_check = ON");
            // A window has a connection for each open test; what it passed over once need not stay in memory fifty times. In KiB.
            statement.execute("PRAGMA cache_size = -512");
            return connection;
        } catch (SQLException failure) {
            close(connection, failure);
            throw failure;
        }
    }

    private static void prepare(Connection connection, Path path, LedgerOptions options) throws SQLException, LedgerException {
        int version = identified(connection, path);
        try (Statement statement = connection.createStatement()) {
            // Readers and a writer at once; nothing acknowledged is lost when the power goes.
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
            statement.execute("PRAGMA foreign_keys = ON");
            statement.execute("PRAGMA recursive_triggers = ON");
            if (options.mostPages().isPresent()) {
                statement.execute("PRAGMA max_page_count = " + options.mostPages().getAsLong());
            }
        }
        if (version < Schema.NEWEST) {
            inTransaction(connection, "BEGIN IMMEDIATE", within -> {
                // Another process may have been faster while we waited for the lock.
                Schema.migrate(within, identify(within, path));
                return Boolean.TRUE;
            });
            syncFolder(path);
        }
        Set<String> differences = Schema.differences(connection);
        if (!differences.isEmpty()) {
            throw new LedgerDamagedException(Messages.text("safeguards", path, String.join(", ", differences)));
        }
        try (Statement statement = connection.createStatement()) {
            // SQLite opens a file without the right to write and tells only at the first write, in the midst of a test.
            statement.execute("INSERT INTO event SELECT * FROM event WHERE FALSE");
        }
    }

    private static void syncFolder(Path path) throws LedgerException {
        try {
            DurableFiles.syncFolder(path.getParent());
        } catch (IOException failure) {
            throw new LedgerException(Messages.text("failed", path, failure.getMessage()), failure);
        }
    }

    /** {@link #identify} on one view of the file: another process may be making the ledger at this moment. */
    private static int identified(Connection connection, Path path) throws SQLException, LedgerException {
        return inTransaction(connection, "BEGIN", within -> identify(within, path));
    }

    /** The file's format version, 0 when it is empty. */
    private static int identify(Connection connection, Path path) throws SQLException, LedgerException {
        int application = number(connection, "PRAGMA application_id");
        int version = number(connection, "PRAGMA user_version");
        if (application == 0 && version == 0 && number(connection, "SELECT count(*) FROM sqlite_master") == 0) {
            return 0;
        }
        if (application != Schema.APPLICATION || version < 1) {
            throw new LedgerFormatException(Messages.text("notALedger", path));
        }
        if (version > Schema.NEWEST) {
            throw new LedgerVersionException(Messages.text("newer", path, version, Schema.NEWEST));
        }
        requireReadable(connection, path);
        return version;
    }

    /** Whoever reads such a file would be misled by it, or never come to an end. */
    private static void requireReadable(Connection connection, Path path) throws SQLException, LedgerException {
        Set<String> madeUp = Schema.madeUp(connection);
        if (!madeUp.isEmpty()) {
            throw new LedgerDamagedException(Messages.text("madeUp", path, String.join(", ", madeUp)));
        }
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery("PRAGMA encoding")) {
            if (!"UTF-8".equals(row.getString(1))) {
                throw new LedgerDamagedException(Messages.text("encoded", path, row.getString(1)));
            }
        }
    }

    private static int number(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            return row.getInt(1);
        }
    }

    /** The ledger's own path, wherever it is read from. */
    public Path path() {
        return path;
    }

    @Override
    public synchronized <T> T write(SqlWork<T> work) throws LedgerException {
        if (!writable) {
            throw new LedgerReadOnlyException(Messages.text("openedReadOnly", path));
        }
        return translated("BEGIN IMMEDIATE", connection -> {
            T result = work.run(connection);
            // Some systems let a file be deleted, or another put in its place, that somebody writes to: what is written then is nowhere.
            if (!identity(path).equals(identity)) {
                throw new LedgerMissingException(Messages.text("gone", path));
            }
            return result;
        });
    }

    /** What tells a file from another at the same path, on systems where one can take the other's place while it is open. */
    private static Optional<Object> identity(Path path) {
        try {
            return Optional.ofNullable(Files.readAttributes(path, BasicFileAttributes.class).fileKey());
        } catch (IOException notThere) {
            return Optional.of("not there");
        }
    }

    @Override
    public synchronized <T> T read(SqlWork<T> work) throws LedgerException {
        return translated("BEGIN", work);
    }

    /** A second connection, for whoever is about to {@link #read} in two threads; closed before this is. */
    public SecondView secondView(LedgerOptions options) {
        try {
            Connection second = connect(place.uri(), true, options);
            try {
                return SecondView.over(path, second);
            } catch (SQLException refused) {
                close(second, refused);
                return SecondView.none(path);
            }
        } catch (SQLException refused) {
            return SecondView.none(path);
        }
    }

    /** Does {@code work} outside of a transaction, which some statements need. */
    synchronized <T> T unwrapped(SqlWork<T> work) throws LedgerException {
        try {
            return work.run(connection);
        } catch (SQLException failure) {
            throw SqliteErrors.translate(failure, path);
        }
    }

    private <T> T translated(String begin, SqlWork<T> work) throws LedgerException {
        try {
            return inTransaction(connection, begin, work);
        } catch (SQLException failure) {
            throw SqliteErrors.translate(failure, path);
        }
    }

    private static <T> T inTransaction(Connection connection, String begin, SqlWork<T> work) throws SQLException, LedgerException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(begin);
            try {
                T result = work.run(connection);
                statement.execute("COMMIT");
                return result;
            } catch (SQLException | LedgerException | RuntimeException failure) {
                rollBack(statement, failure);
                throw failure;
            }
        }
    }

    private static void rollBack(Statement statement, Exception failure) {
        try {
            statement.execute("ROLLBACK");
        } catch (SQLException alreadyRolledBack) {
            // SQLite itself rolls back after a full disk or an I/O error.
            failure.addSuppressed(alreadyRolledBack);
        }
    }

    private static void close(Connection connection, Exception failure) {
        try {
            connection.close();
        } catch (SQLException second) {
            failure.addSuppressed(second);
        }
    }

    @Override
    public synchronized void close() throws LedgerException {
        try {
            connection.close();
        } catch (SQLException failure) {
            throw SqliteErrors.translate(failure, path);
        } finally {
            place.close();
        }
    }
}
