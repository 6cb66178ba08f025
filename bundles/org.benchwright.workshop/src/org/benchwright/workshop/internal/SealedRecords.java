package org.benchwright.workshop.internal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.record.Deed;
import org.benchwright.engine.record.RecordEvent;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.Person;
import org.benchwright.workshop.StoreException;

/** Records after their seal as the entries of a ledger make them. Every signer is held against the register of people as it stood then. */
public final class SealedRecords {

    private static final Map<Deed, Meaning> MEANINGS = Map.of(Deed.DECIDE_DEPARTURE, Meaning.DECIDED, Deed.DECIDE_NONCONFORMITY, Meaning.DECIDED,
            Deed.AMEND, Meaning.AMENDED, Deed.REVIEW, Meaning.REVIEWED, Deed.HAND_OVER, Meaning.HANDED_OVER, Deed.SUPERSEDE, Meaning.SUPERSEDED,
            Deed.RECALL, Meaning.RECALLED, Deed.VOID, Meaning.VOIDED, Deed.WITHDRAW, Meaning.WITHDRAWN);

    private final RecordFacts facts = new RecordFacts();
    private final DrawnReviews reviews;
    private Optional<PeopleHistory> people = Optional.empty();

    /** @param reviews which records were drawn for a review */
    SealedRecords(DrawnReviews reviews) {
        this.reviews = reviews;
    }

    /** How another test was opened, to see whether it can take the place of this one. */
    interface Others {
        /** How it stands in that ledger. */
        Other find(TestId test) throws StoreException;
    }

    /**
     * Another test.
     *
     * @param here   whether the ledger has it; where benches share one, it may not have arrived yet
     * @param sealed how it was opened; empty where it is not here, or not sealed
     */
    record Other(boolean here, Optional<Fact.Opened> sealed) {
    }

    /** An entry that the record does not take, and why. */
    static final class NotTakenException extends Exception {
        private static final long serialVersionUID = 1L;
        private final transient LedgerEntry entry;

        NotTakenException(LedgerEntry entry, String words) {
            super(words);
            this.entry = entry;
        }

        LedgerEntry entry() {
            return entry;
        }
    }

    /** What a signature under such a fact means. */
    public static Meaning meaning(RecordFact fact) {
        return MEANINGS.get(Deed.of(fact));
    }

    /**
     * The record that these entries make.
     *
     * @throws NotTakenException if one of them is none that it takes
     */
    TestRecord of(Ledger ledger, TestId test, TestRun run, List<LedgerEntry> entries, Others others) throws NotTakenException, StoreException {
        TestRecord record = TestRecord.sealed(test.value(), run, reviews.drawn(ledger, test, run, entries));
        for (LedgerEntry entry : entries) {
            if (facts.knows(entry.kind())) {
                try {
                    RecordEvent event = event(ledger, entry);
                    record = record.with(event);
                    Optional<TestId> other = named(event.fact());
                    // Another bench's test may not be here; verification tells of it.
                    if (other.isEmpty() || others.find(other.get()).here()) {
                        requireOther(run, event.fact(), others);
                    }
                } catch (RefusedException | UndecodableException e) {
                    throw new NotTakenException(entry, e.getMessage());
                }
            }
        }
        return record;
    }

    private RecordEvent event(Ledger ledger, LedgerEntry entry) throws RefusedException, UndecodableException, StoreException {
        RecordFact fact = facts.fact(entry.kind(), entry.payload());
        Person signer = people(ledger).signer(entry, meaning(fact));
        Set<Role> then = signer.may(entry.actor().role()) ? Set.of(entry.actor().role()) : Set.of();
        return new RecordEvent(entry.sequence(), entry.instant(), signer.id(), then, fact);
    }

    /** The register, read again when it has grown. */
    private synchronized PeopleHistory people(Ledger ledger) throws StoreException {
        return LedgerWork.of(() -> {
            if (people.isEmpty() || people.get().size() != ledger.lastSequence(TestId.PEOPLE)) {
                people = Optional.of(PeopleHistory.asFound(ledger));
            }
            return people.get();
        });
    }

    /** The test that takes the place of this one; empty where the fact names none. */
    static Optional<TestId> named(RecordFact fact) {
        return fact instanceof RecordFact.Superseded superseded ? TestId.parse(superseded.by()).filter(TestId::isTest) : Optional.empty();
    }

    /**
     * What takes the place of a test is a sealed test of the same unit that is no rehearsal.
     *
     * @throws RefusedException if it is not
     */
    static void requireOther(TestRun run, RecordFact fact, Others others) throws RefusedException, StoreException {
        if (fact instanceof RecordFact.Superseded superseded) {
            Optional<TestId> other = named(fact);
            Optional<Fact.Opened> opened = other.isEmpty() ? Optional.empty() : others.find(other.get()).sealed();
            if (opened.filter(found -> !found.rehearsal() && found.serial().equals(run.opening().serial())).isEmpty()) {
                throw new RefusedException(Message.SUPERSEDED_BY_NONE.text(superseded.by(), run.opening().serial()));
            }
        }
    }
}
