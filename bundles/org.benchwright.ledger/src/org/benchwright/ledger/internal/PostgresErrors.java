package org.benchwright.ledger.internal;

import java.sql.SQLException;
import org.benchwright.ledger.LedgerBusyException;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFormatException;
import org.benchwright.ledger.LedgerFullException;
import org.benchwright.ledger.LedgerReadOnlyException;
import org.benchwright.ledger.LedgerUnreachableException;

/** PostgreSQL's states in the words and types of the ledger. */
final class PostgresErrors {

    private PostgresErrors() {
    }

    static LedgerException translate(SQLException error, String place) {
        String state = String.valueOf(error.getSQLState());
        return switch (state.length() < 2 ? state : state.substring(0, 2)) {
            case "08", "57" -> new LedgerUnreachableException(Messages.text("unreachable", place, plain(error)), error); // connection, shutdown
            case "53" -> state.equals("53300") ? new LedgerUnreachableException(Messages.text("unreachable", place, plain(error)), error)
                    : new LedgerFullException(Messages.text("sharedFull", place), error); // insufficient resources
            case "55", "40" -> new LedgerBusyException(Messages.text("busy", place), error); // not available, rolled back
            case "28" -> new LedgerUnreachableException(Messages.text("loginRefused", place), error); // not authorised
            case "25" -> new LedgerReadOnlyException(Messages.text("sharedReadOnly", place), error); // read-only
            case "XX" -> new LedgerDamagedException(Messages.text("damaged", place), error); // data corrupted
            case "42" -> state.equals("42501") ? new LedgerReadOnlyException(Messages.text("sharedReadOnly", place), error)
                    : new LedgerDamagedException(Messages.text("damaged", place), error);
            case "3D" -> new LedgerFormatException(Messages.text("notALedger", place), error); // no such database
            default -> new LedgerException(Messages.text("failed", place, plain(error)), error);
        };
    }

    /** The first line of what the server or the network says; the rest is for developers. */
    private static String plain(SQLException error) {
        return Messages.plain(error).lines().findFirst().orElse("").replaceFirst("^FATAL: |^ERROR: ", "").strip();
    }
}
