package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.engine.event.Fact;
import org.benchwright.engine.revision.Revision;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
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
    private Optional<RevisionHistory> history = Optional.empty();

    /** @param documents where plans and texts are read from */
    public DecisionCheck(Ledger documents) {
        this.documents = documents;
    }

    @Override
    public List<Fault> check(TestId test, List<LedgerEntry> entries) {
        try {
            return test.isTest() ? test(test, entries) : book(test);
        } catch (FaultyRecordException e) {
            return List.of(fault(test, e.fault().sequence(), e.fault().reason()));
        } catch (StoreException e) {
            return List.of(fault(test, 1, Message.FAULT_UNREADABLE.text(e.getMessage())));
        }
    }

    private List<Fault> test(TestId test, List<LedgerEntry> entries) throws FaultyRecordException, StoreException {
        KeptTest kept = reader.derive(documents, test, entries);
        derived++;
        if (kept.sealed() && !kept.run().ended()) {
            return List.of(fault(test, entries.size(), Message.FAULT_SEALED_OPEN.text()));
        } else if (!kept.sealed()) {
            open.add(kept);
        }
        return unapproved(kept.run().opening(), entries.get(0).position()).map(words -> List.of(fault(test, 1, words))).orElse(List.of());
    }

    /** Rights and order in the register of people are looked at with its signatures. */
    private List<Fault> book(TestId book) throws StoreException {
        return book.equals(TestId.PEOPLE) ? List.of()
                : history().objections().stream().map(objection -> fault(book, objection.sequence(), objection.words())).toList();
    }

    /** What is wrong with the approval that a test names, or with the lack of one. */
    private Optional<String> unapproved(Fact.Opened opened, long position) throws StoreException {
        RevisionHistory known = history();
        if (opened.approval().isEmpty()) {
            // Before there was a register of people, nobody could approve anything.
            return opened.rehearsal() || !known.registeredBefore(position) ? Optional.empty()
                    : Optional.of(Message.FAULT_NOT_APPROVED.text(opened.procedure(), String.valueOf(opened.revision())));
        }
        // Earlier records name the procedure alone; text and plan, which are compared below, leave no doubt about the family.
        Optional<Revision> current = known.at(position).current(Revision.key(opened.procedure(), opened.family()))
                .or(() -> known.at(position).current(opened.procedure()));
        boolean holds = current.filter(revision -> revision.number() == opened.revision() && revision.isOf(opened.text(), opened.plan())
                && revision.approval().equals(opened.approval())).isPresent();
        return holds ? Optional.empty() : Optional.of(Message.FAULT_OTHER_APPROVAL.text(opened.procedure(),
                String.valueOf(opened.revision()), String.valueOf(opened.approval().get().event())));
    }

    private RevisionHistory history() throws StoreException {
        if (history.isEmpty()) {
            try {
                history = Optional.of(RevisionHistory.asFound(documents));
            } catch (LedgerException e) {
                throw new StoreException(e.getMessage(), e);
            }
        }
        return history.get();
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
