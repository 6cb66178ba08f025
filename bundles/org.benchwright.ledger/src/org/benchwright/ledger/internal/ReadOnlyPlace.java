package org.benchwright.ledger.internal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Where a ledger is read from. A file in WAL mode needs small files beside it even for reading; in a folder that can't be written to (a
 * backup medium, an auditor without rights) it is read as an immutable file, or, when it has a log with changes not yet in it, from a copy.
 *
 * @param uri  what SQLite opens
 * @param copy folder of the copy, deleted afterwards
 */
record ReadOnlyPlace(String uri, Optional<Path> copy) implements AutoCloseable {

    /** The file where it lies. */
    static ReadOnlyPlace inPlace(Path file) {
        return new ReadOnlyPlace(file.toUri().toString(), Optional.empty());
    }

    /** The same file when SQLite could not open it where it lies. */
    static ReadOnlyPlace refusing(Path file) throws IOException {
        Path log = beside(file, "-wal");
        if (!Files.exists(log) || Files.size(log) == 0) {
            return new ReadOnlyPlace(file.toUri() + "?immutable=1", Optional.empty());
        }
        Path folder = Files.createTempDirectory("ledger-copy");
        ReadOnlyPlace place = new ReadOnlyPlace(folder.resolve(file.getFileName()).toUri().toString(), Optional.of(folder));
        try {
            Files.copy(file, folder.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
            Files.copy(log, folder.resolve(log.getFileName()), StandardCopyOption.REPLACE_EXISTING);
            return place;
        } catch (IOException failure) {
            place.close();
            throw failure;
        }
    }

    private static Path beside(Path file, String suffix) {
        return file.resolveSibling(file.getFileName() + suffix);
    }

    @Override
    public void close() {
        copy.ifPresent(ReadOnlyPlace::delete);
    }

    private static void delete(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            List<Path> inner = files.sorted(Comparator.reverseOrder()).toList();
            for (Path file : inner) {
                Files.deleteIfExists(file);
            }
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }
}
