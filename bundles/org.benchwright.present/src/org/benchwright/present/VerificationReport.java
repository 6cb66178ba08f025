package org.benchwright.present;

import java.util.List;
import java.util.Optional;

/**
 * What the verification of a ledger found.
 *
 * @param lines   the three lines: links, signatures, decisions
 * @param signers fingerprints of the keys that signed
 * @param open    tests that are not sealed; verified as far as they go
 * @param late    what was done on a bench that did not know the books as they stand before it here; no faults, but to be told
 * @param reviews sealed tests that were drawn for a review which nobody has made yet, by id
 * @param withdrawn attachments that were rightly taken away: by whom and why
 * @param bytesLeft whether bytes of one of them are still here: {@link Auditing#endWithdrawals} ends that
 * @param whose   what to do where nothing says whose ledger it is; empty where the bench's key is known, or nothing was signed
 * @param sound   true if everything was looked at and no fault was found
 */
public record VerificationReport(List<Line> lines, List<String> signers, List<UnitRow> open, List<String> late, List<String> reviews,
        List<String> withdrawn, boolean bytesLeft, Optional<String> whose, boolean sound) {

    public VerificationReport {
        lines = List.copyOf(lines);
        signers = List.copyOf(signers);
        open = List.copyOf(open);
        late = List.copyOf(late);
        reviews = List.copyOf(reviews);
        withdrawn = List.copyOf(withdrawn);
    }

    /**
     * A line of the verification.
     *
     * @param words  what was verified, how much of it, and how many faults there are
     * @param faults each fault with test, event and reason
     */
    public record Line(String words, List<String> faults) {
        public Line {
            faults = List.copyOf(faults);
        }
    }
}
