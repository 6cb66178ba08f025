package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;

import org.benchwright.engine.RefusedException;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.ReceiptEvent;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.record.Deed;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.SignedBook;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.Person;

/** The book of receipts out of the ledger. */
public final class ReceiptHistory {

    private final List<LedgerEntry> entries;
    private final List<ReceiptEvent> events;
    private final List<Objection> unreadable;
    private final ReceiptCodec codec = new ReceiptCodec();

    /** How the register of people is read; only a book in which somebody signed with a key of their own needs it. */
    @FunctionalInterface
    private interface Register {
        PeopleHistory read() throws LedgerException;
    }

    private ReceiptHistory(List<LedgerEntry> entries, Optional<ReceiptHistory> before, Register register) throws LedgerException {
        this.entries = entries;
        int known = before.map(earlier -> earlier.entries.size()).orElse(0);
        this.events = new ArrayList<>(before.map(earlier -> earlier.events).orElse(List.of()));
        this.unreadable = new ArrayList<>(before.map(earlier -> earlier.unreadable).orElse(List.of()));
        List<LedgerEntry> newer = entries.subList(known, entries.size());
        boolean personal = newer.stream().anyMatch(entry -> entry.kind().equals(EventKinds.ATTACHMENT_WITHDRAWN));
        Optional<PeopleHistory> people = personal ? Optional.of(register.read()) : Optional.empty();
        newer.forEach(entry -> read(entry, people));
    }

    private void read(LedgerEntry entry, Optional<PeopleHistory> people) {
        try {
            ReceiptFact fact = codec.fact(entry.kind(), entry.payload());
            if (fact instanceof ReceiptFact.AttachmentWithdrawn) {
                Person signer = people.orElseThrow().signer(entry, Meaning.WITHDRAWN);
                Deed.WITHDRAW.requireRole(signer.id(), signer.may(entry.actor().role()) ? Set.of(entry.actor().role()) : Set.of());
            } else {
                PeopleHistory.requireMeaning(entry, meaning(fact));
            }
            events.add(new ReceiptEvent(entry.sequence(), entry.instant(), entry.actor(), fact));
        } catch (RefusedException | UndecodableException e) {
            unreadable.add(new Objection(entry.sequence(), Message.FAULT_OF_KIND.text(entry.kind(), e.getMessage())));
        }
    }

    /**
     * For work: refused when the book is not as it was signed.
     *
     * @throws org.benchwright.ledger.LedgerDamagedException then
     */
    public static ReceiptHistory trusted(Ledger ledger) throws LedgerException {
        return new ReceiptHistory(SignedBook.readCovered(ledger, TestId.RECEIPTS), Optional.empty(), () -> PeopleHistory.trusted(ledger));
    }

    /** As {@link #trusted(Ledger)}, where it was read before from the same ledger: only what is new is read. */
    public static ReceiptHistory trusted(Ledger ledger, Optional<ReceiptHistory> before) throws LedgerException {
        return before.isEmpty() ? trusted(ledger)
                : new ReceiptHistory(SignedBook.readCoveredOn(ledger, TestId.RECEIPTS, before.get().entries), before, () -> PeopleHistory.trusted(ledger));
    }

    /** For verification, which looks at links and signatures elsewhere. */
    static ReceiptHistory asFound(Ledger ledger) throws LedgerException {
        return new ReceiptHistory(ledger.entries(TestId.RECEIPTS), Optional.empty(), () -> PeopleHistory.asFound(ledger));
    }

    /** How many events the book has. */
    public long size() {
        return entries.size();
    }

    /** The book now. */
    public ReceiptBook now() {
        return book(new ArrayList<>());
    }

    /** Whether the book had that event before that place of the ledger. */
    boolean toldBefore(long sequence, long position) {
        return sequence >= 1 && sequence <= entries.size() && entries.get((int) sequence - 1).position() < position;
    }

    /** What is wrong in the book as a book; whether the tests that it names are so is asked by verification. */
    List<Objection> objections() {
        List<Objection> objections = new ArrayList<>();
        book(objections);
        return objections;
    }

    /** All events that can be read, in order. */
    List<ReceiptEvent> events() {
        return List.copyOf(events);
    }

    /** Hands each fact that can be read over with the place of its event. */
    void each(BiConsumer<LedgerEntry, ReceiptFact> reader) {
        events.forEach(event -> reader.accept(entries.get((int) event.number() - 1), event.fact()));
    }

    /** What a signature under such a fact means. */
    public static Meaning meaning(ReceiptFact fact) {
        if (fact instanceof ReceiptFact.GivenBack) {
            return Meaning.HANDED_OVER;
        } else if (fact instanceof ReceiptFact.Repaired) {
            return Meaning.REPAIRED;
        }
        return fact instanceof ReceiptFact.AttachmentWithdrawn ? Meaning.WITHDRAWN : Meaning.RECEIVED;
    }

    private ReceiptBook book(List<Objection> objections) {
        objections.addAll(unreadable);
        return ReceiptBook.of(events, (event, words) -> objections.add(new Objection(event.number(), words)));
    }
}
