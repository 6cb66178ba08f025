package org.benchwright.ledger;

import java.nio.file.Path;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.AttachmentEraser;
import org.benchwright.ledger.internal.LedgerTables;
import org.benchwright.ledger.internal.SqliteFile;

/** The ledger of a bench: one SQLite file in a folder of its own, large attachments beside it. */
public final class SqliteLedger extends TableLedger {

    private final SqliteFile file;

    private SqliteLedger(SqliteFile file) {
        super(file, LedgerTables.of(file.path()));
        this.file = file;
    }

    /**
     * Takes the bytes of an attachment away that a signed event of this test withdrew; digest and size stay. Done again it does no harm.
     *
     * @throws WithdrawalMissingException if no event of the test withdrew it
     */
    public void erase(TestId test, Digest attachment) throws LedgerException {
        AttachmentEraser.erase(file, test, attachment);
    }

    /** Whether bytes of an attachment are here, in the ledger's file or beside it. */
    public boolean holdsBytes(Digest attachment) throws LedgerException {
        return AttachmentEraser.isLeft(file, attachment);
    }

    /**
     * Opens the ledger; makes it, and its folder, when there is none.
     *
     * @throws LedgerFormatException   when the file is something else
     * @throws LedgerVersionException  when a newer release wrote it
     * @throws LedgerReadOnlyException when file or folder can't be written to
     * @throws LedgerBusyException     when another program held it for too long
     * @throws LedgerFullException     when there is no room for it
     * @throws LedgerDamagedException  when its tables or safeguards are not as this program made them
     */
    public static SqliteLedger open(Path file) throws LedgerException {
        return open(file, LedgerOptions.standard());
    }

    /** As {@link #open(Path)}, with options. */
    public static SqliteLedger open(Path file, LedgerOptions options) throws LedgerException {
        return new SqliteLedger(SqliteFile.openOrCreate(file, options));
    }

    /**
     * As {@link #open(Path)}, but makes none, out of an empty file neither.
     *
     * @throws LedgerMissingException when there is no file
     */
    public static SqliteLedger openExisting(Path file) throws LedgerException {
        return new SqliteLedger(SqliteFile.openExisting(file, LedgerOptions.standard()));
    }

    /**
     * Opens the ledger for reading; works on a read-only file or folder too, and makes nothing where there is nothing.
     *
     * @throws LedgerMissingException when there is no file
     * @throws LedgerFormatException  when the file is something else
     * @throws LedgerVersionException when a newer release wrote it
     */
    public static SqliteLedger openReadOnly(Path file) throws LedgerException {
        return new SqliteLedger(SqliteFile.openReadOnly(file, LedgerOptions.standard()));
    }
}
