package org.benchwright.ledger.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.benchwright.core.Digest;
import org.benchwright.ledger.DurableFiles;

/**
 * Large attachments as files in a folder beside the ledger. A file's name is made of its digest alone; no name from outside reaches a path.
 *
 * @param folder the folder
 */
public record Attachments(Path folder) {

    private static final int PREFIX = 2;

    /** The attachments of the ledger at {@code ledgerFile}. */
    public static Attachments beside(Path ledgerFile) {
        return new Attachments(ledgerFile.toAbsolutePath().getParent().resolve("attachments"));
    }

    /** Where the attachment with {@code digest} lies, whether or not it is there. */
    public Path file(Digest digest) {
        return folder.resolve(digest.hex().substring(0, PREFIX)).resolve(digest.hex().substring(PREFIX));
    }

    /** Whether something lies there that can be one: in a pipe one waits for ever, and a file may be said to be longer than anybody reads. */
    public boolean has(Digest digest) throws IOException {
        Path file = file(digest);
        return Files.isRegularFile(file) && Files.size(file) <= DocumentTable.LARGEST;
    }

    /** Puts the attachment into its place; durable when this returns. */
    void write(Digest digest, byte[] content) throws IOException {
        Path file = file(digest);
        Files.createDirectories(file.getParent());
        DurableFiles.syncFolder(folder.getParent());
        DurableFiles.syncFolder(folder);
        DurableFiles.write(file, content);
    }
}
