package org.benchwright.workshop.internal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Digest;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.KnownBooks;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.record.RecordEvent;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.engine.revision.Revision;
import org.benchwright.engine.revision.RevisionBook;
import org.benchwright.ledger.EntrySignature;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.LateArrival;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.TestCheck;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.Person;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.StoreException;

/** The third line of verification: decisions derived again from the facts in the ledger, with the plans kept in it. */
public final class DecisionCheck implements TestCheck {

    /** Whoever opens two tests of a unit within it may not have seen the first. */
    private static final Duration SAME_MOMENT = Duration.ofMinutes(1);

    /** A unit in its tests, or in its rehearsals: neither knows of the others. */
    private record Unit(String serial, boolean rehearsed) {
        static Unit of(Fact.Opened opened) {
            return new Unit(opened.serial(), opened.rehearsal());
        }
    }

    /** A test, and where and when it was opened. */
    private record Begun(TestId test, long position, Instant instant) {
    }

    private final Ledger documents;
    /** The bench's key, where the ledger is known to be one bench's own. */
    private final Optional<Digest> bench;
    private final boolean sharing;
    private final List<LateArrival> late = new ArrayList<>();
    private final KeptTests reader = KeptTests.verifying();
    private final List<KeptTest> open = new ArrayList<>();
    private final List<String> reviewsDue = new ArrayList<>();
    private final ProjectionCheck projection;
    private final Map<Unit, Begun> lastOfUnit = new HashMap<>();
    private int derived;
    private Optional<RevisionHistory> history = Optional.empty();
    private Optional<ReceiptHistory> receipts = Optional.empty();
    private Optional<InstrumentHistory> instruments = Optional.empty();
    private Optional<WorkCheck> work = Optional.empty();
    private Optional<ReceiptBook> receiptBook = Optional.empty();
    private Optional<UnitReceipts> unitReceipts = Optional.empty();

    /**
     * @param documents  where plans and texts are read from
     * @param projection looks at the cache beside the ledger
     * @param bench      fingerprint of the bench's key where the ledger is known to be one bench's own: then nobody in it can have known less of
     *                   the books than stands before it
     * @param sharing    whether the bench shares a ledger with others, whose tests are not here
     */
    public DecisionCheck(Ledger documents, ProjectionCheck projection, Optional<Digest> bench, boolean sharing) {
        this.documents = documents;
        this.bench = bench;
        this.sharing = sharing;
        this.projection = projection;
    }

    @Override
    public List<Fault> check(TestId test, List<LedgerEntry> entries) {
        try {
            return test.isTest() ? test(test, entries) : book(test);
        } catch (FaultyRecordException e) {
            List<Fault> faults = new ArrayList<>(List.of(fault(test, e.fault().sequence(), e.fault().reason())));
            faults.addAll(projected(test, entries, Projected.faulty(test)));
            return faults;
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
        } else if (kept.record().filter(TestRecord::reviewDue).isPresent()) {
            reviewsDue.add(test.value());
        }
        List<Fault> faults = new ArrayList<>(projected(test, entries, Projected.of(kept)));
        Fact.Opened opened = kept.run().opening();
        long position = entries.get(0).position();
        work(test, kept, entries, faults);
        unapproved(test, opened, position).ifPresent(words -> faults.add(fault(test, 1, words)));
        received(test, opened, entries.get(0), faults);
        predecessor(test, opened, entries.get(0), faults);
        roles(entries);
        named(test, entries, kept.run(), faults);
        superseded(test, kept, faults);
        return faults;
    }

