package org.benchwright.ledger;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;

/**
 * What to verify, and how.
 *
 * @param ledger       the ledger's file
 * @param benchKey     the only key that may have signed; empty: any key is taken, and told
 * @param kept         checkpoints kept elsewhere, to compare with
 * @param testCheck    the third line, where it is wanted
 * @param progress     is told of events
 * @param cancellation may stop it between events
 */
public record VerificationRequest(Path ledger, Optional<SignerKey> benchKey, List<SignedCheckpoint> kept, Optional<TestCheck> testCheck,
        Progress progress, Cancellation cancellation) {

    public VerificationRequest {
        Objects.requireNonNull(ledger);
        Objects.requireNonNull(benchKey);
        kept = List.copyOf(kept);
        Objects.requireNonNull(testCheck);
        Objects.requireNonNull(progress);
        Objects.requireNonNull(cancellation);
    }

    /**
     * The ledger with the public bench key that lies beside it, if one does; two lines only.
     *
     * @throws BenchKeyException when the file of the public key can't be read
     */
    public static VerificationRequest of(Path ledger) throws BenchKeyException {
        return new VerificationRequest(ledger, BenchKeyStore.publicKey(BenchFolder.of(ledger).path()), List.of(), Optional.empty(),
                Progress.none(), Cancellation.never());
    }

    /** With the third line. */
    public VerificationRequest with(TestCheck check) {
        return new VerificationRequest(ledger, benchKey, kept, Optional.of(check), progress, cancellation);
    }

    /** With another bench key, such as the auditor's own copy. */
    public VerificationRequest with(SignerKey key) {
        return new VerificationRequest(ledger, Optional.of(key), kept, testCheck, progress, cancellation);
    }

    /** With somebody watching. */
    public VerificationRequest with(Progress teller, Cancellation stopper) {
        return new VerificationRequest(ledger, benchKey, kept, testCheck, teller, stopper);
    }

    /** Compared with checkpoints that were kept elsewhere. */
    public VerificationRequest against(List<SignedCheckpoint> checkpoints) {
        return new VerificationRequest(ledger, benchKey, checkpoints, testCheck, progress, cancellation);
    }
}
