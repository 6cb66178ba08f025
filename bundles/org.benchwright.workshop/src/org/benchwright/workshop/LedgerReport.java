package org.benchwright.workshop;

import java.util.List;

/**
 * What the verification of a ledger found, in its three lines.
 *
 * @param tests      tests looked at
 * @param events     events looked at
 * @param documents  plans, texts and attachments looked at
 * @param derived    tests whose decisions were derived again; one with broken links is not
 * @param signers    fingerprints of the keys that signed; compare them with a note kept elsewhere
 * @param links      what is wrong with links, places and documents
 * @param signatures what is wrong with signatures and checkpoints
 * @param decisions  what does not follow from the facts
 * @param leftOut    faults beyond those listed
 * @param open       tests that are not sealed and were derived; verified as far as they go
 * @param late       what was opened or signed on a bench that did not know the books as they stand before it here; no faults, but to be told
 * @param reviewsDue sealed tests that were drawn for a review which nobody has made yet, by id
 * @param withdrawn  attachments whose bytes were rightly taken away: by whom, why, and whether they are gone here; no faults, but to be told
 * @param bytesLeft  whether bytes of one of them are still here and have to be erased
 * @param benchKnown whether the key of the bench is known whose own ledger this is; if not, nothing says who made it
 * @param sound      true if everything was looked at and no fault was found
 */
public record LedgerReport(int tests, long events, long documents, int derived, List<String> signers, List<RecordFault> links,
        List<RecordFault> signatures, List<RecordFault> decisions, long leftOut, List<KeptTest> open, List<RecordFault> late,
        List<String> reviewsDue, List<RecordFault> withdrawn, boolean bytesLeft, boolean benchKnown, boolean sound) {

    public LedgerReport {
        signers = List.copyOf(signers);
        links = List.copyOf(links);
        signatures = List.copyOf(signatures);
        decisions = List.copyOf(decisions);
        open = List.copyOf(open);
        late = List.copyOf(late);
        reviewsDue = List.copyOf(reviewsDue);
        withdrawn = List.copyOf(withdrawn);
    }
}
