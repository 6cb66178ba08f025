package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.RecordFault;
import org.benchwright.workshop.StoreException;

/**
 * The decisions of a ledger, derived again from the facts in it with the plans kept in it.
 *
 * @param tests  tests looked at
 * @param events events that were derived again or found to be facts that the test takes
 * @param faults what does not follow
 * @param open   tests that are not sealed; verified as far as they go
 */
public record DecisionCheck(int tests, long events, List<RecordFault> faults, List<KeptTest> open) {

    public DecisionCheck {
        faults = List.copyOf(faults);
        open = List.copyOf(open);
    }

    /**
     * Derives every test of the ledger again.
     *
     * @throws LedgerException if the ledger can't be read at all; a single test that can't be read is a fault
     */
    public static DecisionCheck of(Ledger ledger) throws LedgerException {
        KeptTests reader = new KeptTests();
        List<RecordFault> faults = new ArrayList<>();
        List<KeptTest> open = new ArrayList<>();
        long events = 0;
        List<TestId> tests = ledger.tests();
        for (TestId test : tests) {
            try {
                KeptTest kept = reader.read(ledger, test);
                events += kept.run().lastSequence();
                if (kept.sealed() && !kept.run().ended()) {
                    faults.add(new RecordFault(test.value(), 0, "", Message.FAULT_SEALED_OPEN.text()));
                } else if (!kept.sealed()) {
                    open.add(kept);
                }
            } catch (FaultyRecordException e) {
                faults.add(e.fault());
            } catch (StoreException e) {
                faults.add(new RecordFault(test.value(), 0, "", Message.FAULT_UNREADABLE.text(e.getMessage())));
            }
        }
        return new DecisionCheck(tests.size(), events, faults, open);
    }
}
