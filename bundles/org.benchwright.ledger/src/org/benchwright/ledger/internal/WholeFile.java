package org.benchwright.ledger.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.UUID;
import org.benchwright.ledger.DurableFiles;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFullException;
import org.benchwright.ledger.LedgerPlaceTakenException;

/** A file that appears whole or not at all: filled beside its place, under a name that says so, and given its own name at the end. */
public final class WholeFile {

    /** What a database may leave beside the file. */
    private static final List<String> BESIDE = List.of("", "-wal", "-shm");

    private WholeFile() {
    }

    /** Fills the file. */
    @FunctionalInterface
    public interface Filling<T> {

        /** Writes all of it into {@code part}, which is not there yet. */
        T into(Path part) throws IOException, LedgerException;
    }

    /**
     * Makes a file.
     *
     * @param file must not be there
     * @return what the filling returns
     * @throws LedgerPlaceTakenException when something is there
     * @throws LedgerFullException       when there is no room for it
     */
    public static <T> T write(Path file, Filling<T> filling) throws LedgerException {
        if (Files.exists(file)) {
            throw new LedgerPlaceTakenException(Messages.text("backupThere", file));
        }
        Path target = file.toAbsolutePath().normalize();
        Path part = target.resolveSibling(target.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            T filled = filling.into(part);
            BackupFile.sync(part);
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
            DurableFiles.syncFolder(target.getParent());
            return filled;
        } catch (LedgerFullException full) {
            // What was half there is gone again; its name says nothing to anybody.
            throw new LedgerFullException(Messages.text("full", file), full);
        } catch (IOException failure) {
            throw BackupFile.translated(failure, file);
        } finally {
            BESIDE.forEach(suffix -> forget(part.resolveSibling(part.getFileName() + suffix)));
        }
    }

    private static void forget(Path left) {
        try {
            Files.deleteIfExists(left);
        } catch (IOException stays) {
            // It is beside, under a name that says what it is.
            left.toFile().deleteOnExit();
        }
    }
}
