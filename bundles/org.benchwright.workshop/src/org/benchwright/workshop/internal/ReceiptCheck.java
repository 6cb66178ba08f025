package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.engine.RefusedException;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.StoreException;

/** The book of receipts under verification: its own rules again, and the tests that it names. */
final class ReceiptCheck {

    private final TestsOfUnit tests;
    private final ReceiptHistory history;
    private final List<Fault> faults = new ArrayList<>();

    ReceiptCheck(Ledger documents, ReceiptHistory history) {
        this.tests = new TestsOfUnit(documents);
        this.history = history;
    }

    List<Fault> faults() throws StoreException, FaultyRecordException {
        history.objections().forEach(objection -> fault(objection.sequence(), objection.words()));
        Map<String, TestsOfUnit.Opening> openings = new HashMap<>();
        List<TestsOfUnit.Opening> all = tests.openings();
        all.forEach(opening -> openings.put(opening.test().value(), opening));
        List<LedgerEntry> repairs = new ArrayList<>();
        List<ReceiptFact.Repaired> repaired = new ArrayList<>();
        history.each((entry, fact) -> {
            if (fact instanceof ReceiptFact.Received received) {
                received.earlier().filter(test -> !earlier(Optional.ofNullable(openings.get(test)), received.unit(), entry))
                        .ifPresent(test -> fault(entry.sequence(), Message.FAULT_NO_EARLIER.text(test)));
            } else if (fact instanceof ReceiptFact.Repaired mended) {
                repairs.add(entry);
                repaired.add(mended);
            }
        });
        for (int i = 0; i < repairs.size(); i++) {
            repaired(repairs.get(i), repaired.get(i), all);
        }
        return faults;
    }

    private static boolean earlier(Optional<TestsOfUnit.Opening> opening, String unit, LedgerEntry entry) {
        return opening.filter(test -> test.opened().serial().equals(unit) && !test.opened().rehearsal()
                && test.entry().position() < entry.position()).isPresent();
    }

    private void repaired(LedgerEntry entry, ReceiptFact.Repaired repaired, List<TestsOfUnit.Opening> all) throws StoreException {
        Optional<TestId> test = TestId.parse(repaired.test());
        try {
            String mended = tests.requireMendable(test.orElseThrow(() -> new RefusedException(Message.RETURN_NO_TEST.text(repaired.test()))),
                    entry.position(), unit -> all);
            if (!mended.equals(repaired.unit())) {
                fault(entry.sequence(), Message.FAULT_REPAIR_UNIT.text(repaired.unit(), repaired.test(), mended));
            }
        } catch (RefusedException | FaultyRecordException refused) {
            fault(entry.sequence(), Message.FAULT_NOT_MENDABLE.text(repaired.test(), refused.getMessage()));
        }
    }

    private void fault(long sequence, String words) {
        faults.add(Fault.of(TestId.RECEIPTS, sequence, FaultKind.DECISION_DIFFERS, words));
    }
}
