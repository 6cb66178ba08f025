package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.time.ZoneId;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.present.ApprovedTexts;
import org.benchwright.present.ApprovedTextsNow;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;

/** What was approved in the bench's ledger, as the language asks for it. Not for the display's thread; one thread at a time. */
final class ApprovedInLedger {

    private final ApprovedTextsNow ledger;
    private ApprovedTexts read;
    private ApprovedRevisions known = ApprovedRevisions.none();

    /** @param ledger the ledger's file; need not exist yet */
    ApprovedInLedger(Path ledger) {
        this.ledger = new ApprovedTextsNow(ledger, Bench.Clocks.system(), ZoneId.systemDefault());
    }

    /**
     * What is approved now; the same object as long as nothing was written to the ledger.
     *
     * @throws CannotStoreException if the ledger can't be read, or its books are not as they were signed
     */
    ApprovedRevisions now() throws CannotStoreException {
        ApprovedTexts texts = ledger.now();
        if (texts != read) {
            known = (procedure, family, number) -> texts.text(procedure, family, number)
                    .map(text -> new ApprovedRevisions.Approved(text, texts.free(procedure, family)));
            read = texts;
        }
        return known;
    }
}
