package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Digest;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.ledger.EntrySignature;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.LateArrival;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.StoreException;

/** The book of receipts under verification: its own rules again, and the tests that it names. */
final class ReceiptCheck {

    private final TestsOfUnit tests;
    private final ReceiptHistory history;
    private final PeopleHistory people;
    private final Optional<Digest> bench;
    private final List<Fault> faults = new ArrayList<>();
    private final List<LateArrival> late = new ArrayList<>();

    /** @param bench fingerprint of the bench's key, where the ledger is known to be one bench's own */
    ReceiptCheck(Ledger documents, ReceiptHistory history, PeopleHistory people, Optional<Digest> bench) {
        this.tests = new TestsOfUnit(documents);
        this.history = history;
        this.people = people;
        this.bench = bench;
    }

    List<Fault> faults() throws StoreException, FaultyRecordException {
        history.objections().forEach(objection -> fault(objection.sequence(), objection.words()));
        Map<String, TestsOfUnit.Opening> openings = new HashMap<>();
        List<TestsOfUnit.Opening> all = tests.openings();
        all.forEach(opening -> openings.put(opening.test().value(), opening));
        List<LedgerEntry> repairs = new ArrayList<>();
        List<ReceiptFact.Repaired> repaired = new ArrayList<>();
        history.each((entry, fact) -> {
            if (!(fact instanceof ReceiptFact.AttachmentWithdrawn)) {
                people.notByTheBench(entry).ifPresent(words -> fault(entry.sequence(), words));
            }
            if (fact instanceof ReceiptFact.Received received) {
                received.earlier().ifPresent(test -> earlier(test, Optional.ofNullable(openings.get(test)), received.unit(), entry));
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

    /** What other benches told of tests that have not arrived here; asked behind {@link #faults()}. */
    List<LateArrival> late() {
        return late;
    }

    /**
     * Whether another bench told it, or may have: what stood before it there is not what stands before it here. A bench enters nothing in a shared
     * book before all that it has done itself is there.
     */
    private boolean elsewhere(LedgerEntry entry) {
        return bench.isEmpty() || !EntrySignature.in(entry).map(EntrySignature::fingerprint).equals(bench);
    }

    private void earlier(String test, Optional<TestsOfUnit.Opening> opening, String unit, LedgerEntry entry) {
        if (opening.isEmpty() && elsewhere(entry)) {
            late.add(new LateArrival(TestId.RECEIPTS, entry.sequence(), Message.LATE_NO_EARLIER.text(test)));
        } else if (opening.filter(found -> found.opened().serial().equals(unit) && !found.opened().rehearsal()
                && (elsewhere(entry) || found.entry().position() < entry.position())).isEmpty()) {
            fault(entry.sequence(), Message.FAULT_NO_EARLIER.text(test));
        }
    }

    private void repaired(LedgerEntry entry, ReceiptFact.Repaired repaired, List<TestsOfUnit.Opening> all) throws StoreException {
        Optional<TestId> test = TestId.parse(repaired.test()).filter(TestId::isTest);
        boolean elsewhere = elsewhere(entry);
        try {
            if (test.isPresent() && elsewhere && !tests.sealed(test.get())) {
                late.add(new LateArrival(TestId.RECEIPTS, entry.sequence(), Message.LATE_REPAIR.text(repaired.test())));
                return;
            }
            String unit = tests.requireNotPassed(test.orElseThrow(() -> new RefusedException(Message.RETURN_NO_TEST.text(repaired.test()))),
                    elsewhere ? Long.MAX_VALUE : entry.position());
            if (!unit.equals(repaired.unit())) {
                fault(entry.sequence(), Message.FAULT_REPAIR_UNIT.text(repaired.unit(), repaired.test(), unit));
                return;
            }
            retested(entry, test.get(), all);
        } catch (RefusedException | FaultyRecordException refused) {
            fault(entry.sequence(), Message.FAULT_NOT_MENDABLE.text(repaired.test(), refused.getMessage()));
        }
    }

    /** Tests that followed on the same bench before the repair was written down; what followed on others nobody there could know. */
    private void retested(LedgerEntry entry, TestId test, List<TestsOfUnit.Opening> all) {
        TestsOfUnit.Opening mended = all.stream().filter(each -> each.test().equals(test)).findFirst().orElseThrow();
        for (TestsOfUnit.Opening each : all) {
            boolean between = each.follows(mended) && each.entry().position() < entry.position() && each.entry().instant().isBefore(entry.instant());
            if (between && (!elsewhere(entry) || each.opened().station().equals(mended.opened().station()))) {
                fault(entry.sequence(), Message.FAULT_NOT_MENDABLE.text(test.value(), Message.REPAIR_RETESTED.text(test.value(), each.test().value())));
                return;
            } else if (between) {
                late.add(new LateArrival(TestId.RECEIPTS, entry.sequence(), Message.LATE_RETESTED.text(test.value(), each.test().value())));
            }
        }
    }

    private void fault(long sequence, String words) {
        faults.add(Fault.of(TestId.RECEIPTS, sequence, FaultKind.DECISION_DIFFERS, words));
    }
}
