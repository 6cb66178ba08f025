package org.benchwright.workshop.internal;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Digest;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.InTheField;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.RecordFault;
import org.benchwright.workshop.StoreException;

/** Tests out of a ledger and into it: the only place where events of the engine meet entries of the ledger. */
public final class KeptTests {

    private final EventCodec events = new EventCodec();
    private final PlanCodec plans = new PlanCodec();
    private final ReturnCodec returns = new ReturnCodec();
    private final SealedRecords records;
    private final Optional<RememberedPlans> remembered;

    /** Reads every plan anew. */
    public KeptTests() {
        this(Optional.empty(), new DrawnReviews());
    }

    private KeptTests(Optional<RememberedPlans> remembered, DrawnReviews reviews) {
        this.remembered = remembered;
        this.records = new SealedRecords(reviews);
    }

    /** Reads a plan once, and a book when it has grown, for whoever looks at many tests of one ledger; for any thread. */
    public static KeptTests remembering() {
        return new KeptTests(Optional.of(new RememberedPlans()), new DrawnReviews());
    }

    /** Reads a plan once, and review plans as they are found first, for whoever verifies many tests of one ledger. */
    static KeptTests verifying() {
        return new KeptTests(Optional.of(new RememberedPlans()), new DrawnReviews(true));
    }

    /**
     * The test, derived again from its facts.
     *
     * @throws FaultyRecordException if its record cannot be what happened
     * @throws StoreException        if the ledger cannot be read
     */
    public KeptTest read(Ledger ledger, TestId test) throws StoreException, FaultyRecordException {
        return derive(ledger, test, entries(ledger, test));
    }

    /**
     * The test, derived again from the facts in these entries.
     *
     * @param documents where plan and text are read from
     * @throws FaultyRecordException if its record cannot be what happened
     * @throws StoreException        if plan or text cannot be read
     */
    public KeptTest derive(Ledger documents, TestId test, List<LedgerEntry> entries) throws StoreException, FaultyRecordException {
        List<TestEvent> made = new ArrayList<>();
        boolean sealed = false;
        for (LedgerEntry entry : entries) {
            if (entry.kind().equals(EventKinds.SEALED)) {
                sealed = true;
            } else if (sealed && !EventKinds.AFTER_SEAL.contains(entry.kind())) {
                throw fault(entry, Message.FAULT_AFTER_SEAL.text());
            } else if (!sealed) {
                made.add(event(entry));
            }
        }
        Plan plan = plan(documents, opening(entries, made, test), entries.get(0));
        TestRun run = fold(plan, made, entries);
        return sealed ? new KeptTest(test.value(), run, true, Optional.of(field(run, entries)), Optional.of(record(documents, test, run, entries)))
                : new KeptTest(test.value(), run, false, Optional.empty(), Optional.empty());
    }

    private TestRecord record(Ledger documents, TestId test, TestRun run, List<LedgerEntry> entries) throws StoreException, FaultyRecordException {
        try {
            return records.of(documents, test, run, entries, other -> other(documents, other));
        } catch (SealedRecords.NotTakenException e) {
            throw fault(e.entry(), e.getMessage());
        }
    }

    /**
     * What takes the place of a test is a sealed test of the same unit that is no rehearsal.
     *
     * @throws RefusedException if the fact names another
     */
    public void requireOther(Ledger ledger, TestRun run, RecordFact fact) throws RefusedException, StoreException {
        SealedRecords.requireOther(run, fact, other -> other(ledger, other));
    }

    /** How another test stands; one whose opening can't be read counts as not sealed. */
    private SealedRecords.Other other(Ledger ledger, TestId test) throws StoreException {
        try {
            boolean here = ledger.lastSequence(test) > 0;
            return new SealedRecords.Other(here, here && ledger.sealed(test) ? Optional.of(opening(ledger, test)) : Optional.empty());
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        } catch (FaultyRecordException unreadable) {
            return new SealedRecords.Other(true, Optional.empty());
        }
    }

    /** Where the unit is: the entries after the seal tell. */
    private InTheField field(TestRun run, List<LedgerEntry> entries) throws FaultyRecordException {
        InTheField field = new InTheField(LocalDate.EPOCH, false, Optional.empty());
        for (LedgerEntry entry : entries) {
            LocalDate day = LocalDate.ofInstant(entry.instant(), ZoneOffset.UTC);
            if (entry.kind().equals(EventKinds.SEALED)) {
                requireBare(entry);
                field = new InTheField(day, false, Optional.empty());
            } else if (entry.kind().equals(EventKinds.HANDED_OVER)) {
                field = new InTheField(day, true, field.returned());
            } else if (entry.kind().equals(EventKinds.RETURNED)) {
                field = returned(run, field, entry, day);
            }
        }
        return field;
    }

    /** A seal says nothing beside its signature. */
    private static void requireBare(LedgerEntry seal) throws FaultyRecordException {
        try {
            SignedFields.of(seal.payload(), Set.of());
        } catch (UndecodableException e) {
            throw fault(seal, Message.FAULT_UNDECODABLE.text(e.getMessage()));
        }
    }

