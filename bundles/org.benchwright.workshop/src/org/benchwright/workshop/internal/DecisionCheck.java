package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.TestCheck;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.StoreException;

/** The third line of verification: decisions derived again from the facts in the ledger, with the plans kept in it. */
public final class DecisionCheck implements TestCheck {

    private final Ledger documents;
    private final KeptTests reader = new KeptTests();
    private final List<KeptTest> open = new ArrayList<>();
    private int derived;

    /** @param documents where plans and texts are read from */
    public DecisionCheck(Ledger documents) {
        this.documents = documents;
    }

    @Override
    public List<Fault> check(TestId test, List<LedgerEntry> entries) {
        try {
            KeptTest kept = reader.derive(documents, test, entries);
            derived++;
            if (kept.sealed() && !kept.run().ended()) {
                return List.of(fault(test, entries.size(), Message.FAULT_SEALED_OPEN.text()));
            } else if (!kept.sealed()) {
                open.add(kept);
            }
            return List.of();
        } catch (FaultyRecordException e) {
            return List.of(fault(test, e.fault().sequence(), e.fault().reason()));
        } catch (StoreException e) {
            return List.of(fault(test, 1, Message.FAULT_UNREADABLE.text(e.getMessage())));
        }
    }

    private static Fault fault(TestId test, long sequence, String words) {
        return Fault.of(test, sequence, FaultKind.DECISION_DIFFERS, words);
    }

    /** Tests that are not sealed, as far as they go. */
    public List<KeptTest> open() {
        return List.copyOf(open);
    }

    /** How many tests follow from their facts. */
    public int derived() {
        return derived;
    }
}
