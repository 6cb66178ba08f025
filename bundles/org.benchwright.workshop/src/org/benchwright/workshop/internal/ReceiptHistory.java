package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;

import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.ReceiptEvent;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.SignedBook;
import org.benchwright.ledger.TestId;

/** The book of receipts out of the ledger. */
public final class ReceiptHistory {

    private final List<LedgerEntry> entries;
    private final List<ReceiptEvent> events;
    private final List<Objection> unreadable;
    private final ReceiptCodec codec = new ReceiptCodec();

    /**
     * An event of the book that does not fit.
     *
     * @param sequence its number
     * @param words    why
     */
    public record Objection(long sequence, String words) {
    }

    private ReceiptHistory(List<LedgerEntry> entries, Optional<ReceiptHistory> before) {
        this.entries = entries;
        int known = before.map(earlier -> earlier.entries.size()).orElse(0);
        this.events = new ArrayList<>(before.map(earlier -> earlier.events).orElse(List.of()));
        this.unreadable = new ArrayList<>(before.map(earlier -> earlier.unreadable).orElse(List.of()));
        entries.subList(known, entries.size()).forEach(this::read);
    }

    private void read(LedgerEntry entry) {
        try {
            events.add(new ReceiptEvent(entry.sequence(), entry.instant(), entry.actor(), codec.fact(entry.kind(), entry.payload())));
        } catch (UndecodableException e) {
            unreadable.add(new Objection(entry.sequence(), Message.FAULT_OF_KIND.text(entry.kind(), e.getMessage())));
        }
    }

    /**
     * For work: refused when the book is not as it was signed.
     *
     * @throws org.benchwright.ledger.LedgerDamagedException then
     */
    public static ReceiptHistory trusted(Ledger ledger) throws LedgerException {
        return new ReceiptHistory(SignedBook.readCovered(ledger, TestId.RECEIPTS), Optional.empty());
    }

    /** As {@link #trusted(Ledger)}, where it was read before from the same ledger: only what is new is read. */
    public static ReceiptHistory trusted(Ledger ledger, Optional<ReceiptHistory> before) throws LedgerException {
        return before.isEmpty() ? trusted(ledger) : new ReceiptHistory(SignedBook.readCoveredOn(ledger, TestId.RECEIPTS, before.get().entries), before);
    }

    /** For verification, which looks at links and signatures elsewhere. */
    static ReceiptHistory asFound(Ledger ledger) throws LedgerException {
        return new ReceiptHistory(ledger.entries(TestId.RECEIPTS), Optional.empty());
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

    /** Hands each fact that can be read over with the place of its event. */
    void each(BiConsumer<LedgerEntry, ReceiptFact> reader) {
        events.forEach(event -> reader.accept(entries.get((int) event.number() - 1), event.fact()));
    }

    private ReceiptBook book(List<Objection> objections) {
        objections.addAll(unreadable);
        return ReceiptBook.of(events, (event, words) -> objections.add(new Objection(event.number(), words)));
    }
}