    private InTheField returned(TestRun run, InTheField field, LedgerEntry entry, LocalDate day) throws FaultyRecordException {
        try {
            return field.with(run, returns.read(entry.payload()), day);
        } catch (UndecodableException e) {
            throw fault(entry, Message.FAULT_UNDECODABLE.text(e.getMessage()));
        } catch (RefusedException e) {
            throw fault(entry, e.getMessage());
        }
    }

    /**
     * How a test was opened, without deriving it again.
     *
     * @throws FaultyRecordException if its first event does not say so
     */
    public Fact.Opened opening(Ledger ledger, TestId test) throws StoreException, FaultyRecordException {
        List<LedgerEntry> entries = entries(ledger, test);
        List<TestEvent> first = entries.isEmpty() ? List.of() : List.of(event(entries.get(0)));
        return opening(entries, first, test);
    }

    private static Fact.Opened opening(List<LedgerEntry> entries, List<TestEvent> made, TestId test) throws FaultyRecordException {
        if (made.isEmpty()) {
            throw new FaultyRecordException(new RecordFault(test.value(), 0, Message.FAULT_NO_EVENTS.text()));
        }
        if (made.get(0).body() instanceof Fact.Opened opened) {
            return opened;
        }
        throw fault(entries.get(0), Message.FAULT_NOT_OPENED.text());
    }

    private TestEvent event(LedgerEntry entry) throws FaultyRecordException {
        try {
            EventBody body = events.body(entry.kind(), entry.payload());
            return new TestEvent(entry.sequence(), new Moment(entry.instant(), entry.sitting(), entry.offset()), entry.actor(), body);
        } catch (UndecodableException e) {
            throw fault(entry, Message.FAULT_UNDECODABLE.text(e.getMessage()));
        }
    }

    private Plan plan(Ledger ledger, Fact.Opened opened, LedgerEntry first) throws StoreException, FaultyRecordException {
        Optional<Plan> before = remembered.flatMap(plans -> plans.of(opened));
        if (before.isPresent()) {
            return before.get();
        }
        Plan plan = readPlan(ledger, opened, first);
        remembered.ifPresent(plans -> plans.remember(opened, plan));
        return plan;
    }

    private Plan readPlan(Ledger ledger, Fact.Opened opened, LedgerEntry first) throws StoreException, FaultyRecordException {
        Optional<byte[]> kept = document(ledger, opened.plan());
        if (kept.isEmpty()) {
            throw fault(first, Message.FAULT_PLAN_MISSING.text(opened.plan().hex()));
        }
        if (!Digest.of(kept.get()).equals(opened.plan())) {
            throw fault(first, Message.FAULT_PLAN_DIGEST.text(opened.plan().hex()));
        }
        if (document(ledger, opened.text()).isEmpty()) {
            throw fault(first, Message.FAULT_TEXT_MISSING.text(opened.text().hex()));
        }
        try {
            return plans.plan(kept.get());
        } catch (UndecodableException e) {
            throw fault(first, Message.FAULT_PLAN_UNDECODABLE.text(e.getMessage()));
        }
    }

    private static TestRun fold(Plan plan, List<TestEvent> made, List<LedgerEntry> entries) throws FaultyRecordException {
        try {
            return TestRun.fold(plan, made);
        } catch (DoesNotFollowException e) {
            LedgerEntry entry = entries.stream().filter(x -> x.sequence() == e.sequence()).findFirst().orElse(entries.get(0));
            throw fault(entry, Message.FAULT_DOES_NOT_FOLLOW.text(e.getMessage()));
        } catch (IllegalStateException | IllegalArgumentException | ArithmeticException | IndexOutOfBoundsException
                | ClassCastException | NoSuchElementException e) {
            // A forged plan can ask the impossible of the engine; that is a finding, not a failure of whoever verifies.
            throw fault(entries.get(0), Message.FAULT_IMPOSSIBLE.text(String.valueOf(e.getMessage())));
        }
    }

    /** These events as the ledger takes them. */
    public List<EntryDraft> drafts(TestId test, List<TestEvent> made) {
        return made.stream().map(event -> new EntryDraft(test, event.moment().instant(), event.moment().sitting(),
                event.moment().offset(), event.actor(), events.kind(event.body()), events.payload(event.body()))).toList();
    }

    /** The fact as it will be read back. */
    public Fact asKept(Fact fact) {
        return events.asKept(fact);
    }

    /** The plan's bytes as the ledger keeps them. */
    public byte[] bytes(Plan plan) {
        return plans.bytes(plan);
    }

    private static List<LedgerEntry> entries(Ledger ledger, TestId test) throws StoreException {
        return LedgerWork.of(() -> ledger.entries(test));
    }

    private static Optional<byte[]> document(Ledger ledger, Digest digest) throws StoreException {
        return LedgerWork.of(() -> ledger.document(digest));
    }

    private static FaultyRecordException fault(LedgerEntry entry, String reason) {
        return new FaultyRecordException(new RecordFault(entry.test().value(), entry.sequence(), Message.FAULT_OF_KIND.text(entry.kind(), reason)));
    }
}
