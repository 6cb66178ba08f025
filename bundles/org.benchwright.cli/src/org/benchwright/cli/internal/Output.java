package org.benchwright.cli.internal;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.UUID;

import org.benchwright.cli.Surroundings;
import org.benchwright.present.CannotStoreException;

/**
 * Files that a command makes.
 *
 * @param around what paths are told relative to
 */
record Output(Surroundings around) {

    /** Writes a file whole or not at all, in place of what was there, and says so. */
    void write(Path file, byte[] content, Screen screen) throws CannotStoreException {
        Path target = file.toAbsolutePath().normalize();
        try {
            Path beside = target.resolveSibling(target.getFileName() + "." + UUID.randomUUID() + ".part");
            try {
                Files.write(beside, content, StandardOpenOption.CREATE_NEW);
                move(beside, target);
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (IOException e) {
            throw new CannotStoreException(Message.OUT_REFUSED.text(file.toString(), Optional.ofNullable(e.getMessage()).orElse("")), e);
        }
        screen.line(Message.WRITTEN.text(file.toString()));
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException otherFileSystem) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
