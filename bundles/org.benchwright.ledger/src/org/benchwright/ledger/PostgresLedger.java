package org.benchwright.ledger;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Properties;
import org.benchwright.ledger.internal.LedgerTables;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.PostgresCopy;
import org.benchwright.ledger.internal.PostgresDatabase;
import org.benchwright.ledger.internal.PostgresSchema;

/**
 * A ledger that several benches share, in a PostgreSQL database. Tables and safeguards are those of the embedded one; a bench's login may read
 * and add, and has no right to change or remove anything. Connections to other machines are encrypted and the server's certificate is looked
 * at, unless the address says otherwise.
 */
public final class PostgresLedger extends TableLedger {

    private final PostgresDatabase database;

    private PostgresLedger(PostgresDatabase database) {
        super(database, LedgerTables.within(database.place()));
        this.database = database;
    }

    /**
     * Opens the ledger.
     *
     * @param url      {@code jdbc:postgresql://host:port/database}
     * @param user     the bench's login
     * @param password its password
     * @throws LedgerFormatException  when the database holds no ledger
     * @throws LedgerVersionException when a newer release made it
     * @throws LedgerException        when it can't be reached
     */
    public static PostgresLedger open(String url, String user, String password) throws LedgerException {
        return new PostgresLedger(PostgresDatabase.open(url, login(url, user, password)));
    }

    /**
     * Makes the ledger's tables in an empty database, once, with the login of its owner.
     *
     * @param benchRole the login of benches, which must exist; it gets the right to read and to add
     * @throws LedgerException when it can't be done; nothing was made then
     */
    public static void install(String url, String owner, String password, String benchRole) throws LedgerException {
        try (Connection connection = PostgresDatabase.connect(url, login(url, owner, password))) {
            PostgresSchema.install(connection, benchRole);
            connection.commit();
        } catch (SQLException failure) {
            throw new LedgerException(Messages.text("failed", PostgresDatabase.place(url), failure.getMessage()), failure);
        }
    }

    /**
     * Brings a ledger that an older release made up to this one's format, with the login of its owner. Nothing that is in it changes.
     *
     * @throws LedgerFormatException when the database holds no ledger
     * @throws LedgerException       when it can't be done; nothing was changed then
     */
    public static void migrate(String url, String owner, String password) throws LedgerException {
        try (Connection connection = PostgresDatabase.connect(url, login(url, owner, password))) {
            if (PostgresSchema.version(connection) == 0) {
                throw new LedgerFormatException(Messages.text("notALedger", PostgresDatabase.place(url)));
            }
            PostgresSchema.migrate(connection);
            connection.commit();
        } catch (SQLException failure) {
            throw new LedgerException(Messages.text("failed", PostgresDatabase.place(url), failure.getMessage()), failure);
        }
    }

    /**
     * Copies everything, as it is, into a new embedded ledger: a backup, an archive, and what {@link LedgerVerifier} verifies.
     *
     * @param file must not be there
     * @throws LedgerDamagedException when a row can't be where it stands; the row is named
     */
    public void copyTo(Path file) throws LedgerException {
        if (Files.exists(file)) {
            throw new LedgerException(Messages.text("copyThere", file));
        }
        SqliteLedger.open(file).close();
        database.read(source -> {
            PostgresCopy.rows(source, file);
            return Boolean.TRUE;
        });
    }

    private static Properties login(String url, String user, String password) {
        Properties login = new Properties();
        login.setProperty("user", user);
        login.setProperty("password", password);
        boolean thisMachine = url.matches("jdbc:postgresql://(localhost|127\\.0\\.0\\.1|\\[::1\\])[:/].*");
        if (!thisMachine && !url.contains("sslmode=")) {
            login.setProperty("sslmode", "verify-full");
        }
        return login;
    }
}
