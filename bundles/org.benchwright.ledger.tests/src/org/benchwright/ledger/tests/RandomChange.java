package org.benchwright.ledger.tests;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** One change at random, of a file's bytes or of the tables; each tells what it did. */
final class RandomChange {

    private static final Map<String, List<String>> COLUMNS = Map.of(
            "event", List.of("position", "test_id", "sequence", "instant", "sitting", "elapsed", "actor", "role", "kind", "link", "subtree",
                    "canonical"),
            "document", List.of("number", "digest", "kind", "size", "content", "link"),
            "signer", List.of("number", "fingerprint", "public_key", "first_seen", "signature"),
            "checkpoint", List.of("number", "size", "root", "documents", "documents_link", "instant", "signer", "signature"));
    private static final List<String> TABLES = List.of("event", "event", "event", "document", "signer", "checkpoint", "checkpoint");

    private RandomChange() {
    }

    /** Flips bits, overwrites a stretch, cuts the end off, takes a stretch out or puts one in. */
    static String ofBytes(Random random, Path file) throws Exception {
        byte[] bytes = Files.readAllBytes(file);
        int at = random.nextInt(bytes.length);
        int length = 1 + random.nextInt(Math.min(64, bytes.length - at));
        int kind = random.nextInt(6);
        byte[] changed = switch (kind) {
            case 0 -> Arrays.copyOf(bytes, at);
            case 1 -> joined(Arrays.copyOf(bytes, at), Arrays.copyOfRange(bytes, at + length, bytes.length));
            case 2 -> joined(Arrays.copyOf(bytes, at), noise(random, length), Arrays.copyOfRange(bytes, at, bytes.length));
            case 3 -> joined(Arrays.copyOf(bytes, at), noise(random, length), Arrays.copyOfRange(bytes, at + length, bytes.length));
            default -> flipped(bytes, at, random);
        };
        Files.write(file, changed);
        return "bytes, kind " + kind + " at " + at + ", length " + length + " of " + file.getFileName();
    }

    private static byte[] flipped(byte[] bytes, int at, Random random) {
        byte[] changed = bytes.clone();
        changed[at] ^= (byte) (1 << random.nextInt(8));
        return changed;
    }

    private static byte[] noise(Random random, int length) {
        byte[] noise = new byte[length];
        random.nextBytes(noise);
        return noise;
    }

    private static byte[] joined(byte[]... parts) {
        int length = Arrays.stream(parts).mapToInt(part -> part.length).sum();
        byte[] joined = new byte[length];
        int at = 0;
        for (byte[] part : parts) {
            System.arraycopy(part, 0, joined, at, part.length);
            at += part.length;
        }
        return joined;
    }

    /** Changes a cell, or removes, exchanges or repeats rows, or takes a safeguard away, by SQL behind the triggers. */
    static String ofTables(Random random, Path ledger) throws SQLException {
        String table = TABLES.get(random.nextInt(TABLES.size()));
        String key = table.equals("event") ? "position" : "number";
        try (Tamper tamper = Tamper.with(ledger)) {
            long rows = tamper.number("SELECT count(*) FROM " + table);
            long row = 1 + random.nextInt((int) rows);
            long other = 1 + random.nextInt((int) rows);
            List<String> deed = new ArrayList<>();
            if (random.nextInt(40) == 0) {
                return safeguard(random, tamper);
            }
            try {
                tamper.behindTheTriggers(work -> deed.add(change(random, work, table, key, row, other)));
            } catch (SQLException refused) {
                // The strict tables refuse some deeds whatever the triggers: then nothing has happened.
                return "refused: " + refused.getMessage();
            }
            return table + " " + row + ": " + deed.get(0);
        }
    }

    private static String change(Random random, Tamper work, String table, String key, long row, long other) throws SQLException {
        switch (random.nextInt(6)) {
            case 0:
                work.run("DELETE FROM " + table + " WHERE " + key + " = " + row);
                return "removed";
            case 1:
                work.run("UPDATE " + table + " SET " + key + " = -1 WHERE " + key + " = " + row);
                work.run("UPDATE " + table + " SET " + key + " = " + row + " WHERE " + key + " = " + other);
                work.run("UPDATE " + table + " SET " + key + " = " + other + " WHERE " + key + " = -1");
                return "exchanged with " + other;
            case 2:
                String next = "(SELECT max(" + key + ") + 1 FROM " + table + ")";
                List<String> rest = COLUMNS.get(table).subList(1, COLUMNS.get(table).size());
                String columns = String.join(", ", rest);
                String values = columns.replace("sequence", "sequence + 1000").replace("digest", "zeroblob(32)").replace("fingerprint",
                        "zeroblob(32)");
                work.run("INSERT INTO " + table + " (" + key + ", " + columns + ") SELECT " + next + ", " + values + " FROM " + table + " WHERE "
                        + key + " = " + row);
                return "repeated at the end";
            default:
                String column = COLUMNS.get(table).get(random.nextInt(COLUMNS.get(table).size()));
                return column + " " + cell(random, work, table, key, row, column);
        }
    }

    private static String cell(Random random, Tamper work, String table, String key, long row, String column) throws SQLException {
        String where = " WHERE " + key + " = " + row;
        byte[] bytes = work.bytes("SELECT CAST(" + column + " AS BLOB) FROM " + table + where);
        String type = text(work, "SELECT typeof(" + column + ") FROM " + table + where);
        if (type.equals("integer")) {
            long value = work.number("SELECT " + column + " FROM " + table + where) ^ 1L << random.nextInt(62);
            work.run("UPDATE " + table + " SET " + column + " = " + value + where);
            return "= " + value;
        }
        byte[] changed = bytes == null || bytes.length == 0 ? noise(random, 3) : flipped(bytes, random.nextInt(bytes.length), random);
        if (random.nextInt(5) == 0) {
            changed = Arrays.copyOf(changed, random.nextInt(2) == 0 ? changed.length + 1 : changed.length - 1);
        }
        String place = type.equals("text") ? "CAST(? AS TEXT)" : "?";
        try (PreparedStatement statement = work.connection().prepareStatement("UPDATE " + table + " SET " + column + " = " + place + where)) {
            statement.setBytes(1, changed);
            statement.executeUpdate();
        }
        return "of " + changed.length + " bytes";
    }

    private static String text(Tamper work, String sql) throws SQLException {
        try (var statement = work.connection().createStatement(); var row = statement.executeQuery(sql)) {
            row.next();
            return row.getString(1);
        }
    }

    private static String safeguard(Random random, Tamper tamper) throws SQLException {
        List<String> drops = new ArrayList<>();
        try (var statement = tamper.connection().createStatement();
                var rows = statement.executeQuery("SELECT type, name FROM sqlite_master WHERE type IN ('trigger', 'index') AND sql IS NOT NULL")) {
            while (rows.next()) {
                drops.add("DROP " + rows.getString(1) + " " + rows.getString(2));
            }
        }
        String drop = drops.get(random.nextInt(drops.size()));
        tamper.run(drop);
        return drop;
    }
}
