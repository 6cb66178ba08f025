package org.benchwright.workshop.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.benchwright.core.Digest;
import org.benchwright.engine.RefusedException;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.WithdrawnDocumentException;
import org.benchwright.workshop.StoreException;

/**
 * Keeps files that people attach.
 *
 * @param ledger where
 */
public record FileKeeper(Ledger ledger) {

    /** The largest file that can be attached, in bytes. */
    public static final long LARGEST = 50L * 1024 * 1024;

    /**
     * Keeps a file.
     *
     * @return its digest
     * @throws RefusedException if it can't be read, is too large, or was withdrawn before
     */
    public Digest keep(Path file) throws RefusedException, StoreException {
        if (!Files.isRegularFile(file)) {
            throw new RefusedException(Message.ATTACHMENT_NO_FILE.text(file.toString()));
        }
        try {
            if (Files.size(file) > LARGEST) {
                throw new RefusedException(Message.ATTACHMENT_TOO_LARGE.text(file.toString(), String.valueOf(LARGEST >> 20)));
            }
            return ledger.keep(Files.readAllBytes(file), DocumentKind.ATTACHMENT);
        } catch (IOException e) {
            throw new RefusedException(Message.ATTACHMENT_UNREADABLE.text(file.toString(), String.valueOf(e.getMessage())));
        } catch (WithdrawnDocumentException e) {
            throw new RefusedException(Message.ATTACHMENT_WITHDRAWN.text(file.toString()));
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        }
    }
}
