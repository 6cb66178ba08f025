package org.benchwright.ledger.internal;

import java.sql.SQLException;
import org.benchwright.ledger.LedgerBusyException;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFullException;
import org.benchwright.ledger.LedgerReadOnlyException;

/** PostgreSQL's states in the words and types of the ledger. */
final class PostgresErrors {

    private PostgresErrors() {
    }

    static LedgerException translate(SQLException error, String place) {
        String state = String.valueOf(error.getSQLState());
        return switch (state.length() < 2 ? state : state.substring(0, 2)) {
            case "53" -> new LedgerFullException(Messages.text("full", place), error); // insufficient resources
            case "55", "40" -> new LedgerBusyException(Messages.text("busy", place), error); // not available, rolled back
            case "25", "28" -> new LedgerReadOnlyException(Messages.text("readOnly", place), error); // read-only, not authorised
            case "XX" -> new LedgerDamagedException(Messages.text("damaged", place), error); // data corrupted
            case "42" -> state.equals("42501") ? new LedgerReadOnlyException(Messages.text("readOnly", place), error)
                    : new LedgerDamagedException(Messages.text("damaged", place), error);
            default -> new LedgerException(Messages.text("failed", place, error.getMessage()), error);
        };
    }
}
