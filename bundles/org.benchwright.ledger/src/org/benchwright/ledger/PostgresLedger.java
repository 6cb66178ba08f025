package org.benchwright.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collection;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.AttachmentEraser;
import org.benchwright.ledger.internal.LedgerTables;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.PostgresCopy;
import org.benchwright.ledger.internal.PostgresDatabase;
import org.benchwright.ledger.internal.PostgresSchema;
import org.benchwright.ledger.internal.WholeFile;

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
     * Opens the ledger at {@code place} with a bench's login.
     *
     * @throws LedgerFormatException      when the database holds no ledger
     * @throws LedgerVersionException     when a release of another format made it
     * @throws LedgerUnreachableException when it can't be reached
     */
    public static PostgresLedger open(SharedPlace place) throws LedgerException {
        return new PostgresLedger(PostgresDatabase.open(place.url(), place.login()));
    }

    /**
     * Makes the ledger's tables in an empty database, once, with the login of its owner.
     *
     * @param benchRole the login of benches, which must exist; it gets the right to read and to add
     * @throws LedgerException when it can't be done; nothing was made then
     */
    public static void install(SharedPlace place, String benchRole) throws LedgerException {
        try (Connection connection = PostgresDatabase.connect(place.url(), place.login())) {
            if (PostgresSchema.version(connection) != 0) {
                throw new LedgerException(Messages.text("installedBefore", PostgresDatabase.place(place.url())));
            }
            PostgresSchema.install(connection, benchRole);
            connection.commit();
        } catch (SQLException failure) {
            throw PostgresDatabase.translated(failure, place.url());
        }
    }

    /**
     * Brings a ledger that an older release made up to this one's format, with the login of its owner. Nothing that is in it changes.
     *
     * @throws LedgerFormatException when the database holds no ledger
     * @throws LedgerException       when it can't be done; nothing was changed then
     */
    public static void migrate(SharedPlace place) throws LedgerException {
        try (Connection connection = PostgresDatabase.connect(place.url(), place.login())) {
            if (PostgresSchema.version(connection) == 0) {
                throw new LedgerFormatException(Messages.text("notALedger", PostgresDatabase.place(place.url())));
            }
            PostgresSchema.migrate(connection);
            connection.commit();
        } catch (SQLException failure) {
            throw PostgresDatabase.translated(failure, place.url());
        }
    }

    /**
     * Takes the bytes of attachments away that were withdrawn, with the login of the ledger's owner: a bench's has no right to. Whether they were
     * rightly withdrawn is for the {@link LedgerVerifier} to say before.
     *
     * @return how many of them there were
     */
    public static int erase(SharedPlace place, Collection<Digest> attachments) throws LedgerException {
        try (Connection connection = PostgresDatabase.connect(place.url(), place.login())) {
            int erased = AttachmentEraser.erase(connection, attachments);
            connection.commit();
            return erased;
        } catch (SQLException failure) {
            throw PostgresDatabase.translated(failure, place.url());
        }
    }

    /**
     * Copies everything, as it is, into a new embedded ledger, which appears whole or not at all: a backup, an archive, and what
     * {@link LedgerVerifier} verifies.
     *
     * @param file must not be there
     * @throws LedgerPlaceTakenException when something is there
     * @throws LedgerDamagedException    when a row can't be where it stands; the row is named
     */
    public void copyTo(Path file) throws LedgerException {
        WholeFile.write(file, part -> {
            SqliteLedger.open(part).close();
            return database.read(source -> {
                PostgresCopy.rows(source, part);
                return Boolean.TRUE;
            });
        });
    }
}
