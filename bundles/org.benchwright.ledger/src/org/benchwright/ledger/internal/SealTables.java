package org.benchwright.ledger.internal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchwright.core.Digest;
import org.benchwright.ledger.Checkpoint;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.KnownSigner;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.SignerKey;

/**
 * The tables of signers and of checkpoints.
 *
 * @param place where the ledger is, for messages
 */
record SealTables(String place) {

    private static final String NEXT_SIGNER = "SELECT coalesce(max(number), 0) + 1 FROM signer";

    /** Lists the signer's key unless it is listed; the row is signed by the key itself. */
    void introduce(Connection connection, Signer signer, Instant instant) throws SQLException {
        Digest fingerprint = signer.key().fingerprint();
        if (!lists(connection, fingerprint)) {
            long number = next(connection, NEXT_SIGNER);
            insert(connection, number, new KnownSigner(signer.key(), instant), signer.sign(Statements.signer(number, fingerprint, instant)));
        }
    }

    /** Lists a key that signed in another ledger, unless it is listed; the row is signed by the bench that brings it. */
    void bring(Connection connection, KnownSigner signer, Signer bench) throws SQLException {
        Digest fingerprint = signer.key().fingerprint();
        if (!lists(connection, fingerprint)) {
            long number = next(connection, NEXT_SIGNER);
            insert(connection, number, signer,
                    bench.sign(Statements.brought(number, fingerprint, signer.firstSeen(), bench.key().fingerprint())));
        }
    }

    private static boolean lists(Connection connection, Digest fingerprint) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT 1 FROM signer WHERE fingerprint = ?")) {
            statement.setBytes(1, fingerprint.bytes());
            try (ResultSet row = statement.executeQuery()) {
                return row.next();
            }
        }
    }

    private static void insert(Connection connection, long number, KnownSigner signer, byte[] signature) throws SQLException {
        String sql = "INSERT INTO signer (number, fingerprint, public_key, first_seen, signature) VALUES (?, ?, ?, ?, ?)";
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setLong(1, number);
            statement.setBytes(2, signer.key().fingerprint().bytes());
            statement.setBytes(3, signer.key().encoded());
            statement.setString(4, signer.firstSeen().toString());
            statement.setBytes(5, signature);
            statement.executeUpdate();
        }
    }

    /** Adds a checkpoint of the ledger as it is now. */
    void checkpoint(Connection connection, Signer signer, Instant instant, CompactRange tree, DocumentTable.Head documents)
            throws SQLException {
        Digest fingerprint = signer.key().fingerprint();
        long number = next(connection, "SELECT coalesce(max(number), 0) + 1 FROM checkpoint");
        byte[] statementBytes = Statements.checkpoint(number, tree.size(), tree.root(), documents.number(), documents.link(), instant,
                fingerprint);
        String sql = "INSERT INTO checkpoint (number, size, root, documents, documents_link, instant, signer, signature) "
                + "VALUES (?, ?, ?, ?, ?, ?, ?, ?)";
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setLong(1, number);
            statement.setLong(2, tree.size());
            statement.setBytes(3, tree.root().bytes());
            statement.setLong(4, documents.number());
            statement.setBytes(5, documents.link().bytes());
            statement.setString(6, instant.toString());
            statement.setBytes(7, fingerprint.bytes());
            statement.setBytes(8, signer.sign(statementBytes));
            statement.executeUpdate();
        }
    }

    private static long next(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }

    List<KnownSigner> signers(Connection connection) throws SQLException, LedgerException {
        List<KnownSigner> signers = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT public_key, first_seen FROM signer ORDER BY number")) {
            while (rows.next()) {
                SignerKey key = SignerKey.decode(bytes(rows, 1)).orElseThrow(this::damaged);
                signers.add(new KnownSigner(key, instant(rows.getString(2))));
            }
        }
        return List.copyOf(signers);
    }

    List<Checkpoint> checkpoints(Connection connection) throws SQLException, LedgerException {
        List<Checkpoint> checkpoints = new ArrayList<>();
        String sql = "SELECT number, size, root, documents, documents_link, instant, signer, signature FROM checkpoint ORDER BY number";
        try (Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                checkpoints.add(new Checkpoint(rows.getLong(1), rows.getLong(2), digest(rows, 3), rows.getLong(4), digest(rows, 5),
                        instant(rows.getString(6)), digest(rows, 7), bytes(rows, 8)));
            }
        }
        return List.copyOf(checkpoints);
    }

    private byte[] bytes(ResultSet row, int column) throws SQLException, LedgerException {
        byte[] stored = row.getBytes(column);
        if (stored == null) {
            throw damaged();
        }
        return stored;
    }

    private Digest digest(ResultSet row, int column) throws SQLException, LedgerException {
        return StoredDigest.of(row.getBytes(column), place);
    }

    private Instant instant(String stored) throws LedgerException {
        try {
            return Instant.parse(String.valueOf(stored));
        } catch (DateTimeException malformed) {
            throw new LedgerDamagedException(Messages.text("damaged", place), malformed);
        }
    }

    private LedgerDamagedException damaged() {
        return new LedgerDamagedException(Messages.text("damaged", place));
    }
}
