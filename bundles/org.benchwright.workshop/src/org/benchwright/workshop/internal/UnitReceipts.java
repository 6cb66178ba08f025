package org.benchwright.workshop.internal;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.ReceiptEvent;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.ledger.LedgerEntry;

/** The book of receipts by units and by tests, to see what it told of one of them at some place of the ledger. */
final class UnitReceipts {

    private final ReceiptHistory history;
    private final Map<String, Set<Long>> receipts = new HashMap<>();
    private final Map<Long, List<ReceiptEvent>> told = new HashMap<>();
    private final Map<String, List<ReceiptEvent>> repairs = new HashMap<>();

    UnitReceipts(ReceiptHistory history) {
        this.history = history;
        history.events().forEach(this::take);
    }

    private void take(ReceiptEvent event) {
        if (event.fact() instanceof ReceiptFact.Received received) {
            about(event.number(), event, Optional.of(received.unit()));
        } else if (event.fact() instanceof ReceiptFact.Corrected corrected) {
            about(corrected.receipt(), event, Optional.of(corrected.to().unit()));
        } else if (event.fact() instanceof ReceiptFact.GivenBack back) {
            about(back.receipt(), event, Optional.empty());
        } else if (event.fact() instanceof ReceiptFact.Repaired repaired) {
            repairs.computeIfAbsent(repaired.test(), test -> new ArrayList<>()).add(event);
        }
    }

    private void about(long receipt, ReceiptEvent event, Optional<String> unit) {
        told.computeIfAbsent(receipt, number -> new ArrayList<>()).add(event);
        unit.ifPresent(serial -> receipts.computeIfAbsent(serial, any -> new LinkedHashSet<>()).add(receipt));
    }

    /**
     * What a bench may have known of a unit at a place of its own ledger: all that stands before it, or all but the last of what was entered in the
     * same moment.
     *
     * @param unit   serial number or tag
     * @param before the test before, whose repairs count
     * @param at     the place
     * @param moment how long before it an entry may not have been seen yet
     * @return the book as far as it is about them, the newest first
     */
    List<ReceiptBook> known(String unit, Optional<String> before, LedgerEntry at, Duration moment) {
        List<ReceiptEvent> events = new ArrayList<>();
        receipts.getOrDefault(unit, Set.of()).forEach(receipt -> events.addAll(told.get(receipt)));
        before.ifPresent(test -> events.addAll(repairs.getOrDefault(test, List.of())));
        events.removeIf(event -> !history.toldBefore(event.number(), at.position()));
        events.sort(Comparator.comparing(ReceiptEvent::number));
        List<ReceiptBook> books = new ArrayList<>();
        int count = events.size();
        books.add(book(events.subList(0, count)));
        while (count > 0 && events.get(count - 1).instant().plus(moment).isAfter(at.instant())) {
            count--;
            books.add(book(events.subList(0, count)));
        }
        return books;
    }

    private static ReceiptBook book(List<ReceiptEvent> events) {
        return ReceiptBook.of(events, (event, words) -> { });
    }
}
