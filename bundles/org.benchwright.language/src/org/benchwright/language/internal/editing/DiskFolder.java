package org.benchwright.language.internal.editing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.language.LanguageServices;
import org.benchwright.language.internal.ReadText;

/** The families and procedures of one folder on the disk, and which of them have changed since they were last read. */
final class DiskFolder {

    private final Path folder;
    private final Map<Path, Stamp> read = new HashMap<>();

    /** What tells that a file is another one than before. */
    private record Stamp(FileTime modified, long size) {
    }

    DiskFolder(Path folder) {
        this.folder = folder;
    }

    Path folder() {
        return folder;
    }

    /** Makes a file be read again by the next {@link #look}. */
    void forget(Path file) {
        read.remove(file);
    }

    /** None where the folder can't be read. */
    private List<Path> files() {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(LanguageServices::isOurs).sorted().toList();
        } catch (IOException | UncheckedIOException unreadable) {
            // A folder that is gone holds no files; an open editor still shows its own text.
            return List.of();
        }
    }

    /**
     * What there is in the folder.
     *
     * @param present its files
     * @param changed those that are new or have changed, read
     */
    record Look(List<Path> present, List<ReadText> changed) {
    }

    /** Looks at the folder, and reads what has changed since the last look. */
    Look look() {
        List<Path> present = files();
        // A file that comes back is to be read, even if it is what it was.
        read.keySet().retainAll(Set.copyOf(present));
        List<ReadText> changed = new ArrayList<>();
        for (Path file : present) {
            Optional<Stamp> stamp = stamp(file);
            if (stamp.isEmpty() || !stamp.get().equals(read.get(file))) {
                changed.add(ReadText.read(file));
                stamp.ifPresent(known -> read.put(file, known));
            }
        }
        return new Look(present, changed);
    }

    private static Optional<Stamp> stamp(Path file) {
        try {
            BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
            return Optional.of(new Stamp(attributes.lastModifiedTime(), attributes.size()));
        } catch (IOException unreadable) {
            // Reading it will say what is the matter.
            return Optional.empty();
        }
    }
}