    /**
     * A test names the one before it of its unit, so that nobody sees an acceptance without the rejections before it. Tests are asked for in the
     * order in which they were opened.
     */
    private void predecessor(TestId test, Fact.Opened opened, LedgerEntry first, List<Fault> faults) throws StoreException {
        Unit unit = Unit.of(opened);
        Optional<Begun> before = Optional.ofNullable(lastOfUnit.put(unit, new Begun(test, first.position(), first.instant())));
        Optional<String> named = opened.predecessor();
        if (named.isPresent() && before.filter(last -> last.test().value().equals(named.get())).isPresent()) {
            return;
        }
        Optional<TestId> other = named.flatMap(TestId::parse).filter(TestId::isTest);
        List<LedgerEntry> there = other.isEmpty() ? List.of() : LedgerWork.of(() -> documents.entries(other.get()));
        Optional<TestsOfUnit.Opening> opening = TestsOfUnit.decoded(there.stream().limit(1).toList()).stream().filter(each ->
                each.entry().position() < first.position() && Unit.of(each.opened()).equals(unit)).findFirst();
        boolean elsewhere = there.isEmpty() && other.isPresent() && (bench.isEmpty() || sharing);
        if (named.isPresent() && opening.isEmpty() && !elsewhere) {
            faults.add(fault(test, 1, Message.FAULT_NO_EARLIER.text(named.get())));
        } else if (!elsewhere && bench.isPresent()) {
            // Two that are opened in the same moment know nothing of each other; one whose links are broken was not looked at here.
            before.filter(last -> last.instant().plus(SAME_MOMENT).isBefore(first.instant()))
                    .filter(last -> opening.isEmpty() || opening.get().entry().position() < last.position())
                    .ifPresent(last -> faults.add(fault(test, 1, Message.FAULT_PREDECESSOR.text(last.test().value()))));
        }
    }

    /** A test tells what the book of receipts told then: nothing else, nothing older, and no less. */
    private void received(TestId test, Fact.Opened opened, LedgerEntry first, List<Fault> faults) throws StoreException {
        ReceiptHistory known = receipts();
        if (opened.rehearsal() || known.size() == 0 && opened.receipt().isEmpty() && opened.mended().isEmpty()) {
            return;
        }
        Optional<String> objection = Arrivals.objection(receiptBook(), event -> known.toldBefore(event, first.position()), opened);
        objection.ifPresent(words -> faults.add(fault(test, 1, words)));
        if (objection.isEmpty()) {
            Arrivals.omission(unitReceipts().known(opened.serial(), opened.predecessor(), first, SAME_MOMENT), opened)
                    .ifPresent(words -> known(test, 1, words, Message.LATE_RECEIPT.text(), faults));
        }
    }

    /** A fault where the bench had the book as it stands here; where it may have known less of it when it wrote that, it is told. */
    private void known(TestId test, long sequence, String words, String told, List<Fault> faults) {
        if (bench.isPresent() && !sharing) {
            faults.add(fault(test, sequence, words));
        } else {
            late.add(new LateArrival(test, sequence, told));
        }
    }

    /** Instruments that are in the register are named as the register had them then, and by it. */
    private void named(TestId test, List<LedgerEntry> entries, TestRun run, List<Fault> faults) throws StoreException {
        for (TestEvent event : run.events()) {
            if (event.body() instanceof Observation.InstrumentNamed byHand && byHand.entry().isEmpty() && !run.rehearsal()
                    && instruments().had(byHand.asset(), entries.get((int) event.sequence() - 1), SAME_MOMENT)) {
                known(test, event.sequence(), Message.FAULT_BY_HAND.text(byHand.asset()), Message.LATE_BY_HAND.text(byHand.asset()), faults);
            } else if (event.body() instanceof Observation.InstrumentNamed named && named.entry().isPresent()) {
                long position = entries.get((int) event.sequence() - 1).position();
                Optional<String> objection = instruments().objection(named, position);
                objection.ifPresent(words -> faults.add(fault(test, event.sequence(), words)));
                if (objection.isEmpty() && !instruments().newest(named, position)) {
                    outdated(test, event.sequence(), named, faults);
                }
            }
        }
    }

    /** In its own ledger a bench names an instrument as the book has it last; elsewhere the book may have gone on before the test arrived. */
    private void outdated(TestId test, long sequence, Observation.InstrumentNamed named, List<Fault> faults) {
        if (bench.isPresent()) {
            faults.add(fault(test, sequence, Message.FAULT_OTHER_INSTRUMENT.text(named.asset())));
        } else {
            late.add(new LateArrival(test, sequence, Message.LATE_INSTRUMENT.text(named.asset(), String.valueOf(named.entry().orElseThrow().statement()))));
        }
    }

