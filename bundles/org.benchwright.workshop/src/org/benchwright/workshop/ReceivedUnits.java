package org.benchwright.workshop;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Verdict;
import org.benchwright.engine.receipt.Receipt;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.Repair;
import org.benchwright.engine.receipt.Standing;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.LedgerWork;

/** Works out where each unit that came in stands. */
final class ReceivedUnits {

    private static final Set<Standing> MENDABLE = EnumSet.of(Standing.REJECTED, Standing.UNDECIDED, Standing.NOT_VALID);

    private final Ledger ledger;
    private final ReceiptBook book;
    private final LedgerMemory memory;
    private final KeptTests kept = new KeptTests();

    ReceivedUnits(Ledger ledger, ReceiptBook book, LedgerMemory memory) {
        this.ledger = ledger;
        this.book = book;
        this.memory = memory;
    }

    List<ReceivedUnit> all() throws LedgerException, StoreException, FaultyRecordException {
        Map<Long, TestId> tests = memory.arrivals(ledger);
        Map<String, Long> newest = new HashMap<>();
        book.receipts().forEach(receipt -> newest.put(receipt.said().unit(), receipt.number()));
        Map<String, Repair> repairs = new HashMap<>();
        book.repairs().forEach(repair -> repairs.put(repair.said().test(), repair));
        List<ReceivedUnit> units = new ArrayList<>();
        for (Receipt receipt : book.receipts()) {
            Optional<TestId> test = Optional.ofNullable(tests.get(receipt.number()));
            boolean again = newest.get(receipt.said().unit()) != receipt.number();
            units.add(unit(receipt, test, again, test.flatMap(id -> Optional.ofNullable(repairs.get(id.value())))));
        }
        return List.copyOf(units);
    }

    private ReceivedUnit unit(Receipt receipt, Optional<TestId> test, boolean again, Optional<Repair> repair)
            throws StoreException, FaultyRecordException {
        if (receipt.left().isPresent()) {
            return new ReceivedUnit(receipt, Standing.GIVEN_BACK, test.map(TestId::value), receipt.instant());
        } else if (test.isEmpty()) {
            return new ReceivedUnit(receipt, again ? Standing.CAME_AGAIN : Standing.WAITING, Optional.empty(), receipt.instant());
        }
        LedgerMemory.Remembered stood = stood(test.get());
        boolean repaired = repair.isPresent() && MENDABLE.contains(stood.standing());
        Standing standing = again && stood.standing().inHouse() ? Standing.CAME_AGAIN : repaired ? Standing.REPAIRED : stood.standing();
        Instant since = standing == Standing.REPAIRED ? repair.get().instant() : stood.since();
        return new ReceivedUnit(receipt, standing, test.map(TestId::value), since);
    }

    private LedgerMemory.Remembered stood(TestId test) throws StoreException, FaultyRecordException {
        return LedgerWork.of(() -> {
            long sequence = ledger.lastSequence(test);
            Optional<LedgerMemory.Remembered> known = memory.of(test.value(), sequence);
            if (known.isEmpty()) {
                known = Optional.of(read(test, sequence));
                memory.remember(test.value(), known.get());
            }
            return known.get();
        });
    }

    private LedgerMemory.Remembered read(TestId test, long sequence) throws LedgerException, StoreException, FaultyRecordException {
        List<LedgerEntry> entries = ledger.entries(test);
        Instant last = entries.get(entries.size() - 1).instant();
        Optional<LedgerEntry> handedOver = entries.stream().filter(entry -> entry.kind().equals(EventKinds.HANDED_OVER)).findFirst();
        if (handedOver.isPresent()) {
            return new LedgerMemory.Remembered(sequence, Standing.HANDED_OVER, handedOver.get().instant());
        }
        KeptTest found = kept.read(ledger, test);
        if (!found.counts()) {
            return new LedgerMemory.Remembered(sequence, Standing.NOT_VALID, last);
        }
        if (found.run().ended()) {
            return new LedgerMemory.Remembered(sequence, of(found.run().verdict().orElse(Verdict.UNDECIDED)), found.run().lastMoment().instant());
        }
        return new LedgerMemory.Remembered(sequence, found.run().onSoak() ? Standing.ON_SOAK : Standing.ON_TEST, last);
    }

    private static Standing of(Verdict verdict) {
        return switch (verdict) {
            case ACCEPTED -> Standing.ACCEPTED;
            case REJECTED -> Standing.REJECTED;
            case UNDECIDED -> Standing.UNDECIDED;
        };
    }
}
