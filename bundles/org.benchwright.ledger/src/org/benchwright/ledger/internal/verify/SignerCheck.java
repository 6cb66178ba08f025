package org.benchwright.ledger.internal.verify;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.internal.Statements;
import org.benchwright.ledger.people.People;

/** Looks at the list of signers: each row is signed by its own key. */
final class SignerCheck {

    private static final String QUERY = "SELECT " + Cell.columns("number", Cell.SHORT) + ", " + Cell.columns("fingerprint", Cell.SHORT)
            + ", " + Cell.columns("public_key", Cell.SHORT) + ", " + Cell.columns("first_seen", Cell.SHORT) + ", "
            + Cell.columns("signature", Cell.SHORT) + " FROM signer ORDER BY number";

    private final Connection connection;
    private final Optional<SignerKey> benchKey;
    private final People people;
    private final FaultList faults;
    private final Map<String, SignerKey> sound = new LinkedHashMap<>();

    SignerCheck(Connection connection, Optional<SignerKey> benchKey, People people, FaultList faults) {
        this.connection = connection;
        this.benchKey = benchKey;
        this.people = people;
        this.faults = faults;
    }

    void run() throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(QUERY)) {
            for (long number = 1; rows.next(); number++) {
                inspect(Cell.read(rows, 5), number);
            }
        }
    }

    private void inspect(List<Cell> row, long number) {
        Optional<SignerKey> key = row.get(2).blob().flatMap(SignerKey::decode)
                .filter(decoded -> row.get(0).isWhole(number) && row.get(1).isBlob(decoded.fingerprint().bytes()))
                .filter(decoded -> isOwnStatement(decoded, row, number));
        if (key.isEmpty()) {
            faults.add(FaultKind.SIGNER_CHANGED, "fault.signer", number);
            return;
        }
        if (benchKey.filter(own -> !own.equals(key.get())).isPresent() && people.key(key.get().fingerprint()).isEmpty()) {
            faults.add(FaultKind.FOREIGN_KEY, "fault.signerForeign", key.get());
        }
        sound.put(key.get().fingerprint().hex(), key.get());
    }

    private static boolean isOwnStatement(SignerKey key, List<Cell> row, long number) {
        return row.get(3).instant().flatMap(seen -> row.get(4).blob()
                .filter(signature -> key.verifies(Statements.signer(number, key.fingerprint(), seen), signature))).isPresent();
    }

    /** The keys whose rows are in order, by fingerprint. */
    Map<String, SignerKey> sound() {
        return sound;
    }
}
