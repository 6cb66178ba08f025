package org.benchwright.ledger.internal;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.ProjectedTest.State;
import org.benchwright.ledger.Projection;
import org.benchwright.ledger.ProjectionCounts;
import org.benchwright.ledger.ProjectionFilter;

/** Counts rows of a projection; SQLite groups them, so that only groups cross into Java. */
public final class ProjectionReader {

    /** Which tests count. */
    static final String COUNTING = "state <= " + State.OPEN.ordinal();

    private final Connection connection;
    private final List<String> conditions = new ArrayList<>();
    private final List<Object> values = new ArrayList<>();

    /** Reads what the filter lets through. */
    public ProjectionReader(Connection connection, ProjectionFilter filter) {
        this.connection = connection;
        filter.family().ifPresent(family -> require("t.family = ?", family));
        filter.serial().ifPresent(serial -> require("t.serial = ?", serial));
        filter.from().ifPresent(from -> require("t.opened >= ?", from.toEpochMilli()));
        filter.until().ifPresent(until -> require("t.opened < ?", until.toEpochMilli()));
    }

    private void require(String condition, Object value) {
        conditions.add(condition);
        values.add(value);
    }

    /** Up to where it goes. */
    public static Optional<Projection.Mark> mark(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT position, link, rules FROM mark")) {
            return row.next() ? Optional.of(new Projection.Mark(row.getLong(1), row.getString(2), row.getInt(3))) : Optional.empty();
        }
    }

    /** One pass over every cell of the table of tests. */
    public static long scan(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT sum(length(test) + opened % 2 + length(family) + length(procedure) + length(serial) "
                        + "+ length(technician) + length(station) + state + first + ifnull(soak_after, 0) + ifnull(soak_by, 0) + ifnull(length(predecessor), 0) + ifnull(out_day, 0) "
                        + "+ ifnull(back_day, 0) + ifnull(back_fault, 0) + ifnull(again_day, 0)) "
                        + "FROM test NOT INDEXED")) {
            return row.getLong(1);
        }
    }

    /** Tests by person, station and state. */
    public List<ProjectionCounts.Tests> tests() throws SQLException {
        return list("SELECT technician, station, state, first, count(*) FROM test t WHERE TRUE", "GROUP BY 1, 2, 3, 4", List.of(),
                row -> new ProjectionCounts.Tests(row.getString(1), row.getString(2), State.values()[row.getInt(3)], row.getBoolean(4),
                        row.getLong(5)));
    }

    /** What was found. */
    public List<ProjectionCounts.Found> causes() throws SQLException {
        return list("SELECT c.fault, c.name, count(*) FROM cause c" + joined("c") + " WHERE c.counts = 1", "GROUP BY 1, 2", List.of(),
                row -> new ProjectionCounts.Found(new ProjectedTest.Cause(row.getBoolean(1), row.getString(2)), row.getLong(3)));
    }

    /** How soaks ended. */
    public List<ProjectionCounts.Soaks> soaks() throws SQLException {
        return list("SELECT soak_after, soak_by, count(*) FROM test t WHERE soak_after IS NOT NULL AND t." + COUNTING,
                "GROUP BY 1, 2 ORDER BY 1, 2", List.of(), row -> {
                    long by = row.getLong(2);
                    Optional<Long> stopped = row.wasNull() ? Optional.empty() : Optional.of(by);
                    return new ProjectionCounts.Soaks(new ProjectedTest.Soak(row.getLong(1), stopped), row.getLong(3));
                });
    }

    /**
     * How long units were out there. Nearly all are still, and longer than anybody asks: those are counted along their index; only the others
     * are put in groups.
     */
    public List<ProjectionCounts.Field> field(long today, int most) throws SQLException {
        long old = today - most;
        List<ProjectionCounts.Field> found = new ArrayList<>(list("SELECT procedure, count(*) FROM test t WHERE out_day IS NOT NULL "
                + "AND back_day IS NULL AND again_day IS NULL AND out_day <= ?", "GROUP BY 1", List.of(old),
                row -> new ProjectionCounts.Field(row.getString(1), most, false, false, -1, row.getLong(2))));
        found.addAll(list("SELECT procedure, max(0, min(?, ifnull(back_day, ifnull(again_day, ?)) - out_day)), back_day IS NOT NULL, "
                + "back_day IS NULL AND again_day IS NOT NULL, ifnull(back_fault, -1), count(*) FROM test t WHERE out_day IS NOT NULL "
                + "AND (back_day IS NOT NULL OR again_day IS NOT NULL OR out_day > ?)", "GROUP BY 1, 2, 3, 4, 5", List.of(most, today, old),
                row -> new ProjectionCounts.Field(row.getString(1), row.getInt(2), row.getBoolean(3), row.getBoolean(4), row.getInt(5),
                        row.getLong(6))));
        return found;
    }

    /** From the first test that counts to the last one: both found at the ends of their index. */
    public Optional<Duration> span() throws SQLException {
        List<Long> ends = new ArrayList<>();
        for (String order : List.of("ORDER BY opened LIMIT 1", "ORDER BY opened DESC LIMIT 1")) {
            ends.addAll(list("SELECT opened FROM test t WHERE t." + COUNTING, order, List.of(), row -> row.getLong(1)));
        }
        return ends.size() < 2 || ends.get(0).equals(ends.get(1)) ? Optional.empty() : Optional.of(Duration.ofMillis(ends.get(1) - ends.get(0)));
    }

    /** What was measured. */
    public List<ProjectionCounts.Measured> measured() throws SQLException {
        return list("SELECT r.procedure, r.name, r.unit, count(*) FROM reading r" + joined("r") + " WHERE r.counts = 1", "GROUP BY 1, 2, 3",
                List.of(),
                row -> new ProjectionCounts.Measured(row.getString(1), row.getString(2), row.getString(3), row.getLong(4)));
    }

    /** The latest readings, oldest first. */
    public List<ProjectionCounts.Read> readings(ProjectionCounts.Measured measurement, int atMost) throws SQLException {
        List<ProjectionCounts.Read> latest = list("SELECT r.opened, r.value, t.serial, t.technician, t.station, r.instrument "
                + "FROM reading r CROSS JOIN test t ON t.id = r.test "
                + "WHERE r.counts = 1 AND r.procedure = ? AND r.name = ? AND r.unit = ?",
                "ORDER BY r.opened DESC, r.rowid DESC LIMIT " + atMost, List.of(measurement.procedure(), measurement.name(), measurement.unit()),
                row -> new ProjectionCounts.Read(row.getLong(1), row.getDouble(2), row.getString(3), row.getString(4), row.getString(5),
                        row.getString(6)));
        Collections.reverse(latest);
        return latest;
    }

    /** The test of a row, where the filter asks for it; in this order, so that the index of the rows is followed. */
    private String joined(String rows) {
        return conditions.isEmpty() ? "" : " CROSS JOIN test t ON t.id = " + rows + ".test";
    }

    private <T> List<T> list(String select, String order, List<Object> first, ProjectionRows.Row<T> maker) throws SQLException {
        StringBuilder sql = new StringBuilder(select);
        conditions.forEach(condition -> sql.append(" AND ").append(condition));
        List<Object> all = new ArrayList<>(first);
        all.addAll(values);
        return ProjectionRows.list(connection, sql.append(' ').append(order).toString(), all, maker);
    }
}
