package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.Statement;
import java.util.Random;
import java.util.stream.Stream;

import org.benchwright.core.Digest;
import org.sqlite.SQLiteConfig;

/** Photos, whether anything is left of them, and somebody who takes them out of a ledger past the program. */
final class ErasedBytes {

    private ErasedBytes() {
    }

    static byte[] photo(int size) {
        byte[] photo = new byte[size];
        new Random(7).nextBytes(photo);
        return photo;
    }

    /** Whether some bytes out of the middle of the photo can be found in any file of a folder. */
    static boolean found(Path folder, byte[] photo) throws IOException {
        String part = new String(photo, photo.length / 2, 64, StandardCharsets.ISO_8859_1);
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                if (new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).contains(part)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** As somebody would who opens the ledger's file with a tool of their own. */
    static void takeAway(Path ledger, Digest digest, byte[] instead) throws Exception {
        try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + ledger); Statement statement = connection.createStatement()) {
            String safeguard;
            try (var row = statement.executeQuery("SELECT sql FROM sqlite_master WHERE name = 'document_kept'")) {
                safeguard = row.getString(1);
            }
            statement.execute("DROP TRIGGER document_kept");
            try (PreparedStatement update = connection.prepareStatement("UPDATE document SET content = ? WHERE digest = ?")) {
                update.setBytes(1, instead);
                update.setBytes(2, digest.bytes());
                assertEquals(1, update.executeUpdate());
            }
            statement.execute(safeguard);
        }
    }

    /** What stands in the place of bytes that were rightly withdrawn. */
    static byte[] asIfWithdrawn() {
        return "withdrawn".getBytes(StandardCharsets.US_ASCII);
    }
}
