package org.benchwright.ledger;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.Arrivals;
import org.benchwright.ledger.internal.LedgerTables.Behind;
import org.benchwright.ledger.internal.LedgerTables.Reached;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.References;

/**
 * Brings a bench's tests into a ledger that benches share, and that ledger's books to the bench. Tests go up in the order in which the bench
 * wrote them, each event once: where the shared ledger stands is read from itself, so nothing has to be remembered, and whoever is killed in
 * the middle begins anew and repeats nothing. What is there with other bytes stops its test and is left as it is.
 */
public final class Forwarder {

    private static final int MOST_EVENTS = 100;
    private static final long MOST_BYTES = 2 << 20;
    private static final int MOST_NAMES = 500;

    private final TableLedger own;
    private final TableLedger shared;
    private final Signer bench;
    private final Clock clock;
    private final Map<TestId, Reached> there = new HashMap<>();
    private final Map<TestId, ForwardingStop> stops = new LinkedHashMap<>();
    private final Set<Digest> documents = new HashSet<>();
    private Map<String, KnownSigner> signers = Map.of();
    private boolean compared;
    private long next = 1;

    /**
     * @param own    the bench's ledger
     * @param shared the ledger that benches share
     * @param bench  the bench's key
     * @param clock  for the instants of checkpoints
     */
    public Forwarder(SqliteLedger own, PostgresLedger shared, Signer bench, Clock clock) {
        this.own = own;
        this.shared = shared;
        this.bench = bench;
        this.clock = clock;
    }

    /**
     * How far it has come.
     *
     * @param added   events that were added to the shared ledger
     * @param fetched events of the books that were added to the bench's ledger
     * @param reached position in the bench's ledger up to which everything is there, but for tests that stopped
     * @param stops   the tests that stopped
     */
    public record Outcome(long added, long fetched, long reached, List<ForwardingStop> stops) {

        public Outcome {
            stops = List.copyOf(stops);
        }
    }

    /** Is told how far it has come, after each step that is durable in the shared ledger. */
    @FunctionalInterface
    public interface Listener {
        void reached(Outcome outcome);
    }

    /**
     * Fetches what is new in the books, then forwards until nothing is left.
     *
     * @throws BooksDifferException when the bench's books are not the beginning of those of the shared ledger
     * @throws LedgerException      when one of the two can't be reached, read or written; calling again, with a new forwarder if need be, goes on
     */
    public Outcome run(Listener listener, Cancellation cancellation) throws LedgerException {
        long fetched = fetchBooks();
        if (!compared) {
            compare();
            compared = true;
        }
        signers = keys(own.signers());
        long added = 0;
        List<LedgerEntry> page = own.page(next);
        while (!page.isEmpty() && !cancellation.requested()) {
            for (List<LedgerEntry> part : parts(page)) {
                added += forward(part);
                next = part.get(part.size() - 1).position() + 1;
                listener.reached(new Outcome(added, fetched, next - 1, List.copyOf(stops.values())));
                if (cancellation.requested()) {
                    break;
                }
            }
            signers = keys(own.signers());
            page = own.page(next);
        }
        Outcome outcome = new Outcome(added, fetched, next - 1, List.copyOf(stops.values()));
        listener.reached(outcome);
        return outcome;
    }

    private static Map<String, KnownSigner> keys(List<KnownSigner> all) {
        Map<String, KnownSigner> keys = new HashMap<>();
        all.forEach(signer -> keys.put(signer.key().fingerprint().hex(), signer));
        return keys;
    }

    /**
     * What is not forwarded yet, as far as a bench can tell by itself.
     *
     * @param events how many events
     * @param since  instant of the first of them
     */
    public record Waiting(long events, Optional<Instant> since) {
    }

    /** The events of tests behind the position that a forwarder has {@linkplain Outcome#reached reached}. */
    public static Waiting waiting(SqliteLedger own, long reached) throws LedgerException {
        Behind behind = ((TableLedger) own).behind(reached);
        return new Waiting(behind.count(), behind.since());
    }

    // ---- books

    /**
     * Adds what is new in the shared books to those of the bench, in the same order among one another.
     *
     * @return how many events
     * @throws BooksDifferException when the bench's books are not the beginning of those
     */
    public long fetchBooks() throws LedgerException {
        return bringBooks(shared, own, "forward.bookDiffers");
    }

    /**
     * Puts the bench's books into a shared ledger whose own are empty, or the beginning of the bench's: how a shared ledger gets its books from
     * the first bench.
     *
     * @return how many events
     * @throws BooksDifferException when the shared ledger's books are not the beginning of the bench's
     */
    public long lendBooks() throws LedgerException {
        return bringBooks(own, shared, "forward.bookLent");
    }

    private long bringBooks(TableLedger from, TableLedger to, String differs) throws LedgerException {
        if (from.reached(TestId.BOOKS).equals(to.reached(TestId.BOOKS))) {
            return 0;
        }
        List<LedgerEntry> lacking = new ArrayList<>();
        TableLedger.Books books = from.books();
        for (TestId book : TestId.BOOKS) {
            List<LedgerEntry> whole = books.all().get(book);
            long known = to.lastSequence(book);
            boolean beginning = known <= whole.size()
                    && (known == 0 || to.link(book, known).equals(Optional.of(whole.get((int) known - 1).link())));
            if (!beginning) {
                throw new BooksDifferException(Messages.text(differs, book));
            }
            if (known < whole.size()) {
                lacking.addAll(books.sound(book).subList((int) known, whole.size()));
            }
        }
        if (lacking.isEmpty()) {
            return 0;
        }
        lacking.sort(Comparator.comparingLong(LedgerEntry::position));
        for (LedgerEntry entry : lacking) {
            bringDocuments(entry, from, to);
        }
        Map<String, KnownSigner> listed = keys(books.signers());
        List<Arriving> arriving = new ArrayList<>();
        for (LedgerEntry entry : lacking) {
            List<LedgerEntry> whole = books.all().get(entry.test());
            Link before = entry.sequence() == 1 ? Link.before(entry.test()) : whole.get((int) entry.sequence() - 2).link();
            arriving.add(new Arriving(entry, before, signer(entry, listed)));
        }
        Arrivals.Result result = to.arrive(arriving, bench, now());
        if (!result.stops().isEmpty()) {
            throw new BooksDifferException(Messages.text(differs, result.stops().get(0).test()));
        }
        return result.added();
    }

