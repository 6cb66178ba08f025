package org.benchwright.ledger;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.Arrivals;
import org.benchwright.ledger.internal.Database;
import org.benchwright.ledger.internal.LedgerTables;
import org.benchwright.ledger.internal.LedgerTables.Behind;
import org.benchwright.ledger.internal.LedgerTables.Reached;

/** A ledger in tables, whatever database they are in. */
abstract class TableLedger implements Ledger {

    private static final int PAGE = 256;

    private final Database database;
    private final LedgerTables tables;

    /** A ledger in the {@code tables} of {@code database}, which it closes. */
    TableLedger(Database database, LedgerTables tables) {
        this.database = database;
        this.tables = tables;
    }

    @Override
    public List<LedgerEntry> append(TestId test, long expectedSequence, List<EntryDraft> drafts, Map<TestId, Long> basis)
            throws LedgerException {
        return tables.append(database, test, expectedSequence, drafts, basis);
    }

    @Override
    public LedgerEntry appendSigned(EntryDraft draft, long expectedSequence, Signing signing, Map<TestId, Long> basis) throws LedgerException {
        return tables.appendSigned(database, draft, expectedSequence, signing, basis);
    }

    @Override
    public List<LedgerEntry> entries(TestId test) throws LedgerException {
        return entries(test, 1);
    }

    @Override
    public List<LedgerEntry> entries(TestId test, long from) throws LedgerException {
        return database.read(connection -> tables.entries(connection, test, from));
    }

    @Override
    public List<LedgerEntry> entries(TestId test, String kind) throws LedgerException {
        return database.read(connection -> tables.entries(connection, test, kind));
    }

    @Override
    public void scan(long fromPosition, Consumer<LedgerEntry> consumer, Cancellation cancellation) throws LedgerException {
        long next = fromPosition;
        while (!cancellation.requested()) {
            long from = next;
            // Page by page, so that the consumer runs outside of any transaction and may take its time.
            List<LedgerEntry> page = database.read(connection -> tables.page(connection, from, PAGE));
            if (page.isEmpty()) {
                return;
            }
            for (LedgerEntry entry : page) {
                if (cancellation.requested()) {
                    return;
                }
                consumer.accept(entry);
            }
            next = page.get(page.size() - 1).position() + 1;
        }
    }

    @Override
    public List<TestId> tests() throws LedgerException {
        return database.read(tables::tests);
    }

    @Override
    public List<LedgerEntry> openings(long fromPosition) throws LedgerException {
        return database.read(connection -> tables.openings(connection, fromPosition));
    }

    @Override
    public List<LedgerEntry> openingsNaming(String text, long before, int most) throws LedgerException {
        return database.read(connection -> tables.openingsNaming(connection, text, before, most));
    }

    @Override
    public Map<TestId, Link> unsealed() throws LedgerException {
        return database.read(tables::unsealed);
    }

    @Override
    public long lastSequence(TestId test) throws LedgerException {
        return database.read(connection -> tables.lastSequence(connection, test));
    }

    @Override
    public boolean sealed(TestId test) throws LedgerException {
        return database.read(connection -> tables.sealed(connection, test));
    }

    @Override
    public Digest keep(byte[] content, DocumentKind kind) throws LedgerException {
        return tables.keep(database, content.clone(), kind);
    }

    @Override
    public Optional<byte[]> document(Digest digest) throws LedgerException {
        return database.read(connection -> tables.document(connection, digest));
    }

    @Override
    public List<EntrySignature> signatures(TestId test) throws LedgerException {
        List<EntrySignature> signatures = new ArrayList<>();
        for (LedgerEntry entry : entries(test)) {
            EntrySignature.in(entry).ifPresent(signatures::add);
        }
        return List.copyOf(signatures);
    }

    @Override
    public List<KnownSigner> signers() throws LedgerException {
        return database.read(tables::signers);
    }

    @Override
    public List<Checkpoint> checkpoints() throws LedgerException {
        return database.read(tables::checkpoints);
    }

    @Override
    public List<Digest> inclusionPath(long position, long size) throws LedgerException {
        return database.read(connection -> tables.inclusionPath(connection, position, size));
    }

    @Override
    public List<Digest> consistencyPath(long older, long size) throws LedgerException {
        return database.read(connection -> tables.consistencyPath(connection, older, size));
    }

    /** Takes events up that come from another ledger; all or none of them. */
    Arrivals.Result arrive(List<Arriving> arriving, Signer bench, Instant now) throws LedgerException {
        return database.write(connection -> {
            Arrivals arrivals = new Arrivals(connection, tables, bench, now);
            for (Arriving each : arriving) {
                arrivals.take(each.entry(), each.before(), each.signer());
            }
            return arrivals.result();
        });
    }

    /** All books and the keys that signed, in one view. */
    Books books() throws LedgerException {
        return database.read(connection -> {
            Map<TestId, List<LedgerEntry>> books = new HashMap<>();
            for (TestId book : TestId.BOOKS) {
                books.put(book, tables.entries(connection, book, 1));
            }
            return new Books(books, tables.signers(connection));
        });
    }

    /** The books of a ledger. */
    record Books(Map<TestId, List<LedgerEntry>> all, List<KnownSigner> signers) {

        /** This book, only when all of it is as it was signed. */
        List<LedgerEntry> sound(TestId book) throws LedgerException {
            return SignedBook.sound(all.get(book), book, signers, true);
        }
    }

    /** How far all tests have come. */
    Map<TestId, Reached> reached() throws LedgerException {
        return database.read(tables::reached);
    }

    /** How far these have come; those without an event are left out. */
    Map<TestId, Reached> reached(Collection<TestId> tests) throws LedgerException {
        return database.read(connection -> tables.reached(connection, tests));
    }

    Optional<Link> link(TestId test, long sequence) throws LedgerException {
        return database.read(connection -> tables.link(connection, test, sequence));
    }

    OptionalLong position(TestId test, long sequence) throws LedgerException {
        return database.read(connection -> tables.position(connection, test, sequence));
    }

    long lastPosition() throws LedgerException {
        return database.read(tables::lastPosition);
    }

    /** How many bytes a document has, or had before it was withdrawn. */
    OptionalLong size(Digest digest) throws LedgerException {
        return database.read(connection -> tables.size(connection, digest));
    }

    /** Keeps the place of an attachment that was withdrawn in the ledger from which it comes. */
    void keepWithdrawn(Digest digest, long size) throws LedgerException {
        tables.keepWithdrawn(database, digest, size);
    }

    Optional<DocumentKind> kind(Digest digest) throws LedgerException {
        return database.read(connection -> tables.kind(connection, digest));
    }

    List<LedgerEntry> page(long fromPosition) throws LedgerException {
        return database.read(connection -> tables.page(connection, fromPosition, PAGE));
    }

    Behind behind(long position) throws LedgerException {
        return database.read(connection -> tables.behind(connection, position));
    }

    @Override
    public void close() throws LedgerException {
        database.close();
    }
}
