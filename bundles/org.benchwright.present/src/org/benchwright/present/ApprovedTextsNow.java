package org.benchwright.present;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was ever approved in a ledger, read again when its files have changed. Not for a display's thread; any thread may ask. */
public final class ApprovedTextsNow {

    private final Path ledger;
    private final Bench.Clocks clocks;
    private final ZoneId zone;
    private List<FileTime> read = List.of();
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
        List<FileTime> times = times();
        if (known.isEmpty() && failure.isEmpty() || !times.equals(read)) {
            read = times;
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
