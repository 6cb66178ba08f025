package org.benchwright.ledger.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collection;

import org.benchwright.core.Digest;
import org.benchwright.ledger.DurableFiles;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.WithdrawalMissingException;

/**
 * Takes the bytes of withdrawn attachments away. It is the one place where a row is changed: the safeguard against changes is put aside and back
 * within one transaction.
 */
public final class AttachmentEraser {

    private static final String SAFEGUARD = "document_kept";

    private AttachmentEraser() {
    }

    /** In a bench's own ledger: out of the database, its log and the folder beside it. */
    public static void erase(SqliteFile file, TestId test, Digest attachment) throws LedgerException {
        LedgerTables tables = LedgerTables.of(file.path());
        file.write(connection -> {
            if (!tables.withdrawn(connection, test, attachment)) {
                throw new WithdrawalMissingException(Messages.text("withdrawalMissing", test, attachment));
            }
            overwriteAnew(connection, tables, attachment);
            return Boolean.TRUE;
        });
        Path beside = Attachments.beside(file.path()).file(attachment);
        try {
            if (Files.deleteIfExists(beside)) {
                DurableFiles.syncFolder(beside.getParent());
            }
        } catch (IOException failure) {
            throw BackupFile.translated(failure, beside);
        }
        // What was overwritten still stands in the log until that is emptied.
        file.unwrapped(connection -> {
            try (Statement statement = connection.createStatement()) {
                return statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
            }
        });
    }

    /** Whether anything is left to erase; a file beside counts, whatever the database says of it. */
    public static boolean isLeft(SqliteFile file, Digest attachment) throws LedgerException {
        return Files.exists(Attachments.beside(file.path()).file(attachment))
                || file.read(connection -> LedgerTables.of(file.path()).holdsWithin(connection, attachment));
    }

    private static void overwriteAnew(Connection connection, LedgerTables tables, Digest attachment) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            String safeguard;
            try (ResultSet row = statement.executeQuery("SELECT sql FROM sqlite_master WHERE type = 'trigger' AND name = '" + SAFEGUARD + "'")) {
                safeguard = row.getString(1);
            }
            // Pages that become free are overwritten with zeros.
            statement.execute("PRAGMA secure_delete = ON");
            statement.execute("DROP TRIGGER " + SAFEGUARD);
            tables.withdraw(connection, attachment);
            statement.execute(safeguard);
        }
    }

    /** In a shared ledger, by its owner, whose connection commits; how many had bytes left. */
    public static int erase(Connection owner, Collection<Digest> attachments) throws SQLException {
        LedgerTables tables = LedgerTables.within("");
        int erased = 0;
        try (Statement statement = owner.createStatement()) {
            statement.execute("ALTER TABLE document DISABLE TRIGGER " + SAFEGUARD);
            for (Digest attachment : attachments) {
                erased += tables.withdraw(owner, attachment);
            }
            statement.execute("ALTER TABLE document ENABLE TRIGGER " + SAFEGUARD);
        }
        return erased;
    }
}
