package org.benchwright.present;

import java.nio.file.Path;
import java.time.Year;
import java.util.List;

import org.benchwright.engine.RefusedException;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.Reports;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.Safekeeping;
import org.benchwright.workshop.StoreException;

/** Copies of a ledger: backups, what is made of them again, and archives of a year. */
public final class Copies {

    private Copies() {
    }

    /**
     * Writes a backup into a folder that must not be there, and verifies it.
     *
     * @throws EntryRefusedException if something is there
     */
    public static VerificationReport backup(Path ledger, Path folder, boolean withKeys, Bench.Clocks clocks)
            throws EntryRefusedException, CannotStoreException {
        return report(clocks, () -> Safekeeping.backup(ledger, folder, withKeys));
    }

    /**
     * Makes a bench folder out of a backup, in an empty place, and verifies it.
     *
     * @param kept texts of checkpoints kept elsewhere: what lacks against them is among the faults
     * @throws EntryRefusedException if the place is not empty
     */
    public static VerificationReport restore(Path backup, Path ledger, List<String> kept, Bench.Clocks clocks)
            throws EntryRefusedException, CannotStoreException {
        return report(clocks, () -> Safekeeping.restore(backup, ledger, kept));
    }

    /**
     * What an archive holds.
     *
     * @param tests       tests in it
     * @param events      events of tests and books
     * @param documents   documents in it
     * @param checkpoint  number of the checkpoint under which they stand
     * @param fingerprint of the key that signed that checkpoint
     * @param faults      what is wrong
     */
    public record Archive(long tests, long events, long documents, long checkpoint, String fingerprint, List<String> faults) {

        public Archive {
            faults = List.copyOf(faults);
        }
    }

    /**
     * Writes the tests that were sealed in a year into a file that must not be there, and checks it.
     *
     * @throws EntryRefusedException if something is there, or nothing was signed yet
     */
    public static Archive archive(Path ledger, Year year, Path file) throws EntryRefusedException, CannotStoreException {
        return archive(() -> Safekeeping.archive(ledger, year, file));
    }

    /** Checks an archive by itself. */
    public static Archive check(Path file) throws EntryRefusedException, CannotStoreException {
        return archive(() -> Safekeeping.check(file));
    }

    private interface Work<T> {
        T done() throws RefusedException, StoreException;
    }

    private static VerificationReport report(Bench.Clocks clocks, Work<LedgerReport> work) throws EntryRefusedException, CannotStoreException {
        return Reports.of(asked(work), clocks.clock().instant());
    }

    private static Archive archive(Work<Safekeeping.Archive> work) throws EntryRefusedException, CannotStoreException {
        Safekeeping.Archive found = asked(work);
        return new Archive(found.tests(), found.events(), found.documents(), found.checkpoint(), found.fingerprint(), found.faults());
    }

    private static <T> T asked(Work<T> work) throws EntryRefusedException, CannotStoreException {
        try {
            return work.done();
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }
}
