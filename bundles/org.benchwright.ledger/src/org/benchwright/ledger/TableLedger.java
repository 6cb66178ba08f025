package org.benchwright.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.Database;
import org.benchwright.ledger.internal.LedgerTables;

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
        return database.read(connection -> tables.entries(connection, test));
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
    public List<LedgerEntry> openings() throws LedgerException {
        return database.read(tables::openings);
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

    @Override
    public void close() throws LedgerException {
        database.close();
    }
}
