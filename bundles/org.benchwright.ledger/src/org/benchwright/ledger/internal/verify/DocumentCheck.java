package org.benchwright.ledger.internal.verify;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.internal.Attachments;
import org.benchwright.ledger.internal.DocumentLink;
import org.benchwright.ledger.internal.DocumentTable;
import org.benchwright.ledger.internal.Messages;

/** Looks at the kept documents: each is compared with its digest, and their list is a chain. */
final class DocumentCheck {

    private static final long LARGEST = 64L << 20;
    private static final int MOST_MISSING = 100_000;

    private static final String QUERY = "SELECT " + Cell.columns("number", Cell.SHORT) + ", " + Cell.columns("digest", Cell.SHORT) + ", "
            + Cell.columns("kind", Cell.SHORT) + ", " + Cell.columns("size", Cell.SHORT) + ", " + Cell.columns("link", Cell.SHORT) + ", "
            + Cell.columns("content", LARGEST) + " FROM document ORDER BY number";

    private final Connection connection;
    private final Attachments attachments;
    private final FaultList faults;
    private final Map<Digest, String> missing = new LinkedHashMap<>();
    private long count;

    DocumentCheck(Connection connection, Attachments attachments, FaultList faults) {
        this.connection = connection;
        this.attachments = attachments;
        this.faults = faults;
    }

    void run(Cancellation cancellation) throws SQLException {
        Digest link = DocumentLink.first();
        try (Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(QUERY)) {
            while (!cancellation.requested() && rows.next()) {
                count++;
                link = inspect(Cell.read(rows, 6), link);
            }
        }
    }

    private Digest inspect(List<Cell> row, Digest previous) {
        Optional<Digest> digest = row.get(1).digest();
        Optional<Digest> link = row.get(4).digest();
        boolean inOrder = row.get(0).isWhole(count) && digest.isPresent() && row.get(3).whole().isPresent()
                && link.equals(row.get(2).text()
                        .map(kind -> DocumentLink.next(previous, digest.get(), kind, row.get(3).whole().getAsLong())));
        if (!inOrder) {
            faults.add(FaultKind.DOCUMENT_CHANGED, "fault.documentRow", count);
        }
        digest.ifPresent(named -> content(named, row.get(3), row.get(5)));
        return link.orElse(previous);
    }

    private void content(Digest digest, Cell size, Cell content) {
        if (content.isNothing()) {
            beside(digest, size);
        } else if (content.type().equals("blob") && DocumentTable.isWithdrawn(content.bytes(), digest)) {
            lacks(digest, Messages.text("fault.documentErased", digest));
        } else if (!content.type().equals("blob") || !Digest.of(content.bytes()).equals(digest) || !size.isWhole(content.bytes().length)) {
            faults.add(FaultKind.DOCUMENT_CHANGED, "fault.document", digest);
        }
    }

    private void beside(Digest digest, Cell size) {
        Path file = attachments.file(digest);
        if (!Files.isRegularFile(file)) {
            lacks(digest, Messages.text("fault.documentFile", digest, file));
            return;
        }
        try (InputStream content = new BufferedInputStream(Files.newInputStream(file))) {
            // The size first: a file can be said to be so large that nobody sees the end of reading it.
            if (!size.isWhole(Files.size(file)) || !Digest.of(content).equals(digest)) {
                faults.add(FaultKind.DOCUMENT_CHANGED, "fault.document", digest);
            }
        } catch (IOException unreadable) {
            faults.add(FaultKind.DOCUMENT_MISSING, "fault.documentFile", digest, file);
        }
    }

    /** A hostile file must not fill the memory with them. */
    private void lacks(Digest digest, String words) {
        if (missing.size() < MOST_MISSING) {
            missing.put(digest, words);
        } else {
            faults.add(Fault.ofLedger(FaultKind.DOCUMENT_MISSING, words));
        }
    }

    /** Documents whose bytes are not there, with what to say of it where nobody withdrew them. */
    Map<Digest, String> missing() {
        return missing;
    }

    /** Whether nothing is left of a document's bytes. */
    boolean gone(Digest digest) {
        return missing.containsKey(digest) && !Files.exists(attachments.file(digest));
    }

    long count() {
        return count;
    }

    /** Whether a document with that digest is listed. */
    boolean lists(Digest digest) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT 1 FROM document WHERE digest = ?")) {
            statement.setBytes(1, digest.bytes());
            try (ResultSet row = statement.executeQuery()) {
                return row.next();
            }
        }
    }

    /** The link of document {@code number}; of number 0, what stands before the first. */
    Optional<Digest> link(long number) throws SQLException {
        if (number == 0) {
            return Optional.of(DocumentLink.first());
        }
        String query = "SELECT " + Cell.columns("link", Cell.SHORT) + " FROM document WHERE number = ?";
        try (PreparedStatement statement = connection.prepareStatement(query)) {
            statement.setLong(1, number);
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? Cell.read(row, 1).get(0).digest() : Optional.empty();
            }
        }
    }
}
