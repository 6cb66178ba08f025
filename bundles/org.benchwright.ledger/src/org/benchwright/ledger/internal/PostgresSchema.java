package org.benchwright.ledger.internal;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The same migrations on PostgreSQL: each statement of the one set of SQL files is put into PostgreSQL's words. Only what differs is said anew:
 * the types' names, and how a trigger refuses.
 */
public final class PostgresSchema {

    private static final Pattern TRIGGER = Pattern.compile(
            "CREATE TRIGGER (\\w+) BEFORE (INSERT|UPDATE|DELETE) ON (\\w+)\\s+(?:WHEN (.*?)\\s+)?BEGIN SELECT RAISE\\(ABORT, ('[^']*')\\); END",
            Pattern.DOTALL);

    private PostgresSchema() {
    }

    /** Makes the tables, and the rights of a bench: it may read and add, and nothing else. Needs an owner's connection. */
    public static void install(Connection owner, String benchRole) throws SQLException {
        try (Statement statement = owner.createStatement()) {
            carryOut(0, statement);
            statement.execute("CREATE TABLE ledger_format (version BIGINT NOT NULL)");
            statement.execute("INSERT INTO ledger_format VALUES (" + Schema.NEWEST + ")");
            String role = statement.enquoteIdentifier(benchRole, true);
            for (String table : List.of("event", "document", "signer", "checkpoint")) {
                statement.execute("CREATE TRIGGER " + table + "_whole BEFORE TRUNCATE ON " + table + " EXECUTE FUNCTION " + table + "_stays()");
                statement.execute("GRANT SELECT, INSERT ON " + table + " TO " + role);
            }
            statement.execute("GRANT SELECT ON ledger_format TO " + role);
        }
    }

    /** Brings a ledger of an older format to {@link Schema#NEWEST}; does nothing where it is. Needs an owner's connection. */
    public static void migrate(Connection owner) throws SQLException {
        try (Statement statement = owner.createStatement()) {
            // Benches write on meanwhile; a second owner waits here and then finds nothing to do.
            statement.execute("LOCK TABLE ledger_format IN ACCESS EXCLUSIVE MODE");
            int version = version(owner);
            if (version < Schema.NEWEST) {
                carryOut(version, statement);
                statement.execute("UPDATE ledger_format SET version = " + Schema.NEWEST);
            }
        }
    }

    private static void carryOut(int version, Statement statement) throws SQLException {
        for (int next = version + 1; next <= Schema.NEWEST; next++) {
            for (String sql : Schema.statements(next)) {
                statement.execute(translated(sql));
            }
        }
    }

    /** The format version of a ledger behind {@code connection}; 0 where there is none. */
    public static int version(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            try (ResultSet row = statement.executeQuery("SELECT to_regclass('ledger_format') IS NOT NULL")) {
                row.next();
                if (!row.getBoolean(1)) {
                    return 0;
                }
            }
            try (ResultSet row = statement.executeQuery("SELECT max(version) FROM ledger_format")) {
                return row.next() ? row.getInt(1) : 0;
            }
        }
    }

    static String translated(String sql) {
        Matcher trigger = TRIGGER.matcher(sql);
        if (!trigger.find()) {
            return sql.replaceAll("(?m)^--.*\\R", "").replace("INTEGER PRIMARY KEY", "BIGINT PRIMARY KEY").replace(" INTEGER ", " BIGINT ")
                    .replace(" BLOB", " BYTEA").replace(") STRICT", ")");
        }
        String refuse = "RAISE EXCEPTION " + trigger.group(5) + ";";
        String body = trigger.group(4) == null ? refuse : "IF " + trigger.group(4) + " THEN " + refuse + " END IF; RETURN NEW;";
        return "CREATE FUNCTION " + trigger.group(1) + "() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN " + body + " END $$; CREATE TRIGGER "
                + trigger.group(1) + " BEFORE " + trigger.group(2) + " ON " + trigger.group(3) + " FOR EACH ROW EXECUTE FUNCTION "
                + trigger.group(1) + "()";
    }
}
