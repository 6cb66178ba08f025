package org.benchwright.present;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;

import org.benchwright.engine.RefusedException;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.Reports;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchProofs;
import org.benchwright.workshop.StoreException;

/** What can be shown of a ledger to people who don't have it, as texts of small files; and comparing a ledger with such a file. */
public final class Proving {

    private Proving() {
    }

    /**
     * The ledger's newest checkpoint, to be kept elsewhere.
     *
     * @throws EntryRefusedException if nothing was signed yet
     * @throws CannotStoreException  if the ledger can't be read
     */
    public static String checkpoint(Path ledger) throws EntryRefusedException, CannotStoreException {
        return proved(ledger, BenchProofs::checkpoint);
    }

    /**
     * A proof that a test is in the ledger.
     *
     * @param event      number of the event to prove, with all before it; empty: the last that can be
     * @param withEvents whether to put the earlier events into the file
     * @throws EntryRefusedException if there is no such test, or no checkpoint tells of it yet
     * @throws CannotStoreException  if the ledger can't be read, or does not lead to its own checkpoint
     */
    public static String inclusion(Path ledger, String test, OptionalLong event, boolean withEvents)
            throws EntryRefusedException, CannotStoreException {
        return proved(ledger, proofs -> proofs.inclusion(test, event, withEvents)
                .orElseThrow(() -> new RefusedException(Message.REFUSED_NO_TEST.text(test))));
    }

    /**
     * A proof that what a kept checkpoint tells of is the beginning of what the ledger holds now.
     *
     * @param kept the kept file's text
     * @throws EntryRefusedException if it is no checkpoint, or the ledger does not agree with it
     * @throws CannotStoreException  if the ledger can't be read
     */
    public static String consistency(Path ledger, String kept) throws EntryRefusedException, CannotStoreException {
        return proved(ledger, proofs -> proofs.consistency(kept));
    }

    /**
     * Verifies a ledger and compares it with kept checkpoints. Nothing is made or changed.
     *
     * @param kept the kept files' texts
     * @throws EntryRefusedException if one of them is no checkpoint
     * @throws CannotStoreException  if there is no ledger, or it can't be read as one at all
     */
    public static VerificationReport verify(Path ledger, Bench.Clocks clocks, List<String> kept)
            throws EntryRefusedException, CannotStoreException {
        try {
            return Reports.of(BenchLedger.verify(ledger, kept), clocks.clock().instant());
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }

    private interface Asking {
        String of(BenchProofs proofs) throws RefusedException, StoreException;
    }

    private static String proved(Path ledger, Asking asking) throws EntryRefusedException, CannotStoreException {
        try (BenchLedger open = BenchLedger.openReadOnly(ledger)) {
            return asking.of(open.proofs());
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }
}
