package org.benchwright.ui.internal.author;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.present.ApprovedTexts;
import org.benchwright.present.Approving;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;

/** What was approved in the bench's ledger, read again when its files have changed. Not for the display's thread; one thread at a time. */
final class ApprovedInLedger {

    private final Path ledger;
    private List<FileTime> read = List.of();
    private ApprovedRevisions known = ApprovedRevisions.none();

    /** @param ledger the ledger's file; need not exist yet */
    ApprovedInLedger(Path ledger) {
        this.ledger = ledger;
    }

    /**
     * What is approved now.
     *
     * @throws CannotStoreException if the ledger can't be read, or its books are not as they were signed
     */
    ApprovedRevisions now() throws CannotStoreException {
        List<FileTime> times = times();
        if (!times.equals(read)) {
            ApprovedTexts texts = new Approving(ledger, Bench.Clocks.system(), ZoneId.systemDefault()).texts();
            known = (procedure, family, number) -> texts.text(procedure, family, number)
                    .map(text -> new ApprovedRevisions.Approved(text, texts.free(procedure, family)));
            read = times;
        }
        return known;
    }

    /** What was written last may still stand in the journal beside the file. */
    private List<FileTime> times() throws CannotStoreException {
        List<FileTime> times = new ArrayList<>();
        for (Path file : List.of(ledger, ledger.resolveSibling(ledger.getFileName() + "-wal"))) {
            try {
                if (Files.exists(file)) {
                    times.add(Files.getLastModifiedTime(file));
                }
            } catch (IOException unreadable) {
                throw new CannotStoreException(String.valueOf(unreadable.getMessage()), unreadable);
            }
        }
        return times;
    }
}