    // ---- tests

    /** Finds the first event that lacks in the shared ledger; and tests that are there with other bytes. */
    private void compare() throws LedgerException {
        // First the end, then the tests: what is appended in between is looked at with what comes later.
        long end = own.lastPosition();
        Map<TestId, Reached> here = own.reached();
        List<TestId> tests = List.copyOf(here.keySet());
        for (int at = 0; at < tests.size(); at += MOST_NAMES) {
            there.putAll(shared.reached(tests.subList(at, Math.min(at + MOST_NAMES, tests.size()))));
        }
        long first = Long.MAX_VALUE;
        for (Map.Entry<TestId, Reached> each : here.entrySet()) {
            TestId test = each.getKey();
            Reached far = there.getOrDefault(test, new Reached(0, Link.before(test)));
            if (!agree(test, each.getValue(), far)) {
                continue;
            }
            if (far.sequence() < each.getValue().sequence()) {
                first = Math.min(first, own.position(test, far.sequence() + 1).orElse(1));
            }
        }
        next = first == Long.MAX_VALUE ? end + 1 : Math.min(first, end + 1);
    }

    private boolean agree(TestId test, Reached here, Reached far) throws LedgerException {
        if (far.sequence() > here.sequence()) {
            boolean older = shared.link(test, here.sequence()).equals(Optional.of(here.link()));
            stop(test, here.sequence() + 1, older ? "forward.olderHere" : "forward.otherBytes");
            return false;
        }
        boolean same = far.sequence() == 0 || own.link(test, far.sequence()).equals(Optional.of(far.link()));
        if (!same) {
            stop(test, far.sequence(), "forward.otherBytes");
        }
        return same;
    }

    private void stop(TestId test, long sequence, String key) {
        stops.putIfAbsent(test, new ForwardingStop(test, sequence, Messages.text(key, test, sequence)));
    }

    /** Cuts a page where a part has enough events or bytes. */
    private static List<List<LedgerEntry>> parts(List<LedgerEntry> page) {
        List<List<LedgerEntry>> parts = new ArrayList<>();
        List<LedgerEntry> part = new ArrayList<>();
        long bytes = 0;
        for (LedgerEntry entry : page) {
            part.add(entry);
            bytes += entry.payload().length();
            if (part.size() == MOST_EVENTS || bytes >= MOST_BYTES) {
                parts.add(List.copyOf(part));
                part.clear();
                bytes = 0;
            }
        }
        if (!part.isEmpty()) {
            parts.add(List.copyOf(part));
        }
        return parts;
    }

    private long forward(List<LedgerEntry> part) throws LedgerException {
        List<Arriving> arriving = new ArrayList<>();
        Map<TestId, Reached> after = new HashMap<>();
        for (LedgerEntry entry : part) {
            TestId test = entry.test();
            Reached far = after.getOrDefault(test, there.getOrDefault(test, new Reached(0, Link.before(test))));
            if (!test.isTest() || stops.containsKey(test) || entry.sequence() <= far.sequence()) {
                continue;
            }
            Optional<KnownSigner> signer = signer(entry, signers);
            if (entry.sequence() != far.sequence() + 1 || !far.link().next(entry.canonical()).equals(entry.link())
                    || signer.isPresent() && !SignedBook.signed(entry, far.link(), Map.of(signer.get().key().fingerprint().hex(), signer.get().key()))
                    || signer.isEmpty() && EntrySignature.in(entry).isPresent()) {
                // What this ledger itself doesn't vouch for goes nowhere.
                stop(test, entry.sequence(), "forward.falseHere");
                continue;
            }
            bringDocuments(entry, own, shared);
            arriving.add(new Arriving(entry, far.link(), signer));
            after.put(test, new Reached(entry.sequence(), entry.link()));
        }
        if (arriving.isEmpty()) {
            return 0;
        }
        Arrivals.Result result = shared.arrive(arriving, bench, now());
        result.stops().forEach(stop -> stops.putIfAbsent(stop.test(), stop));
        there.putAll(after);
        return result.added();
    }

    private static Optional<KnownSigner> signer(LedgerEntry entry, Map<String, KnownSigner> listed) {
        return EntrySignature.in(entry).flatMap(signature -> Optional.ofNullable(listed.get(signature.fingerprint().hex())));
    }

    /** Documents go before the events that name them, each by itself: other benches wait no longer than for one. */
    private void bringDocuments(LedgerEntry entry, TableLedger from, TableLedger to) throws LedgerException {
        for (Digest named : References.in(entry.payload())) {
            if (documents.contains(named)) {
                continue;
            }
            if (to.kind(named).isEmpty()) {
                Optional<DocumentKind> kind = from.kind(named);
                Optional<byte[]> content = from.document(named);
                if (kind.isPresent() && content.isPresent()) {
                    to.keep(content.get(), kind.get());
                } else if (kind.equals(Optional.of(DocumentKind.ATTACHMENT))) {
                    // Withdrawn before it was forwarded; the event that says so follows.
                    to.keepWithdrawn(named, from.size(named).orElse(0));
                }
            }
            documents.add(named);
        }
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }
}
