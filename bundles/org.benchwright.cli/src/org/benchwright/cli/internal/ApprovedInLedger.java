package org.benchwright.cli.internal;

import org.benchwright.cli.Surroundings;
import org.benchwright.language.ApprovedRevisions;
import org.benchwright.present.ApprovedTexts;
import org.benchwright.present.Approving;
import org.benchwright.present.CannotStoreException;

/** What was approved in a ledger, as the language asks for it. */
final class ApprovedInLedger {

    private ApprovedInLedger() {
    }

    /** Of the ledger that was named, else of the bench's own; a ledger that is not there yet has approved nothing. */
    static ApprovedRevisions of(Given given, Surroundings around) throws CannotStoreException {
        ApprovedTexts texts = new Approving(given.ledgerToRead(), around.clocks(), around.zone()).texts();
        return (procedure, family, number) -> texts.text(procedure, family, number)
                .map(text -> new ApprovedRevisions.Approved(text, texts.free(procedure, family)));
    }
}
