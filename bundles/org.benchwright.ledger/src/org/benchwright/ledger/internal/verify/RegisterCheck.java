package org.benchwright.ledger.internal.verify;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.people.People;

/**
 * Reads the register of people, of which the walk says later whether its events are as they were written.
 *
 * @param connection to the ledger
 * @param faults     where to put what is found
 */
record RegisterCheck(Connection connection, FaultList faults) {

    KnownRegister run() throws SQLException {
        List<LedgerEntry> entries = entries();
        People people = People.of(entries);
        for (People.Objection objection : people.objections()) {
            faults.add(Fault.of(TestId.PEOPLE, objection.sequence(), FaultKind.REGISTER_FALSE,
                    Messages.text("fault.event", TestId.PEOPLE, objection.sequence(), objection.words())));
        }
        return new KnownRegister(people, entries.stream().map(LedgerEntry::position).toList());
    }

    private List<LedgerEntry> entries() throws SQLException {
        try {
            return Chain.entries(connection, TestId.PEOPLE);
        } catch (PayloadException | RuntimeException unreadable) {
            // The walk names the row.
            faults.add(FaultKind.REGISTER_FALSE, "fault.register", Messages.plain(unreadable));
            return List.of();
        }
    }
}
