package org.benchwright.ledger.internal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchwright.core.Digest;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;

/**
 * The table of kept documents, and the attachments beside it.
 *
 * @param place       where the ledger is, for messages
 * @param attachments where the large ones lie; empty where all lie in the table
 */
public record DocumentTable(String place, Optional<Attachments> attachments) {

    /** Largest document, so that it can be held in memory. */
    static final int LARGEST = 64 << 20;

    private static final int LARGEST_WITHIN = 256 << 10;
    private static final byte[] WITHDRAWN = "withdrawn".getBytes(StandardCharsets.US_ASCII);

    /** How many documents there are, and the link of the last. */
    record Head(long number, Digest link) {
    }

    Head head(Connection connection) throws SQLException, LedgerException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT number, link FROM document ORDER BY number DESC LIMIT 1")) {
            return row.next() ? new Head(row.getLong(1), StoredDigest.of(row.getBytes(2), place)) : new Head(0, DocumentLink.first());
        }
    }

    /** Whether a document of this kind and size lies as a file beside the ledger. */
    boolean isBeside(DocumentKind kind, int size) {
        return attachments.isPresent() && kind == DocumentKind.ATTACHMENT && size > LARGEST_WITHIN;
    }

    boolean holds(Connection connection, Digest digest) throws SQLException {
        return isThere(connection, digest, "");
    }

    /** Looks without reading the bytes, of which there may be many. */
    private static boolean isThere(Connection connection, Digest digest, String and, byte[]... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT 1 FROM document WHERE digest = ? " + and)) {
            statement.setBytes(1, digest.bytes());
            for (int i = 0; i < values.length; i++) {
                statement.setBytes(i + 2, values[i]);
            }
            try (ResultSet row = statement.executeQuery()) {
                return row.next();
            }
        }
    }

    /** Whether the document's bytes were taken out of its row. */
    boolean isErased(Connection connection, Digest digest) throws SQLException {
        return isWithdrawn(WITHDRAWN, digest) && isThere(connection, digest, "AND content = ?", WITHDRAWN);
    }

    /** Whether bytes of a document stand in its row. */
    boolean holdsWithin(Connection connection, Digest digest) throws SQLException {
        return isThere(connection, digest, "AND length(content) > 0") && !isErased(connection, digest);
    }

    /** Adds the row, unless there is one; a file beside must have been written before. */
    void insert(Connection connection, Digest digest, byte[] content, DocumentKind kind) throws SQLException, LedgerException {
        if (holds(connection, digest)) {
            return;
        }
        insert(connection, digest, content.length, kind, isBeside(kind, content.length) ? null : content);
    }

    private void insert(Connection connection, Digest digest, long size, DocumentKind kind, byte[] within) throws SQLException, LedgerException {
        Head head = head(connection);
        String sql = "INSERT INTO document (number, digest, kind, size, content, link) VALUES (?, ?, ?, ?, ?, ?)";
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setLong(1, head.number() + 1);
            statement.setBytes(2, digest.bytes());
            statement.setString(3, kind.word());
            statement.setLong(4, size);
            statement.setBytes(5, within);
            statement.setBytes(6, DocumentLink.next(head.link(), digest, kind.word(), size).bytes());
            statement.executeUpdate();
        }
    }

    /** Whether that stands in the place of a document's bytes which were withdrawn; only an event tells whether that was right. */
    public static boolean isWithdrawn(byte[] content, Digest digest) {
        return Arrays.equals(content, WITHDRAWN) && !Digest.of(content).equals(digest);
    }

    /** Adds the row of an attachment that was withdrawn elsewhere, unless there is one. */
    void insertWithdrawn(Connection connection, Digest digest, long size) throws SQLException, LedgerException {
        if (!holds(connection, digest)) {
            insert(connection, digest, size, DocumentKind.ATTACHMENT, WITHDRAWN);
        }
    }

    /** Takes the bytes out of the row of an attachment; the safeguard against changes must be out of the way. */
    int withdraw(Connection connection, Digest digest) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("UPDATE document SET content = ? WHERE digest = ? AND kind = ?")) {
            statement.setBytes(1, WITHDRAWN);
            statement.setBytes(2, digest.bytes());
            statement.setString(3, DocumentKind.ATTACHMENT.word());
            return statement.executeUpdate();
        }
    }

    /** How many bytes a document has, or had. */
    OptionalLong size(Connection connection, Digest digest) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT size FROM document WHERE digest = ?")) {
            statement.setBytes(1, digest.bytes());
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? OptionalLong.of(row.getLong(1)) : OptionalLong.empty();
            }
        }
    }

    Optional<DocumentKind> kind(Connection connection, Digest digest) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT kind FROM document WHERE digest = ?")) {
            statement.setBytes(1, digest.bytes());
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? DocumentKind.find(String.valueOf(row.getString(1))) : Optional.empty();
            }
        }
    }

    Optional<byte[]> content(Connection connection, Digest digest) throws SQLException, LedgerException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT content, size FROM document WHERE digest = ?")) {
            statement.setBytes(1, digest.bytes());
            try (ResultSet row = statement.executeQuery()) {
                if (!row.next()) {
                    return Optional.empty();
                }
                byte[] within = row.getBytes(1);
                // An empty blob and a blob that isn't there both arrive as null in some versions of the driver; the size tells.
                if (within != null && isWithdrawn(within, digest)) {
                    return Optional.empty();
                }
                byte[] content = within == null ? (row.getLong(2) == 0 ? new byte[0] : beside(digest)) : within;
                if (!Digest.of(content).equals(digest)) {
                    throw new LedgerDamagedException(Messages.text("damagedDocument", place, digest));
                }
                return Optional.of(content);
            }
        }
    }

    private byte[] beside(Digest digest) throws LedgerException {
        try {
            Attachments beside = attachments.orElseThrow(() -> new IOException("no folder"));
            if (!beside.has(digest)) {
                throw new LedgerDamagedException(Messages.text("damagedDocument", place, digest));
            }
            return Files.readAllBytes(beside.file(digest));
        } catch (IOException unreadable) {
            throw new LedgerDamagedException(Messages.text("damagedDocument", place, digest), unreadable);
        }
    }
}
