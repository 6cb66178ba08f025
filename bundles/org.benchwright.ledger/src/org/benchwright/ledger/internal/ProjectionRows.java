package org.benchwright.ledger.internal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.Set;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.ProjectionCounts;

/** Reads rows of a projection back as what they were written from. */
public final class ProjectionRows {

    private static final String DEVIATION = "d.sequence, d.nonconformity, d.stage, d.step, d.noted, d.words, d.stand, d.decision, d.reason, "
            + "d.decided_by, d.decided";

    private ProjectionRows() {
    }

    /** What is made of a row. */
    interface Row<T> {
        T of(ResultSet row) throws SQLException;
    }

    /** Ids of all tests in it. */
    public static Set<String> tests(Connection connection) throws SQLException {
        return new TreeSet<>(list(connection, "SELECT test FROM test", List.of(), row -> row.getString(1)));
    }

    /** A test as it was put in. */
    public static Optional<ProjectedTest> test(Connection connection, String test) throws SQLException {
        List<Long> ids = list(connection, "SELECT id FROM test WHERE test = ?", List.of(test), row -> row.getLong(1));
        if (ids.isEmpty()) {
            return Optional.empty();
        }
        List<Object> id = List.of(ids.get(0));
        List<ProjectedTest.Reading> readings = list(connection, "SELECT name, unit, value, instrument FROM reading WHERE test = ? ORDER BY rowid", id,
                row -> new ProjectedTest.Reading(row.getString(1), row.getString(2), row.getDouble(3), row.getString(4)));
        List<ProjectedTest.Cause> causes = list(connection, "SELECT fault, name FROM cause WHERE test = ? ORDER BY rowid", id,
                row -> new ProjectedTest.Cause(row.getBoolean(1), row.getString(2)));
        List<ProjectedTest.Deviation> deviations = list(connection, "SELECT " + DEVIATION + " FROM deviation d WHERE test = ? ORDER BY rowid", id,
                row -> deviation(row, 0));
        return list(connection, "SELECT test, opened, family, procedure, serial, technician, station, state, first, soak_after, soak_by, predecessor, "
                + "out_day, back_day, back_fault, review_due FROM test WHERE id = ?", id, row -> new ProjectedTest(row.getString(1),
                        Instant.ofEpochMilli(row.getLong(2)), row.getString(3), row.getString(4), row.getString(5), row.getString(6),
                        row.getString(7), ProjectedTest.State.values()[row.getInt(8)], row.getBoolean(9), soak(row), readings, causes,
                        Optional.ofNullable(row.getString(12)), field(row), deviations, row.getBoolean(16))).stream().findFirst();
    }

    /** Tests that were drawn for a review which is due, the longest waiting first. */
    public static List<ProjectionCounts.ReviewDue> reviewsDue(Connection connection) throws SQLException {
        return list(connection, "SELECT test, serial, family, procedure, technician, opened FROM test WHERE review_due ORDER BY opened, id",
                List.of(), row -> new ProjectionCounts.ReviewDue(row.getString(1), row.getString(2), row.getString(3), row.getString(4), row.getString(5),
                        Instant.ofEpochMilli(row.getLong(6))));
    }

    private static Optional<ProjectedTest.Soak> soak(ResultSet row) throws SQLException {
        Optional<Long> by = number(row, 11);
        return number(row, 10).map(after -> new ProjectedTest.Soak(after, by));
    }

    private static Optional<ProjectedTest.Field> field(ResultSet row) throws SQLException {
        Optional<Long> back = number(row, 14);
        int fault = number(row, 15).map(Long::intValue).orElse(-1);
        return number(row, 13).map(since -> new ProjectedTest.Field(since, back, fault));
    }

    private static Optional<Long> number(ResultSet row, int column) throws SQLException {
        long number = row.getLong(column);
        return row.wasNull() ? Optional.empty() : Optional.of(number);
    }

    /** Departures or nonconformities, the longest waiting first; behind them those that wait for nobody, the latest first. */
    public static List<ProjectionCounts.Deviated> deviations(Connection connection, boolean nonconformities,
            boolean waitingOnly) throws SQLException {
        int waiting = ProjectedTest.Stand.WAITING.ordinal();
        String join = " FROM deviation d CROSS JOIN test t ON t.id = d.test WHERE d.nonconformity = ? AND d.stand ";
        String select = "SELECT t.test, t.serial, t.family, t.procedure, " + DEVIATION + join;
        Row<ProjectionCounts.Deviated> maker = row -> new ProjectionCounts.Deviated(row.getString(1), row.getString(2), row.getString(3),
                row.getString(4), deviation(row, 4));
        List<Object> values = List.of(nonconformities ? 1 : 0, waiting);
        List<ProjectionCounts.Deviated> found = new ArrayList<>(list(connection, select + "= ? ORDER BY d.noted, d.rowid", values, maker));
        if (!waitingOnly) {
            found.addAll(list(connection, select + "<> ? ORDER BY d.noted DESC, d.rowid DESC", values, maker));
        }
        return found;
    }

    private static ProjectedTest.Deviation deviation(ResultSet row, int before) throws SQLException {
        String word = row.getString(before + 8);
        Optional<ProjectedTest.Decided> decided = row.wasNull() ? Optional.empty()
                : Optional.of(new ProjectedTest.Decided(word, row.getString(before + 9), row.getString(before + 10),
                        Instant.ofEpochMilli(row.getLong(before + 11))));
        return new ProjectedTest.Deviation(row.getLong(before + 1), row.getBoolean(before + 2), row.getString(before + 3), row.getString(before + 4),
                Instant.ofEpochMilli(row.getLong(before + 5)), row.getString(before + 6), ProjectedTest.Stand.values()[row.getInt(before + 7)],
                decided);
    }

    /** What is made of all rows that a question with these values finds, in order. */
    static <T> List<T> list(Connection connection, String sql, List<?> values, Row<T> maker) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.size(); i++) {
                statement.setObject(i + 1, values.get(i));
            }
            List<T> found = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    found.add(maker.of(row));
                }
            }
            return found;
        }
    }
}
