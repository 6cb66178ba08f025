package org.benchwright.present;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;

/** What was ever approved in a ledger, read again when its files have changed. Not for a display's thread; any thread may ask. */
public final class ApprovedTextsNow {

    private final Path ledger;
    private final Bench.Clocks clocks;
    private final ZoneId zone;
    private FilesSeen read = FilesSeen.NEVER;
    private Optional<ApprovedTexts> known = Optional.empty();
    private Optional<CannotStoreException> failure = Optional.empty();

    /**
     * @param ledger the ledger's file; need not exist yet
     * @param clocks the time of the bench
     * @param zone   where the bench stands
     */
    public ApprovedTextsNow(Path ledger, Bench.Clocks clocks, ZoneId zone) {
        this.ledger = ledger;
        this.clocks = clocks;
        this.zone = zone;
    }

    /**
     * What is approved now; the same object as long as nothing was signed about a revision, whatever else is written to the ledger.
     *
     * @throws CannotStoreException if the ledger can't be read, or its books are not as they were signed; the same one until the ledger's
     *                              files have changed, for it is not tried again before
     */
    public synchronized ApprovedTexts now() throws CannotStoreException {
        FilesSeen seen = read.look(FilesSeen.ofLedger(ledger));
        if (seen.mayHoldMoreThan(read)) {
            read = seen;
            look();
        }
        if (failure.isPresent()) {
            throw failure.get();
        }
        return known.get();
    }

    private void look() {
        try {
            ApprovedTexts now = new Approving(ledger, clocks, zone).texts();
            known = known.filter(now::equals).or(() -> Optional.of(now));
            failure = Optional.empty();
        } catch (CannotStoreException unreadable) {
            failure = Optional.of(unreadable);
        }
    }
}
