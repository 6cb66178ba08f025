package org.benchwright.ledger.tests;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

import org.benchwright.core.Digest;

/** All that can be read of a ledger, as one digest: what leaves it as it was has changed nothing. */
final class LedgerContent {

    private LedgerContent() {
    }

    /** Tables, triggers and these attachments. */
    static String of(Path ledger, Path... attachments) throws Exception {
        StringBuilder content = new StringBuilder();
        for (Path attachment : attachments) {
            content.append(Digest.of(Files.readAllBytes(attachment)).hex());
        }
        try (Tamper reader = Tamper.with(ledger)) {
            for (String table : List.of("sqlite_master", "event", "document", "signer", "checkpoint")) {
                dump(reader, table, content);
            }
        }
        return Digest.of(content.toString().getBytes(StandardCharsets.UTF_8)).hex();
    }

    private static void dump(Tamper reader, String table, StringBuilder to) throws SQLException {
        // The number of the page where a table begins is the file's own affair.
        String columns = table.equals("sqlite_master") ? "type, name, tbl_name, sql" : "*";
        try (Statement statement = reader.connection().createStatement();
                ResultSet rows = statement.executeQuery("SELECT " + columns + " FROM " + table + " ORDER BY 1, 2")) {
            while (rows.next()) {
                for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
                    byte[] bytes = rows.getBytes(i);
                    to.append(bytes == null ? "null" : Digest.of(bytes).hex()).append('|');
                }
                to.append('\n');
            }
        }
    }
}
