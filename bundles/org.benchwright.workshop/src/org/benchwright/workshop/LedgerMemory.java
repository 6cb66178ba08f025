package org.benchwright.workshop;

import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

import org.benchwright.engine.event.Arrival;
import org.benchwright.engine.receipt.Standing;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.SignedBook;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.People;
import org.benchwright.workshop.internal.BooksRead;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.ReceiptHistory;
import org.benchwright.workshop.internal.TestsOfUnit;

/**
 * Remembers what was read of one ledger, so that only what came since is read again: its books, the tests that were open, which test each
 * receipt led to, and where units stood. Events are only ever added, and the link of an event stands for all before it: what is remembered
 * counts as long as the link that it ends with is where it was. May be used from several threads.
 */
public final class LedgerMemory {

    private final Map<TestId, List<LedgerEntry>> books = new ConcurrentHashMap<>();
    private final Map<String, Remembered> tests = new ConcurrentHashMap<>();
    private volatile Optional<ReceiptHistory> receipts = Optional.empty();
    private volatile Register register = new Register(List.of(), People.none());
    private volatile Map<TestId, Open> open = Map.of();
    private volatile Arrived arrived = new Arrived(Optional.empty(), Map.of());

    /**
     * Where a test stood.
     *
     * @param sequence number of its last event then
     * @param standing where its unit stood
     * @param since    since when
     */
    record Remembered(long sequence, Standing standing, Instant since) {
    }

    /** What the book of people makes. */
    private record Register(List<LedgerEntry> entries, People people) {
    }

    /** An open test as the events up to that link make it. */
    private record Open(Link link, KeptTest test) {
    }

    /** The last test that each receipt led to, as far as the opening of a test, the last that was read. */
    private record Arrived(Optional<LedgerEntry> last, Map<Long, TestId> tests) {
    }

    /** The books as work relies on them. */
    BooksRead books() {
        return this::book;
    }

    private List<LedgerEntry> book(Ledger ledger, TestId book) throws LedgerException {
        List<LedgerEntry> read = SignedBook.readOn(ledger, book, books.getOrDefault(book, List.of()));
        books.put(book, read);
        return read;
    }

    /** The register of people. */
    People people(Ledger ledger) throws LedgerException {
        List<LedgerEntry> entries = book(ledger, TestId.PEOPLE);
        Register known = register;
        if (known.entries() != entries) {
            known = new Register(entries, People.of(entries));
            register = known;
        }
        return known.people();
    }

    /** The book of receipts. */
    ReceiptHistory receipts(Ledger ledger) throws LedgerException {
        ReceiptHistory read = ReceiptHistory.trusted(ledger, receipts);
        receipts = Optional.of(read);
        return read;
    }

    /** The tests that are not sealed, in the order in which they were opened. */
    List<KeptTest> open(Ledger ledger) throws LedgerException, StoreException, FaultyRecordException {
        KeptTests reader = KeptTests.remembering();
        Map<TestId, Open> before = open;
        Map<TestId, Open> now = new LinkedHashMap<>();
        for (Map.Entry<TestId, Link> unsealed : ledger.unsealed().entrySet()) {
            Optional<Open> known = Optional.ofNullable(before.get(unsealed.getKey())).filter(test -> test.link().equals(unsealed.getValue()));
            now.put(unsealed.getKey(), known.isPresent() ? known.get() : read(reader, ledger, unsealed.getKey()));
        }
        open = now;
        return now.values().stream().map(Open::test).filter(test -> !test.sealed()).toList();
    }

    /** Somebody may have gone on with it meanwhile: the link is that of what was read. */
    private static Open read(KeptTests reader, Ledger ledger, TestId test) throws LedgerException, StoreException, FaultyRecordException {
        List<LedgerEntry> entries = ledger.entries(test);
        return new Open(entries.get(entries.size() - 1).link(), reader.derive(ledger, test, entries));
    }

    /** The last test that was opened for each receipt. */
    Map<Long, TestId> arrivals(Ledger ledger) throws LedgerException {
        Arrived known = arrived;
        List<LedgerEntry> newer = ledger.openings(known.last().map(LedgerEntry::position).orElse(1L));
        boolean fits = known.last().isEmpty() || !newer.isEmpty() && newer.get(0).link().equals(known.last().get().link());
        Map<Long, TestId> tests = new HashMap<>(fits ? known.tests() : Map.of());
        List<LedgerEntry> added = fits ? newer : ledger.openings();
        for (TestsOfUnit.Opening opening : TestsOfUnit.decoded(added)) {
            opening.opened().receipt().map(Arrival::receipt).ifPresent(receipt -> tests.put(receipt, opening.test()));
        }
        if (!added.isEmpty()) {
            arrived = new Arrived(Optional.of(added.get(added.size() - 1)), tests);
        }
        return tests;
    }

    Optional<Remembered> of(String test, long sequence) {
        return Optional.ofNullable(tests.get(test)).filter(known -> known.sequence() == sequence);
    }

    void remember(String test, Remembered what) {
        tests.put(test, what);
    }
}
