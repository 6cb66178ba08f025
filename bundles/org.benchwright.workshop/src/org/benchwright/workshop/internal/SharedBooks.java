package org.benchwright.workshop.internal;

import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.ledger.Checkpoint;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.EntrySignature;
import org.benchwright.ledger.Forwarder;
import org.benchwright.ledger.KnownSigner;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.PostgresLedger;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;

/**
 * A bench's ledger whose books are those of the shared one: what is entered in a book is entered there, behind all that this bench has done so
 * far, and fetched at once. Tests are the bench's own.
 */
public final class SharedBooks implements Ledger {

    private final SqliteLedger own;
    private final PostgresLedger shared;
    private final Forwarder forwarder;

    /**
     * @param own    the bench's ledger; stays open
     * @param shared the shared ledger; closed with this
     * @param bench  the bench's key
     */
    public SharedBooks(SqliteLedger own, PostgresLedger shared, Signer bench) {
        this.own = own;
        this.shared = shared;
        this.forwarder = new Forwarder(own, shared, bench, Clock.systemUTC());
    }

    /** The shared ledger itself, with the tests of all benches that have arrived. */
    public Ledger ofAllBenches() {
        return shared;
    }

    private Ledger of(TestId chain) {
        return chain.isTest() ? own : shared;
    }

    private void forward() throws LedgerException {
        forwarder.run(reached -> { }, Cancellation.never());
        // Also what was fetched before and not erased, since the power was cut in between.
        FileEraser.erase(own);
    }

    @Override
    public List<LedgerEntry> append(TestId test, long expectedSequence, List<EntryDraft> drafts, Map<TestId, Long> basis) throws LedgerException {
        return own.append(test, expectedSequence, drafts, basis);
    }

    @Override
    public LedgerEntry appendSigned(EntryDraft draft, long expectedSequence, Signing signing, Map<TestId, Long> basis) throws LedgerException {
        if (draft.test().isTest()) {
            return own.appendSigned(draft, expectedSequence, signing, basis);
        }
        forward();
        LedgerEntry entered = shared.appendSigned(draft, expectedSequence, signing, basis);
        forwarder.fetchBooks();
        return entered;
    }

    @Override
    public List<LedgerEntry> entries(TestId test) throws LedgerException {
        return of(test).entries(test);
    }

    @Override
    public List<LedgerEntry> entries(TestId test, long from) throws LedgerException {
        return of(test).entries(test, from);
    }

    @Override
    public List<LedgerEntry> entries(TestId test, String kind) throws LedgerException {
        return of(test).entries(test, kind);
    }

    @Override
    public void scan(long fromPosition, Consumer<LedgerEntry> consumer, Cancellation cancellation) throws LedgerException {
        own.scan(fromPosition, consumer, cancellation);
    }

    @Override
    public List<TestId> tests() throws LedgerException {
        return own.tests();
    }

    @Override
    public List<LedgerEntry> openings(long fromPosition) throws LedgerException {
        return own.openings(fromPosition);
    }

    @Override
    public List<LedgerEntry> openingsNaming(String text, long before, int most) throws LedgerException {
        return own.openingsNaming(text, before, most);
    }

    @Override
    public Map<TestId, Link> unsealed() throws LedgerException {
        return own.unsealed();
    }

    @Override
    public long lastSequence(TestId test) throws LedgerException {
        return of(test).lastSequence(test);
    }

    @Override
    public boolean sealed(TestId test) throws LedgerException {
        return of(test).sealed(test);
    }

    /** Kept in both: a book's entry may name it, and so may a test. */
    @Override
    public Digest keep(byte[] content, DocumentKind kind) throws LedgerException {
        shared.keep(content, kind);
        return own.keep(content, kind);
    }

    @Override
    public Optional<byte[]> document(Digest digest) throws LedgerException {
        Optional<byte[]> here = own.document(digest);
        return here.isPresent() ? here : shared.document(digest);
    }

    @Override
    public List<EntrySignature> signatures(TestId test) throws LedgerException {
        return of(test).signatures(test);
    }

    @Override
    public List<KnownSigner> signers() throws LedgerException {
        Map<Digest, KnownSigner> all = new HashMap<>();
        List<KnownSigner> signers = new ArrayList<>();
        for (Ledger each : List.of(own, shared)) {
            for (KnownSigner signer : each.signers()) {
                if (all.putIfAbsent(signer.key().fingerprint(), signer) == null) {
                    signers.add(signer);
                }
            }
        }
        return List.copyOf(signers);
    }

    @Override
    public List<Checkpoint> checkpoints() throws LedgerException {
        return own.checkpoints();
    }

    @Override
    public List<Digest> inclusionPath(long position, long size) throws LedgerException {
        return own.inclusionPath(position, size);
    }

    @Override
    public List<Digest> consistencyPath(long older, long size) throws LedgerException {
        return own.consistencyPath(older, size);
    }

    @Override
    public void close() throws LedgerException {
        shared.close();
    }
}
