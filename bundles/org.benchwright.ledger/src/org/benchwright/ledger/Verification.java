package org.benchwright.ledger;

import java.util.List;

/**
 * What a verification found.
 *
 * @param faults        the faults, in the order in which they were found
 * @param faultsLeftOut number of further faults that are not listed
 * @param events        number of events looked at
 * @param documents     number of documents looked at
 * @param tests         the tests, in the order in which they were opened
 * @param signers       keys that signed here and whose rows are in order; compare their fingerprints with a note kept elsewhere
 * @param late          signatures of people on a bench that did not know the register as it stands before them here; no faults
 * @param withdrawn     attachments that signed events took away, in order; whether their signers may is for a {@link TestCheck}
 * @param complete      false when somebody stopped it before the end
 */
public record Verification(List<Fault> faults, long faultsLeftOut, long events, long documents, List<VerifiedTest> tests,
        List<SignerKey> signers, List<LateArrival> late, List<Withdrawal> withdrawn, boolean complete) {

    public Verification {
        faults = List.copyOf(faults);
        tests = List.copyOf(tests);
        signers = List.copyOf(signers);
        late = List.copyOf(late);
        withdrawn = List.copyOf(withdrawn);
    }

    /** Whether everything was looked at and nothing was found. */
    public boolean clean() {
        return complete && faults.isEmpty();
    }
}
