package org.benchwright.ledger.internal.verify;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.internal.Statements;
import org.benchwright.ledger.people.People;

/** Looks at the list of signers: each row is signed by its own key, or by that of a bench listed before it, which brought it. */
final class SignerCheck {

    private static final String QUERY = "SELECT " + Cell.columns("number", Cell.SHORT) + ", " + Cell.columns("fingerprint", Cell.SHORT)
            + ", " + Cell.columns("public_key", Cell.SHORT) + ", " + Cell.columns("first_seen", Cell.SHORT) + ", "
            + Cell.columns("signature", Cell.SHORT) + " FROM signer ORDER BY number";

    /** A hostile list must not cost a check of each with each. */
    private static final int MOST_BENCHES = 500;

    private final Connection connection;
    private final Optional<SignerKey> benchKey;
    private final People people;
    private final FaultList faults;
    private final Map<String, SignerKey> sound = new LinkedHashMap<>();
    private final Set<String> brought = new HashSet<>();

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
                .filter(decoded -> isOwnStatement(decoded, row, number) || isBrought(decoded, row, number));
        if (key.isEmpty()) {
            faults.add(FaultKind.SIGNER_CHANGED, "fault.signer", number);
            return;
        }
        if (benchKey.filter(own -> !own.equals(key.get())).isPresent() && people.key(key.get().fingerprint()).isEmpty()
                && !brought.contains(key.get().fingerprint().hex())) {
            faults.add(FaultKind.FOREIGN_KEY, "fault.signerForeign", key.get());
        }
        sound.put(key.get().fingerprint().hex(), key.get());
    }

    private static boolean isOwnStatement(SignerKey key, List<Cell> row, long number) {
        return row.get(3).instant().flatMap(seen -> row.get(4).blob()
                .filter(signature -> key.verifies(Statements.signer(number, key.fingerprint(), seen), signature))).isPresent();
    }

    /** In a bench's own ledger nobody but that bench brings anything; in a shared one, any bench that is listed. */
    private boolean isBrought(SignerKey key, List<Cell> row, long number) {
        Optional<Instant> seen = row.get(3).instant();
        Optional<byte[]> signature = row.get(4).blob();
        if (seen.isEmpty() || signature.isEmpty()) {
            return false;
        }
        boolean vouched = sound.values().stream().filter(bench -> benchKey.map(bench::equals).orElse(true))
                .filter(bench -> people.key(bench.fingerprint()).isEmpty()).limit(MOST_BENCHES)
                .anyMatch(bench -> bench.verifies(Statements.brought(number, key.fingerprint(), seen.get(), bench.fingerprint()), signature.get()));
        if (vouched) {
            brought.add(key.fingerprint().hex());
        }
        return vouched;
    }

    /** Fingerprints of the keys that were brought from another ledger. */
    Set<String> brought() {
        return brought;
    }

    /** The keys whose rows are in order, by fingerprint. */
    Map<String, SignerKey> sound() {
        return sound;
    }
}
