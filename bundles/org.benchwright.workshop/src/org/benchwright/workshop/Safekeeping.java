package org.benchwright.workshop;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.io.IOException;
import java.time.Year;
import java.util.List;

import org.benchwright.engine.RefusedException;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerBackup;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerPlaceTakenException;
import org.benchwright.ledger.NoProofException;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.YearArchive;
import org.benchwright.workshop.internal.LedgerWork;

/** Copies of a ledger: backups, what is made of them again, and archives of a year. */
public final class Safekeeping {

    private Safekeeping() {
    }

    /**
     * Writes a backup into a folder that must not be there, and verifies it.
     *
     * @param withKeys whether the bench's and people's secret keys are copied too
     * @throws RefusedException if something is there
     */
    public static LedgerReport backup(Path ledger, Path folder, boolean withKeys) throws RefusedException, StoreException {
        Path copy = done(() -> LedgerBackup.write(ledger, folder, withKeys));
        Path checkpoint = folder.resolve(LedgerBackup.CHECKPOINT);
        try {
            return BenchLedger.verify(copy, Files.exists(checkpoint) ? List.of(Files.readString(checkpoint, StandardCharsets.UTF_8)) : List.of());
        } catch (IOException failure) {
            throw new StoreException(String.valueOf(failure.getMessage()), failure);
        }
    }

    /**
     * Makes a bench folder out of a backup, in an empty place, and verifies it.
     *
     * @param kept texts of checkpoints kept elsewhere: what lacks against them is among the faults
     * @throws RefusedException if the place is not empty, there is no backup, or a text is no checkpoint
     */
    public static LedgerReport restore(Path backup, Path ledger, List<String> kept) throws RefusedException, StoreException {
        done(() -> {
            LedgerBackup.restore(backup, ledger);
            return Boolean.TRUE;
        });
        return BenchLedger.verify(ledger, kept);
    }

    /**
     * What an archive holds.
     *
     * @param tests       tests in it
     * @param events      events of tests and books
     * @param documents   documents in it
     * @param checkpoint  number of the checkpoint under which they stand
     * @param fingerprint of the key that signed that checkpoint; compare it with a note kept elsewhere
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
     * @throws RefusedException if something is there, or nothing was signed yet
     */
    public static Archive archive(Path ledger, Year year, Path file) throws RefusedException, StoreException {
        return done(() -> {
            try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
                return archive(YearArchive.write(open, year, file));
            }
        });
    }

    /** Checks an archive by itself. */
    public static Archive check(Path file) throws RefusedException, StoreException {
        return done(() -> archive(YearArchive.check(file)));
    }

    private static Archive archive(YearArchive.Content content) {
        return new Archive(content.tests(), content.events(), content.documents(), content.checkpoint().checkpoint().number(),
                content.checkpoint().key().fingerprint().hex(), content.faults());
    }

    private interface Work<T> {
        T done() throws LedgerException;
    }

    private static <T> T done(Work<T> work) throws RefusedException, StoreException {
        try {
            return work.done();
        } catch (LedgerPlaceTakenException | NoProofException refused) {
            throw new RefusedException(refused.getMessage());
        } catch (LedgerException failure) {
            throw LedgerWork.failed(failure);
        }
    }
}
