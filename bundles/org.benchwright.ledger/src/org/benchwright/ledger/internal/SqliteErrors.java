package org.benchwright.ledger.internal;

import java.nio.file.Path;
import java.sql.SQLException;
import org.benchwright.ledger.LedgerBusyException;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFormatException;
import org.benchwright.ledger.LedgerFullException;
import org.benchwright.ledger.LedgerReadOnlyException;

/** SQLite's result codes in the words and types of the ledger. */
public final class SqliteErrors {

    private static final int PRIMARY = 0xFF;

    private SqliteErrors() {
    }

    /** What {@code error} means to the user of {@code file}. */
    public static LedgerException translate(SQLException error, Path file) {
        return switch (error.getErrorCode() & PRIMARY) {
            case 5, 6 -> new LedgerBusyException(Messages.text("busy", file), error); // SQLITE_BUSY, SQLITE_LOCKED
            case 3, 8, 14, 23 -> new LedgerReadOnlyException(Messages.text("readOnly", file), error); // PERM, READONLY, CANTOPEN, AUTH
            case 13 -> new LedgerFullException(Messages.text("full", file), error); // SQLITE_FULL
            case 26 -> new LedgerFormatException(Messages.text("notALedger", file), error); // SQLITE_NOTADB
            case 1, 11 -> new LedgerDamagedException(Messages.text("damaged", file), error); // SQLITE_ERROR (no such table), CORRUPT
            default -> new LedgerException(Messages.text("failed", file, error.getMessage()), error);
        };
    }

    /** Whether SQLite could not open or prepare the file where it lies. */
    public static boolean isPlaceRefused(SQLException error) {
        int code = error.getErrorCode() & PRIMARY;
        return code == 8 || code == 14;
    }
}
