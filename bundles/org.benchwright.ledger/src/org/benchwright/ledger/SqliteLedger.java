package org.benchwright.ledger;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.LedgerTables;
import org.benchwright.ledger.internal.SqliteFile;

/** The ledger of a bench: one SQLite file in a folder of its own, large attachments beside it. */
public final class SqliteLedger implements Ledger {

    private static final int PAGE = 256;

    private final SqliteFile file;
    private final LedgerTables tables;

    private SqliteLedger(SqliteFile file) {
        this.file = file;
        this.tables = LedgerTables.of(file.path());
    }

    /**
     * Opens the ledger; makes it, and its folder, when there is none.
     *
     * @throws LedgerFormatException   when the file is something else
     * @throws LedgerVersionException  when a newer release wrote it
     * @throws LedgerReadOnlyException when file or folder can't be written to
     * @throws LedgerBusyException     when another program held it for too long
     * @throws LedgerFullException     when there is no room for it
     * @throws LedgerDamagedException  when its tables or safeguards are not as this program made them
     */
    public static SqliteLedger open(Path file) throws LedgerException {
        return open(file, LedgerOptions.standard());
    }

    /** As {@link #open(Path)}, with options. */
    public static SqliteLedger open(Path file, LedgerOptions options) throws LedgerException {
        return new SqliteLedger(SqliteFile.openOrCreate(file, options));
    }

    /**
     * Opens the ledger for reading; works on a read-only file or folder too, and makes nothing where there is nothing.
     *
     * @throws LedgerMissingException when there is no file
     * @throws LedgerFormatException  when the file is something else
     * @throws LedgerVersionException when a newer release wrote it
     */
    public static SqliteLedger openReadOnly(Path file) throws LedgerException {
        return new SqliteLedger(SqliteFile.openReadOnly(file, LedgerOptions.standard()));
    }

    @Override
    public List<LedgerEntry> append(TestId test, long expectedSequence, List<EntryDraft> drafts) throws LedgerException {
        return tables.append(file, test, expectedSequence, drafts);
    }

    @Override
    public LedgerEntry appendSigned(EntryDraft draft, long expectedSequence, Signer signer, Meaning meaning, String printedName)
            throws LedgerException {
        return tables.appendSigned(file, draft, expectedSequence, signer, meaning, printedName);
    }

    @Override
    public List<LedgerEntry> entries(TestId test) throws LedgerException {
        return file.read(connection -> tables.entries(connection, test));
    }

    @Override
    public void scan(long fromPosition, Consumer<LedgerEntry> consumer, Cancellation cancellation) throws LedgerException {
        long next = fromPosition;
        while (!cancellation.requested()) {
            long from = next;
            // Page by page, so that the consumer runs outside of any transaction and may take its time.
            List<LedgerEntry> page = file.read(connection -> tables.page(connection, from, PAGE));
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
        return file.read(tables::tests);
    }

    @Override
    public long lastSequence(TestId test) throws LedgerException {
        return file.read(connection -> tables.lastSequence(connection, test));
    }

    @Override
    public boolean sealed(TestId test) throws LedgerException {
        return file.read(connection -> tables.sealed(connection, test));
    }

    @Override
    public Digest keep(byte[] content, DocumentKind kind) throws LedgerException {
        return tables.keep(file, content.clone(), kind);
    }

    @Override
    public Optional<byte[]> document(Digest digest) throws LedgerException {
        return file.read(connection -> tables.document(connection, digest));
    }

    @Override
    public List<EntrySignature> signatures(TestId test) throws LedgerException {
        List<EntrySignature> signatures = new ArrayList<>();
        for (LedgerEntry entry : entries(test)) {
            LedgerTables.signature(entry).ifPresent(signatures::add);
        }
        return List.copyOf(signatures);
    }

    @Override
    public List<KnownSigner> signers() throws LedgerException {
        return file.read(tables::signers);
    }

    @Override
    public List<Checkpoint> checkpoints() throws LedgerException {
        return file.read(tables::checkpoints);
    }

    @Override
    public List<Digest> inclusionPath(long position, long size) throws LedgerException {
        return file.read(connection -> tables.inclusionPath(connection, position, size));
    }

    @Override
    public List<Digest> consistencyPath(long older, long size) throws LedgerException {
        return file.read(connection -> tables.consistencyPath(connection, older, size));
    }

    @Override
    public void close() throws LedgerException {
        file.close();
    }
}
