package org.benchwright.ledger;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.Attachments;
import org.benchwright.ledger.internal.BackupFile;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.SqliteFile;

/**
 * Copies of a bench's ledger in folders of their own, and back. A copy is one unchanging view of the ledger, whoever writes meanwhile, with all
 * attachments, the bench's public key and the newest checkpoint. It appears whole or not at all, and never in place of something else.
 */
public final class LedgerBackup {

    /** Name of the ledger in a backup. */
    public static final String LEDGER = "bench.ledger";
    /** Name of the checkpoint in a backup; not there while nothing was signed. */
    public static final String CHECKPOINT = "checkpoint.json";

    private static final List<String> KEYS = List.of(BenchKeyStore.SECRET_FILE, "people");

    private LedgerBackup() {
    }

    /**
     * Writes a backup. Whether it is sound is for the {@link LedgerVerifier} to say of it.
     *
     * @param ledger   the ledger's file
     * @param folder   must not be there
     * @param withKeys whether the secret keys are copied too; whoever has the backup then can sign as the bench
     * @return the ledger in the backup
     * @throws LedgerPlaceTakenException when something is there
     * @throws LedgerFullException       when there is no room for it
     */
    public static Path write(Path ledger, Path folder, boolean withKeys) throws LedgerException {
        if (Files.exists(folder)) {
            throw new LedgerPlaceTakenException(Messages.text("backupThere", folder));
        }
        return inFull(folder, part -> {
            Path copy = part.resolve(LEDGER);
            try (SqliteFile source = SqliteFile.openReadOnly(ledger, LedgerOptions.standard())) {
                BackupFile.vacuumInto(source, copy);
            }
            attachments(copy, Attachments.beside(BenchFolder.file(ledger)));
            Path home = BenchFolder.of(ledger).path();
            copy(home.resolve(BenchKeyStore.PUBLIC_FILE), part.resolve(BenchKeyStore.PUBLIC_FILE));
            if (withKeys) {
                for (String name : KEYS) {
                    copy(home.resolve(name), part.resolve(name));
                }
            }
            checkpoint(copy, part);
        });
    }

    /**
     * Makes a bench folder out of a backup.
     *
     * @param backup the backup's folder
     * @param ledger where the ledger is to be; its folder must be empty, or not there
     * @throws LedgerPlaceTakenException when something is there
     * @throws LedgerMissingException    when there is no backup
     */
    public static void restore(Path backup, Path ledger) throws LedgerException {
        Path folder = BenchFolder.of(ledger).path();
        Path source = backup.resolve(LEDGER);
        if (!Files.isRegularFile(source)) {
            throw new LedgerMissingException(Messages.text("backupMissing", backup));
        }
        try {
            if (Files.exists(folder)) {
                requireEmpty(folder);
                Files.delete(folder);
            }
        } catch (IOException failure) {
            throw BackupFile.translated(failure, folder);
        }
        inFull(folder, part -> {
            Path copy = part.resolve(ledger.getFileName());
            try (SqliteFile open = SqliteFile.openReadOnly(source, LedgerOptions.standard())) {
                BackupFile.vacuumInto(open, copy);
            }
            attachments(copy, Attachments.beside(BenchFolder.file(source)));
            copy(backup.resolve(BenchKeyStore.PUBLIC_FILE), part.resolve(BenchKeyStore.PUBLIC_FILE));
            for (String name : KEYS) {
                copy(backup.resolve(name), part.resolve(name));
            }
        });
    }

    private static void requireEmpty(Path folder) throws IOException, LedgerPlaceTakenException {
        try (Stream<Path> inside = Files.list(folder)) {
            if (inside.findAny().isPresent()) {
                throw new LedgerPlaceTakenException(Messages.text("restoreThere", folder));
            }
        }
    }

    @FunctionalInterface
    private interface Filling {
        void into(Path part) throws IOException, LedgerException;
    }

    /** Fills a folder beside the wanted one, and gives it its name at the end. */
    private static Path inFull(Path folder, Filling filling) throws LedgerException {
        Path target = folder.toAbsolutePath().normalize();
        Path part = target.resolveSibling(target.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            Files.createDirectories(target.getParent());
            Files.createDirectory(part);
            try {
                filling.into(part);
                BackupFile.sync(part);
                Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
                DurableFiles.syncFolder(target.getParent());
            } finally {
                delete(part);
            }
            return target.resolve(LEDGER);
        } catch (LedgerFullException full) {
            // What was half there is gone again; its name says nothing to anybody.
            throw new LedgerFullException(Messages.text("full", folder), full);
        } catch (FileAlreadyExistsException taken) {
            throw new LedgerPlaceTakenException(Messages.text("backupThere", folder), taken);
        } catch (IOException failure) {
            throw BackupFile.translated(failure, folder);
        }
    }

    private static void attachments(Path copy, Attachments from) throws IOException, LedgerException {
        Attachments to = Attachments.beside(copy);
        List<Digest> beside;
        try (SqliteFile file = SqliteFile.openReadOnly(copy, LedgerOptions.standard())) {
            beside = BackupFile.attachmentsBeside(file);
        }
        for (Digest digest : beside) {
            // One that lacks, or was changed, is what verification of the copy will name.
            if (from.has(digest)) {
                Files.createDirectories(to.file(digest).getParent());
                Files.copy(from.file(digest), to.file(digest));
            }
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        if (Files.isRegularFile(from)) {
            Files.copy(from, to, StandardCopyOption.COPY_ATTRIBUTES);
        } else if (Files.isDirectory(from)) {
            Files.createDirectory(to);
            List<Path> inside;
            try (Stream<Path> files = Files.list(from)) {
                inside = files.filter(Files::isRegularFile).toList();
            }
            for (Path file : inside) {
                copy(file, to.resolve(file.getFileName()));
            }
        }
    }

    private static void checkpoint(Path copy, Path part) throws IOException, LedgerException {
        try (Ledger ledger = SqliteLedger.openReadOnly(copy)) {
            String text = new LedgerProofs(ledger).latest().text();
            Files.write(part.resolve(CHECKPOINT), text.getBytes(StandardCharsets.UTF_8));
        } catch (NoProofException nothingSigned) {
            return;
        }
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        List<Path> all = new ArrayList<>();
        try (Stream<Path> files = Files.walk(folder)) {
            files.sorted(Comparator.reverseOrder()).forEach(all::add);
        }
        for (Path file : all) {
            Files.deleteIfExists(file);
        }
    }
}
