package org.benchwright.ledger.internal.verify;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchwright.core.Digest;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.internal.Statements;

/** Goes through the checkpoints beside the walk through the events, and compares each with the tree at its size. */
final class CheckpointCheck implements AutoCloseable {

    private static final String QUERY = "SELECT " + Cell.columns("number", Cell.SHORT) + ", " + Cell.columns("size", Cell.SHORT) + ", "
            + Cell.columns("root", Cell.SHORT) + ", " + Cell.columns("documents", Cell.SHORT) + ", "
            + Cell.columns("documents_link", Cell.SHORT) + ", " + Cell.columns("instant", Cell.SHORT) + ", "
            + Cell.columns("signer", Cell.SHORT) + ", " + Cell.columns("signature", Cell.SHORT) + " FROM checkpoint ORDER BY number";

    private final SignatureInspector signatures;
    private final DocumentCheck documents;
    private final FaultList faults;
    private final Statement statement;
    private final ResultSet rows;
    private long number;
    private Optional<Row> pending = Optional.empty();

    private record Row(long size, Digest root) {
    }

    CheckpointCheck(Connection connection, SignatureInspector signatures, DocumentCheck documents, FaultList faults) throws SQLException {
        this.signatures = signatures;
        this.documents = documents;
        this.faults = faults;
        this.statement = connection.createStatement();
        this.rows = statement.executeQuery(QUERY);
        advance();
    }

    /**
     * Compares the checkpoints of the size {@code position}.
     *
     * @param tree the tree at this size, unless it can't be known
     * @return whether there was one
     */
    boolean meets(long position, Optional<CompactRange> tree) throws SQLException {
        boolean met = false;
        while (pending.isPresent() && pending.get().size() <= position) {
            boolean inOrder = pending.get().size() == position;
            boolean sameRoot = tree.isEmpty() || tree.get().root().equals(pending.get().root());
            if (!inOrder || !sameRoot) {
                faults.add(FaultKind.CHECKPOINT_FALSE, "fault.checkpointRoot", number, position);
            }
            met |= inOrder;
            advance();
        }
        return met;
    }

    /** What is left at the end tells of events that are not there. */
    void finish(long events) throws SQLException {
        while (pending.isPresent()) {
            faults.add(FaultKind.TAIL_CUT, "fault.tail", number, pending.get().size(), events);
            advance();
        }
    }

    private void advance() throws SQLException {
        pending = Optional.empty();
        while (pending.isEmpty() && rows.next()) {
            number++;
            List<Cell> row = Cell.read(rows, 8);
            if (!isSigned(row)) {
                faults.add(FaultKind.CHECKPOINT_FALSE, "fault.checkpoint", number);
            }
            if (row.get(6).digest().flatMap(signatures.people()::key).isPresent()) {
                // People sign what they did. That the ledger stood so is for the bench to say.
                faults.add(FaultKind.FOREIGN_KEY, "fault.checkpointPerson", number);
            }
            if (signatures.benchKey().isPresent() && row.get(6).digest().filter(key -> signatures.brought().contains(key.hex())).isPresent()) {
                faults.add(FaultKind.FOREIGN_KEY, "fault.checkpointBrought", number);
            }
            OptionalLong size = row.get(1).whole();
            if (size.isPresent() && row.get(2).digest().isPresent()) {
                pending = Optional.of(new Row(size.getAsLong(), row.get(2).digest().get()));
            }
        }
    }

    private boolean isSigned(List<Cell> row) throws SQLException {
        OptionalLong size = row.get(1).whole();
        OptionalLong documentCount = row.get(3).whole();
        Optional<Digest> root = row.get(2).digest();
        Optional<Digest> documentsLink = row.get(4).digest();
        Optional<Instant> instant = row.get(5).instant();
        Optional<Digest> fingerprint = row.get(6).digest();
        Optional<byte[]> signature = row.get(7).blob();
        if (size.isEmpty() || documentCount.isEmpty() || root.isEmpty() || documentsLink.isEmpty() || instant.isEmpty()
                || fingerprint.isEmpty() || signature.isEmpty() || !row.get(0).isWhole(number)) {
            return false;
        }
        Optional<SignerKey> key = Optional.ofNullable(signatures.signers().get(fingerprint.get().hex()));
        byte[] said = Statements.checkpoint(number, size.getAsLong(), root.get(), documentCount.getAsLong(), documentsLink.get(),
                instant.get(), fingerprint.get());
        return key.filter(known -> known.verifies(said, signature.get())).isPresent()
                && documents.link(documentCount.getAsLong()).equals(documentsLink);
    }

    @Override
    public void close() throws SQLException {
        statement.close();
    }
}
