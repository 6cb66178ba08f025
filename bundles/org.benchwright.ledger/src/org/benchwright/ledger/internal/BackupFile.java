package org.benchwright.ledger.internal;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.nio.file.StandardOpenOption;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.benchwright.core.Digest;
import org.benchwright.ledger.DurableFiles;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFullException;
import org.benchwright.ledger.LedgerReadOnlyException;

/** The steps of a backup that touch the database or the disk. */
public final class BackupFile {

    private BackupFile() {
    }

    /** Writes what the ledger is at this moment as a new database file; others go on writing. */
    public static void vacuumInto(SqliteFile source, Path copy) throws LedgerException {
        source.unwrapped(connection -> {
            try (PreparedStatement statement = connection.prepareStatement("VACUUM INTO ?")) {
                statement.setString(1, copy.toString());
                statement.execute();
                return Boolean.TRUE;
            } catch (SQLException failure) {
                throw SqliteErrors.translate(failure, copy);
            }
        });
    }

    /** Digests of the documents that lie as files beside the ledger. */
    public static List<Digest> attachmentsBeside(SqliteFile ledger) throws LedgerException {
        return ledger.read(connection -> {
            List<Digest> beside = new ArrayList<>();
            try (Statement statement = connection.createStatement();
                    ResultSet rows = statement.executeQuery("SELECT digest FROM document WHERE content IS NULL AND length(digest) = 32")) {
                while (rows.next()) {
                    beside.add(Digest.ofResult(rows.getBytes(1)));
                }
            }
            return beside;
        });
    }

    /** Forces a folder with all that is in it to the disk. */
    public static void sync(Path folder) throws IOException {
        List<Path> all;
        try (Stream<Path> files = Files.walk(folder)) {
            all = files.toList();
        }
        for (Path file : all) {
            if (Files.isDirectory(file)) {
                DurableFiles.syncFolder(file);
            } else {
                try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
                    channel.force(true);
                } catch (AccessDeniedException readOnly) {
                    // A key file may be for reading only; it was written by the system's own copy.
                    continue;
                }
            }
        }
    }

    /** What a failure of the disk at {@code place} means. */
    public static LedgerException translated(IOException failure, Path place) {
        String words = String.valueOf(failure.getMessage());
        if (words.contains("No space left") || words.contains("not enough space") || words.contains("quota exceeded")) {
            return new LedgerFullException(Messages.text("full", place), failure);
        }
        if (failure instanceof AccessDeniedException || words.contains("Read-only file system")
                || failure.getCause() instanceof ReadOnlyFileSystemException) {
            return new LedgerReadOnlyException(Messages.text("readOnly", place), failure);
        }
        return new LedgerException(Messages.text("failed", place, words), failure);
    }
}