    /** A test of another bench that takes the place of this one may not have arrived yet; one bench's own ledger that never shared has them all. */
    private void superseded(TestId test, KeptTest kept, List<Fault> faults) throws StoreException {
        Optional<RecordEvent> end = kept.record().flatMap(TestRecord::end);
        Optional<TestId> other = end.map(RecordEvent::fact).flatMap(SealedRecords::named);
        if (other.isPresent() && !has(other.get())) {
            String unit = kept.run().opening().serial();
            if (bench.isPresent() && !sharing) {
                faults.add(fault(test, end.get().sequence(), Message.SUPERSEDED_BY_NONE.text(other.get().value(), unit)));
            } else {
                late.add(new LateArrival(test, end.get().sequence(), Message.LATE_SUPERSEDED.text(other.get().value(), unit)));
            }
        }
    }

    private boolean has(TestId test) throws StoreException {
        return LedgerWork.of(() -> documents.lastSequence(test) > 0);
    }

    private InstrumentHistory instruments() throws StoreException {
        if (instruments.isEmpty()) {
            instruments = Optional.of(LedgerWork.of(() -> InstrumentHistory.asFound(documents)));
        }
        return instruments.get();
    }

    /** What the cache beside the ledger says of a test is what its events come to. */
    private List<Fault> projected(TestId test, List<LedgerEntry> entries, ProjectedTest right) {
        try {
            LedgerEntry last = entries.get(entries.size() - 1);
            return projection.differs(test, last.position(), right)
                    ? List.of(Fault.of(test, last.sequence(), FaultKind.PROJECTION_DIFFERS, Message.FAULT_PROJECTION.text())) : List.of();
        } catch (LedgerException | RuntimeException unreadable) {
            return List.of(Fault.of(test, entries.size(), FaultKind.PROJECTION_DIFFERS, Message.FAULT_PROJECTION.text()));
        }
    }

    /**
     * Tests that the cache beside the ledger tells of and the ledger does not have; asked when all of the ledger's were checked.
     *
     * @throws LedgerException if the cache can't be read
     */
    public Set<String> madeUp() throws LedgerException {
        return projection.unknown();
    }

    /** Rights and order in the register of people are looked at with its signatures. */
    private List<Fault> book(TestId book) throws StoreException, FaultyRecordException {
        if (book.equals(TestId.PEOPLE)) {
            return List.of();
        } else if (book.equals(TestId.RECEIPTS)) {
            ReceiptCheck check = new ReceiptCheck(documents, receipts(), history().register(), bench);
            List<Fault> faults = check.faults();
            late.addAll(check.late());
            return faults;
        } else if (book.equals(TestId.INSTRUMENTS)) {
            return instruments().objections().stream().map(objection -> fault(book, objection.sequence(), objection.words())).toList();
        }
        return history().objections().stream().map(objection -> fault(book, objection.sequence(), objection.words())).toList();
    }

    /** What is wrong with the approval that a test names, or with the lack of one. */
    private Optional<String> unapproved(TestId test, Fact.Opened opened, long position) throws StoreException {
        RevisionHistory known = history();
        KnownBooks standing = known.standing(position);
        String revision = String.valueOf(opened.revision());
        if (opened.approval().isEmpty()) {
            // Before there was a register of people, nobody could approve anything.
            if (opened.rehearsal() || !known.registeredBefore(position)) {
                return Optional.empty();
            }
            return bench.isPresent() ? Optional.of(Message.FAULT_NOT_APPROVED.text(opened.procedure(), revision))
                    : told(test, Message.LATE_NOT_APPROVED.text(opened.procedure(), revision));
        }
        KnownBooks then = opened.books().orElse(standing);
        if (then.people() < 0 || then.revisions() < 0 || then.people() > standing.people() || then.revisions() > standing.revisions() || bench.isPresent() && !then.equals(standing)) {
            return Optional.of(Message.FAULT_OTHER_BOOKS.text(String.valueOf(then.people()), String.valueOf(then.revisions()),
                    String.valueOf(standing.people()), String.valueOf(standing.revisions())));
        }
        String approval = String.valueOf(opened.approval().get().event());
        if (!holds(opened, known.at(then))) {
            return Optional.of(Message.FAULT_OTHER_APPROVAL.text(opened.procedure(), revision, approval));
        }
        if (!known.at(then).reviews().equals(known.at(standing).reviews())) {
            told(test, Message.LATE_REVIEWS.text(String.valueOf(then.revisions()), String.valueOf(standing.revisions())));
        }
        return holds(opened, known.at(standing)) ? Optional.empty()
                : told(test, Message.LATE_APPROVAL.text(opened.procedure(), revision, approval, String.valueOf(then.revisions()),
                        String.valueOf(standing.revisions())));
    }

