package org.benchwright.ledger.internal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchwright.core.Digest;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.MerkleTree;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.TestId;

/**
 * The table of events. What it says of an event comes from the canonical bytes; the columns beside them are for queries.
 *
 * @param place   where the ledger is, for messages
 * @param holding how this database says that the canonical bytes hold other bytes
 * @param kept    the statements of an append
 */
record EventTable(String place, String holding, KeptStatements kept) {

    static final String HOLDING_IN_SQLITE = "instr(canonical, ?) > 0";
    static final String HOLDING_IN_POSTGRES = "position(? in canonical) > 0";

    private static final String HEADS = "SELECT event.test_id, event.sequence, event.link FROM (SELECT test_id, max(sequence) AS last FROM event "
            + "WHERE %s GROUP BY test_id) AS head JOIN event ON event.test_id = head.test_id AND event.sequence = head.last";

    private static final String ENTRY = "SELECT position, link, canonical FROM event ";

    private static final String OPENING = ENTRY + "WHERE sequence = 1 AND test_id LIKE 'T-%' ";

    /** How far a test has come: number and link of its last event, and whether it is sealed. */
    record Head(long sequence, Link link, boolean sealed) {
    }

    Head head(Connection connection, TestId test) throws SQLException, LedgerException {
        String sql = "SELECT sequence, link, EXISTS (SELECT 1 FROM event WHERE test_id = ? AND kind = 'sealed') "
                + "FROM event WHERE test_id = ? ORDER BY sequence DESC LIMIT 1";
        return kept.use(connection, sql, statement -> {
            statement.setString(1, test.value());
            statement.setString(2, test.value());
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? new Head(row.getLong(1), new Link(digest(row.getBytes(2))), row.getBoolean(3))
                        : new Head(0, Link.before(test), false);
            }
        });
    }

    /** The link of one event, if it is there. */
    Optional<Link> link(Connection connection, TestId test, long sequence) throws SQLException, LedgerException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT link FROM event WHERE test_id = ? AND sequence = ?")) {
            statement.setString(1, test.value());
            statement.setLong(2, sequence);
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? Optional.of(new Link(digest(row.getBytes(1)))) : Optional.empty();
            }
        }
    }

    /** How far some tests have come; those without an event are left out. Whether they are sealed is not told. */
    Map<TestId, Head> heads(Connection connection, Collection<TestId> tests) throws SQLException, LedgerException {
        if (tests.isEmpty()) {
            return Map.of();
        }
        String places = String.join(", ", Collections.nCopies(tests.size(), "?"));
        try (PreparedStatement statement = connection.prepareStatement(HEADS.formatted("test_id IN (" + places + ")"))) {
            int place = 1;
            for (TestId test : tests) {
                statement.setString(place++, test.value());
            }
            return heads(statement);
        }
    }

    /** How far all tests have come. */
    Map<TestId, Head> heads(Connection connection) throws SQLException, LedgerException {
        try (PreparedStatement statement = connection.prepareStatement(HEADS.formatted("test_id LIKE 'T-%'"))) {
            return heads(statement);
        }
    }

    private Map<TestId, Head> heads(PreparedStatement statement) throws SQLException, LedgerException {
        Map<TestId, Head> heads = new LinkedHashMap<>();
        try (ResultSet rows = statement.executeQuery()) {
            while (rows.next()) {
                heads.put(TestId.stored(String.valueOf(rows.getString(1))).orElseThrow(this::damaged),
                        new Head(rows.getLong(2), new Link(digest(rows.getBytes(3))), false));
            }
        }
        return heads;
    }

    /** Where an event stands, if it is there. */
    OptionalLong position(Connection connection, TestId test, long sequence) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT position FROM event WHERE test_id = ? AND sequence = ?")) {
            statement.setString(1, test.value());
            statement.setLong(2, sequence);
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? OptionalLong.of(row.getLong(1)) : OptionalLong.empty();
            }
        }
    }

    /** How many events of tests stand behind a position, and when the first of them was. */
    LedgerTables.Behind behind(Connection connection, long position) throws SQLException, LedgerException {
        String sql = "SELECT count(*), min(position) FROM event WHERE position > ? AND test_id LIKE 'T-%'";
        long first;
        long count;
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setLong(1, position);
            try (ResultSet row = statement.executeQuery()) {
                row.next();
                count = row.getLong(1);
                first = row.getLong(2);
            }
        }
        return count == 0 ? new LedgerTables.Behind(0, Optional.empty())
                : new LedgerTables.Behind(count, Optional.of(page(connection, first, 1).get(0).instant()));
    }

    /** Number of events so far. */
    long count(Connection connection) throws SQLException, LedgerException {
        return kept.use(connection, "SELECT coalesce(max(position), 0) FROM event", statement -> {
            try (ResultSet row = statement.executeQuery()) {
                row.next();
                return row.getLong(1);
            }
        });
    }

    /** The tree over all events so far. */
    CompactRange tree(Connection connection) throws SQLException, LedgerException {
        long size = count(connection);
        return last(connection, size, size);
    }

    /**
     * The tree over the last of all events.
     *
     * @param size how many there are
     * @param last how many of them; they fill the last perfect subtrees of the tree over all
     */
    CompactRange last(Connection connection, long size, long last) throws SQLException, LedgerException {
        if (last == 0) {
            return CompactRange.empty();
        }
        List<Long> ends = CompactRange.ends(size).stream().filter(end -> end > size - last).toList();
        String places = String.join(", ", Collections.nCopies(ends.size(), "?"));
        List<Digest> subtrees = kept.use(connection, "SELECT subtree FROM event WHERE position IN (" + places + ") ORDER BY position", statement -> {
            for (int i = 0; i < ends.size(); i++) {
                statement.setLong(i + 1, ends.get(i));
            }
            return subtrees(statement);
        });
        if (subtrees.size() != ends.size()) {
            throw damaged();
        }
        return new CompactRange(last, subtrees);
    }

    private List<Digest> subtrees(PreparedStatement statement) throws SQLException, LedgerException {
        List<Digest> subtrees = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery()) {
            while (rows.next()) {
                subtrees.add(digest(rows.getBytes(1)));
            }
        }
        return subtrees;
    }

    /** What is stored of the tree. */
    TreePaths.Nodes nodes(Connection connection) {
        return new TreePaths.Nodes() {
            @Override
            public Digest leaf(long index) throws SQLException, LedgerException {
                String sql = "SELECT test_id, sequence, link FROM event WHERE position = ?";
                return at(index + 1, sql, row -> MerkleTree.eventLeaf(
                        TestId.stored(String.valueOf(row.getString(1))).orElseThrow(EventTable.this::damaged), row.getLong(2),
                        new Link(digest(row.getBytes(3)))));
            }

            @Override
            public Digest subtree(long end) throws SQLException, LedgerException {
                return at(end, "SELECT subtree FROM event WHERE position = ?", row -> digest(row.getBytes(1)));
            }

            private Digest at(long position, String sql, RowReading reading) throws SQLException, LedgerException {
                try (PreparedStatement statement = connection.prepareStatement(sql)) {
                    statement.setLong(1, position);
                    try (ResultSet row = statement.executeQuery()) {
                        if (!row.next()) {
                            throw damaged();
                        }
                        return reading.of(row);
                    }
                }
            }
        };
    }

    @FunctionalInterface
    private interface RowReading {
        Digest of(ResultSet row) throws SQLException, LedgerException;
    }

    private LedgerDamagedException damaged() {
        return new LedgerDamagedException(Messages.text("damaged", place));
    }

    void insert(Connection connection, LedgerEntry entry, byte[] canonical, Digest subtree) throws SQLException, LedgerException {
        String sql = "INSERT INTO event (position, test_id, sequence, instant, sitting, elapsed, actor, role, kind, link, subtree, canonical) "
                + "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";
        kept.use(connection, sql, statement -> {
            statement.setLong(1, entry.position());
            statement.setString(2, entry.test().value());
            statement.setLong(3, entry.sequence());
            statement.setString(4, entry.instant().toString());
            statement.setInt(5, entry.sitting());
            statement.setString(6, entry.offset().toString());
            statement.setString(7, entry.actor().id());
            statement.setString(8, entry.actor().role().word());
            statement.setString(9, entry.kind());
            statement.setBytes(10, entry.link().digest().bytes());
            statement.setBytes(11, subtree.bytes());
            statement.setBytes(12, canonical);
            return statement.executeUpdate();
        });
    }

    List<LedgerEntry> entries(Connection connection, TestId test, long from) throws SQLException, LedgerException {
        try (PreparedStatement statement = connection.prepareStatement(ENTRY + "WHERE test_id = ? AND sequence >= ? ORDER BY sequence")) {
            statement.setString(1, test.value());
            statement.setLong(2, from);
            return entries(statement);
        }
    }

    List<LedgerEntry> entries(Connection connection, TestId test, String kind) throws SQLException, LedgerException {
        try (PreparedStatement statement = connection.prepareStatement(ENTRY + "WHERE test_id = ? AND kind = ? ORDER BY sequence")) {
            statement.setString(1, test.value());
            statement.setString(2, kind);
            return entries(statement);
        }
    }

    List<LedgerEntry> page(Connection connection, long fromPosition, int most) throws SQLException, LedgerException {
        try (PreparedStatement statement = connection.prepareStatement(ENTRY + "WHERE position >= ? ORDER BY position LIMIT ?")) {
            statement.setLong(1, fromPosition);
            statement.setInt(2, most);
            return entries(statement);
        }
    }

    List<TestId> tests(Connection connection) throws SQLException, LedgerException {
        List<TestId> tests = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT test_id FROM event WHERE sequence = 1 AND test_id LIKE 'T-%' ORDER BY position")) {
            while (rows.next()) {
                tests.add(TestId.parse(String.valueOf(rows.getString(1)))
                        .orElseThrow(this::damaged));
            }
        }
        return List.copyOf(tests);
    }

    List<LedgerEntry> openings(Connection connection, long fromPosition) throws SQLException, LedgerException {
        try (PreparedStatement statement = connection.prepareStatement(OPENING + "AND position >= ? ORDER BY position")) {
            statement.setLong(1, fromPosition);
            return entries(statement);
        }
    }

    /** The latest first; only those whose bytes hold others are decoded, for there may be very many. */
    List<LedgerEntry> openings(Connection connection, byte[] held, long before, int most) throws SQLException, LedgerException {
        try (PreparedStatement statement = connection.prepareStatement(OPENING + "AND position < ? AND " + holding
                + " ORDER BY position DESC LIMIT ?")) {
            statement.setLong(1, before);
            statement.setBytes(2, held);
            statement.setInt(3, most);
            return entries(statement);
        }
    }

    /** The tests that are not sealed, each with its last link, in the order in which they were opened. */
    Map<TestId, Link> unsealed(Connection connection) throws SQLException, LedgerException {
        String sql = "SELECT opening.test_id, (SELECT link FROM event WHERE event.test_id = opening.test_id ORDER BY event.sequence DESC LIMIT 1) "
                + "FROM event AS opening WHERE opening.sequence = 1 AND opening.test_id LIKE 'T-%' AND NOT EXISTS "
                + "(SELECT 1 FROM event WHERE event.test_id = opening.test_id AND event.kind = 'sealed') ORDER BY opening.position";
        Map<TestId, Link> tests = new LinkedHashMap<>();
        try (Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                tests.put(TestId.parse(String.valueOf(rows.getString(1))).orElseThrow(this::damaged), new Link(digest(rows.getBytes(2))));
            }
        }
        return Collections.unmodifiableMap(tests);
    }

    private List<LedgerEntry> entries(PreparedStatement statement) throws SQLException, LedgerException {
        List<LedgerEntry> entries = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery()) {
            while (rows.next()) {
                entries.add(entry(rows));
            }
        }
        return List.copyOf(entries);
    }

    private LedgerEntry entry(ResultSet row) throws SQLException, LedgerException {
        long position = row.getLong(1);
        byte[] canonical = row.getBytes(3);
        if (canonical == null) {
            throw new LedgerDamagedException(Messages.text("damagedEvent", place, position));
        }
        try {
            return EventCodec.decode(canonical).at(position, new Link(digest(row.getBytes(2))), canonical);
        } catch (PayloadException unreadable) {
            throw new LedgerDamagedException(Messages.text("damagedEvent", place, position), unreadable);
        }
    }

    private Digest digest(byte[] stored) throws LedgerException {
        return StoredDigest.of(stored, place);
    }
}
