package org.benchwright.cli.internal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.benchwright.core.SheetTable;
import org.benchwright.present.CannotStoreException;
import org.benchwright.report.Csv;

/**
 * Files that a command makes.
 *
 * @param screen where it is said
 */
record Output(Screen screen) {

    /** How databases and keys begin. */
    private static final List<String> HEADS = List.of("SQLite format 3", "-----BEGIN ");
    private static final int LONGEST_HEAD = 16;

    /** Writes a text as a file of a folder, which is made if there is none, and says so. */
    void writeInto(Path folder, String name, String text) throws CannotStoreException {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw refused(folder.resolve(name), e);
        }
        write(folder.resolve(name), text.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Writes a table as CSV and as JSON where a command was asked to.
     *
     * @return whether it was
     */
    boolean writeAsked(Given given, SheetTable table) throws CannotStoreException {
        Optional<Path> csv = given.path("--csv");
        Optional<Path> json = given.path("--json");
        if (csv.isPresent()) {
            write(csv.get(), Csv.of(table).getBytes(StandardCharsets.UTF_8));
        }
        if (json.isPresent()) {
            write(json.get(), TableJson.of(table).getBytes(StandardCharsets.UTF_8));
        }
        return csv.isPresent() || json.isPresent();
    }

    /**
     * Writes a file whole or not at all, in place of what was there, and says so.
     *
     * @throws CannotStoreException if it can't be written, or what is there is a ledger or a key
     */
    void write(Path file, byte[] content) throws CannotStoreException {
        try {
            if (isRecord(file)) {
                throw refused(file, new IOException(Message.OUT_RECORD.text()));
            }
            replace(file, content);
        } catch (IOException e) {
            throw refused(file, e);
        }
        screen.line(Message.WRITTEN.text(file.toString()));
    }

    private static CannotStoreException refused(Path file, IOException why) {
        return new CannotStoreException(Message.OUT_REFUSED.text(file.toString(), reason(file, why)), why);
    }

    /** What the system says names files that nobody asked for, such as the one that is written first. */
    private static String reason(Path file, IOException why) {
        Path folder = file.toAbsolutePath().normalize().getParent();
        if (Files.isDirectory(file)) {
            return Message.OUT_IS_FOLDER.text();
        } else if (folder != null && !Files.isDirectory(folder)) {
            return Message.OUT_NO_FOLDER.text(folder.toString());
        } else if (why instanceof AccessDeniedException) {
            return Message.OUT_DENIED.text();
        }
        String words = why instanceof FileSystemException system ? system.getReason() : why.getMessage();
        return Optional.ofNullable(words).orElseGet(Message.OUT_DENIED::text);
    }

    /** A wrong name behind an option must not cost a bench its ledger, or its key. */
    private static boolean isRecord(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(file)) {
            String begin = new String(in.readNBytes(LONGEST_HEAD), StandardCharsets.ISO_8859_1);
            return HEADS.stream().anyMatch(begin::startsWith) || file.getFileName().toString().endsWith(".p12");
        }
    }

    /** First beside the file, then in its place: what is there is never half of something. */
    static void replace(Path file, byte[] content) throws IOException {
        Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath().normalize();
        Path beside = target.resolveSibling(target.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            Files.write(beside, content, StandardOpenOption.CREATE_NEW);
            move(beside, target);
        } finally {
            Files.deleteIfExists(beside);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException otherFileSystem) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
