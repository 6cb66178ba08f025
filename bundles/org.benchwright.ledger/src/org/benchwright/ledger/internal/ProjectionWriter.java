package org.benchwright.ledger.internal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.List;
import java.util.Optional;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.Projection;

/** Writes rows of a projection. */
public final class ProjectionWriter {

    private static final long DAY_MILLIS = 86_400_000;
    /** The day on which the next test of the unit was opened, if that is in the table already. */
    private static final String AGAIN = "(SELECT min(opened) / " + DAY_MILLIS + " FROM test WHERE predecessor = ? AND "
            + ProjectionReader.COUNTING + ")";

    private ProjectionWriter() {
    }

    /** Empties all tables. */
    public static boolean clear(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            for (String table : new String[] {"deviation", "cause", "reading", "test", "mark"}) {
                statement.execute("DELETE FROM " + table);
            }
            return true;
        }
    }

    /** Puts tests in, all or nothing. */
    public static boolean put(Connection connection, List<ProjectedTest> tests, Optional<Projection.Mark> mark) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            try {
                insert(connection, tests);
                mark(connection, mark);
                statement.execute("COMMIT");
                return true;
            } catch (SQLException failure) {
                statement.execute("ROLLBACK");
                throw failure;
            }
        }
    }

    private static void mark(Connection connection, Optional<Projection.Mark> mark) throws SQLException {
        try (Statement statement = connection.createStatement();
                PreparedStatement insert = connection.prepareStatement("INSERT INTO mark VALUES (?, ?, ?)")) {
            statement.execute("DELETE FROM mark");
            if (mark.isPresent()) {
                insert.setLong(1, mark.get().position());
                insert.setString(2, mark.get().link());
                insert.setInt(3, mark.get().rules());
                insert.executeUpdate();
            }
        }
    }

    private static void insert(Connection connection, List<ProjectedTest> tests) throws SQLException {
        try (PreparedStatement known = connection.prepareStatement("SELECT id FROM test WHERE test = ?");
                PreparedStatement test = connection.prepareStatement("INSERT INTO test (test, opened, family, procedure, serial, technician, "
                        + "station, state, first, soak_after, soak_by, predecessor, out_day, back_day, back_fault, review_due, again_day) "
                        + "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, " + AGAIN + ") RETURNING id");
                PreparedStatement before = connection.prepareStatement("UPDATE test SET again_day = ? WHERE test = ? "
                        + "AND (again_day IS NULL OR again_day > ?1)");
                PreparedStatement reading = connection.prepareStatement("INSERT INTO reading VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
                PreparedStatement cause = connection.prepareStatement("INSERT INTO cause VALUES (?, ?, ?, ?)");
                PreparedStatement deviation = connection.prepareStatement("INSERT INTO deviation VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
            for (ProjectedTest each : tests) {
                forget(connection, known, each.test());
                long id = insert(test, each);
                if (each.predecessor().isPresent() && counts(each)) {
                    testedAgain(before, each, each.predecessor().get());
                }
                for (ProjectedTest.Reading read : each.readings()) {
                    insert(reading, id, each, read);
                }
                for (ProjectedTest.Deviation found : each.deviations()) {
                    insert(deviation, id, found);
                }
                for (ProjectedTest.Cause found : each.causes()) {
                    cause.setLong(1, id);
                    cause.setBoolean(2, found.fault());
                    cause.setString(3, found.name());
                    cause.setBoolean(4, counts(each));
                    cause.addBatch();
                }
            }
            reading.executeBatch();
            cause.executeBatch();
            deviation.executeBatch();
        }
    }

    private static void forget(Connection connection, PreparedStatement known, String test) throws SQLException {
        known.setString(1, test);
        Optional<Long> id = Optional.empty();
        try (ResultSet row = known.executeQuery()) {
            id = row.next() ? Optional.of(row.getLong(1)) : id;
        }
        if (id.isPresent()) {
            for (String table : new String[] {"deviation WHERE test", "cause WHERE test", "reading WHERE test", "test WHERE id"}) {
                try (PreparedStatement delete = connection.prepareStatement("DELETE FROM " + table + " = ?")) {
                    delete.setLong(1, id.get());
                    delete.executeUpdate();
                }
            }
        }
    }

    private static long insert(PreparedStatement row, ProjectedTest test) throws SQLException {
        row.setString(1, test.test());
        row.setLong(2, test.opened().toEpochMilli());
        row.setString(3, test.family());
        row.setString(4, test.procedure());
        row.setString(5, test.serial());
        row.setString(6, test.technician());
        row.setString(7, test.station());
        row.setInt(8, test.state().ordinal());
        row.setBoolean(9, test.first());
        setOptional(row, 10, test.soak().map(ProjectedTest.Soak::afterSeconds));
        setOptional(row, 11, test.soak().flatMap(ProjectedTest.Soak::bySeconds));
        if (test.predecessor().isPresent()) {
            row.setString(12, test.predecessor().get());
        } else {
            row.setNull(12, Types.VARCHAR);
        }
        setOptional(row, 13, test.field().map(ProjectedTest.Field::since));
        setOptional(row, 14, test.field().flatMap(ProjectedTest.Field::returned));
        setOptional(row, 15, test.field().filter(field -> field.returned().isPresent()).map(field -> (long) field.fault()));
        row.setBoolean(16, test.reviewDue());
        row.setString(17, test.test());
        try (ResultSet id = row.executeQuery()) {
            return id.getLong(1);
        }
    }

    /** The unit is no longer out there by its test before, whether or not its return was recorded. */
    private static void testedAgain(PreparedStatement before, ProjectedTest test, String predecessor) throws SQLException {
        before.setLong(1, Math.floorDiv(test.opened().toEpochMilli(), DAY_MILLIS));
        before.setString(2, predecessor);
        before.executeUpdate();
    }

    private static void setOptional(PreparedStatement row, int place, Optional<Long> value) throws SQLException {
        if (value.isPresent()) {
            row.setLong(place, value.get());
        } else {
            row.setNull(place, Types.INTEGER);
        }
    }

    private static boolean counts(ProjectedTest test) {
        return test.state().counts();
    }

    private static void insert(PreparedStatement row, long id, ProjectedTest test, ProjectedTest.Reading read) throws SQLException {
        row.setLong(1, id);
        row.setString(2, test.procedure());
        row.setString(3, read.name());
        row.setString(4, read.unit());
        row.setLong(5, test.opened().toEpochMilli());
        row.setBoolean(6, counts(test));
        row.setDouble(7, read.value());
        row.setString(8, read.instrument());
        row.addBatch();
    }

    private static void insert(PreparedStatement row, long id, ProjectedTest.Deviation found) throws SQLException {
        row.setLong(1, id);
        row.setLong(2, found.sequence());
        row.setBoolean(3, found.nonconformity());
        row.setString(4, found.stage());
        row.setString(5, found.step());
        row.setLong(6, found.noted().toEpochMilli());
        row.setString(7, found.words());
        row.setInt(8, found.stand().ordinal());
        Optional<ProjectedTest.Decided> decided = found.decision();
        row.setString(9, decided.map(ProjectedTest.Decided::word).orElse(null));
        row.setString(10, decided.map(ProjectedTest.Decided::reason).orElse(null));
        row.setString(11, decided.map(ProjectedTest.Decided::by).orElse(null));
        setOptional(row, 12, decided.map(each -> each.instant().toEpochMilli()));
        row.addBatch();
    }
}