    private static boolean holds(Fact.Opened opened, RevisionBook book) {
        // Earlier records name the procedure alone; text and plan, which are compared too, leave no doubt about the family.
        Optional<Revision> current = book.current(Revision.key(opened.procedure(), opened.family())).or(() -> book.current(opened.procedure()));
        return current.filter(revision -> revision.number() == opened.revision() && revision.isOf(opened.text(), opened.plan())
                && revision.approval().equals(opened.approval())).isPresent();
    }

    /** What people may do can have changed before their signatures arrived. */
    private void roles(List<LedgerEntry> entries) throws StoreException {
        PeopleHistory people = history().register();
        for (LedgerEntry entry : entries) {
            Optional<EntrySignature> signature = EntrySignature.in(entry).filter(found -> found.register().isPresent());
            int standing = people.before(entry.position());
            if (signature.isPresent() && signature.get().register().getAsLong() < standing) {
                int then = (int) signature.get().register().getAsLong();
                Optional<Person> signer = people.register(then).holder(signature.get().fingerprint());
                boolean changed = signer.isPresent() && !people.register(standing).person(signer.get().id()).map(Person::roles)
                        .equals(signer.map(Person::roles));
                if (changed) {
                    late.add(new LateArrival(entry.test(), entry.sequence(),
                            Message.LATE_ROLE.text(signer.get().id(), String.valueOf(then), String.valueOf(standing))));
                }
            }
        }
    }

    /** Not wrong: nobody on that bench could know it. */
    private Optional<String> told(TestId test, String words) {
        late.add(new LateArrival(test, 1, words));
        return Optional.empty();
    }

    /** Forwarded work was done with the register that its bench knew: what that did not tell yet is told, and is no fault. */
    private void work(TestId test, KeptTest kept, List<LedgerEntry> entries, List<Fault> faults) throws StoreException {
        for (WorkCheck.Finding finding : work().findings(kept.run(), entries)) {
            if (bench.isPresent() || !finding.byRegister()) {
                faults.add(fault(test, finding.sequence(), finding.words()));
            } else {
                late.add(new LateArrival(test, finding.sequence(), finding.words()));
            }
        }
    }

    private WorkCheck work() throws StoreException {
        if (work.isEmpty()) {
            work = Optional.of(new WorkCheck(documents));
        }
        return work.get();
    }

    private ReceiptBook receiptBook() throws StoreException {
        if (receiptBook.isEmpty()) {
            receiptBook = Optional.of(receipts().now());
        }
        return receiptBook.get();
    }

    private UnitReceipts unitReceipts() throws StoreException {
        if (unitReceipts.isEmpty()) {
            unitReceipts = Optional.of(new UnitReceipts(receipts()));
        }
        return unitReceipts.get();
    }

    private ReceiptHistory receipts() throws StoreException {
        if (receipts.isEmpty()) {
            receipts = Optional.of(LedgerWork.of(() -> ReceiptHistory.asFound(documents)));
        }
        return receipts.get();
    }

    private RevisionHistory history() throws StoreException {
        if (history.isEmpty()) {
            history = Optional.of(LedgerWork.of(() -> RevisionHistory.asFound(documents)));
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

    /** Sealed tests that were drawn for a review which is due. */
    public List<String> reviewsDue() {
        return List.copyOf(reviewsDue);
    }

    /** Tests that were opened on a bench which did not know the books as they stand before them. */
    public List<LateArrival> late() {
        return List.copyOf(late);
    }

    /** How many tests follow from their facts. */
    public int derived() {
        return derived;
    }
}
