package org.benchwright.cli.internal;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;

import org.benchwright.cli.Surroundings;
import org.benchwright.language.ApprovedRevisions;
import org.benchwright.present.ApprovedTexts;
import org.benchwright.present.ApprovedTextsNow;
import org.benchwright.present.CannotStoreException;

/** What was approved in a ledger, as the language asks for it; asked again and again it notices what is approved meanwhile. */
final class ApprovedInLedger implements Supplier<ApprovedRevisions> {

    private final ApprovedTextsNow ledger;
    private final Consumer<String> trouble;
    private ApprovedTexts read;
    private ApprovedRevisions known;
    private Optional<String> told = Optional.empty();

    private ApprovedInLedger(ApprovedTextsNow ledger, Consumer<String> trouble) throws CannotStoreException {
        this.ledger = ledger;
        this.trouble = trouble;
        read = ledger.now();
        known = revisions(read);
    }

    /**
     * Of the ledger that was named, else of the bench's own; a ledger that is not there yet has approved nothing.
     *
     * @param trouble is told when the ledger can't be read any more
     */
    static ApprovedInLedger watched(Given given, Surroundings around, Consumer<String> trouble) throws CannotStoreException {
        return new ApprovedInLedger(new ApprovedTextsNow(given.ledgerToRead(), around.clocks(), around.zone()), trouble);
    }

    /** The same, as it is now. */
    static ApprovedRevisions once(Given given, Surroundings around) throws CannotStoreException {
        return revisions(new ApprovedTextsNow(given.ledgerToRead(), around.clocks(), around.zone()).now());
    }

    private static ApprovedRevisions revisions(ApprovedTexts texts) {
        return (procedure, family, number) -> texts.text(procedure, family, number)
                .map(text -> new ApprovedRevisions.Approved(text, texts.free(procedure, family)));
    }

    /** What is approved now. While the ledger can't be read, what was known before, and that is said once. */
    @Override
    public synchronized ApprovedRevisions get() {
        try {
            ApprovedTexts now = ledger.now();
            if (now != read) {
                known = revisions(now);
                read = now;
            }
            told = Optional.empty();
        } catch (CannotStoreException unreadable) {
            if (!told.equals(Optional.of(unreadable.getMessage()))) {
                told = Optional.of(unreadable.getMessage());
                trouble.accept(unreadable.getMessage());
            }
        }
        return known;
    }
}
