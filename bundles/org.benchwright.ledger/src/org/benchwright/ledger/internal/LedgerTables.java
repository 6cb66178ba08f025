package org.benchwright.ledger.internal;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchwright.core.Digest;
import org.benchwright.ledger.Checkpoint;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.KnownSigner;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.MerkleTree;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.SealedTestException;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.WithdrawnDocumentException;
import org.benchwright.ledger.internal.JsonValue.Members;

/** What is done within one transaction on the ledger's tables, and the rules of appending. */
public record LedgerTables(EventTable events, DocumentTable documents, SealTables seals) {

    /** The tables of the ledger in the file {@code path}; large attachments lie beside it. */
    public static LedgerTables of(Path path) {
        return at(new EventTable(path.toString(), EventTable.HOLDING_IN_SQLITE, new KeptStatements()), Optional.of(Attachments.beside(path)));
    }

    /** The tables of a ledger that keeps everything in its database. */
    public static LedgerTables within(String place) {
        return at(new EventTable(place, EventTable.HOLDING_IN_POSTGRES, new KeptStatements()), Optional.empty());
    }

    private static LedgerTables at(EventTable events, Optional<Attachments> attachments) {
        return new LedgerTables(events, new DocumentTable(events.place(), attachments), new SealTables(events.place()));
    }

    /** Appends unsigned events; {@code basis} is where other chains must stand. */
    public List<LedgerEntry> append(Database database, TestId test, long expected, List<EntryDraft> drafts, Map<TestId, Long> basis)
            throws LedgerException {
        if (drafts.isEmpty() || drafts.stream().anyMatch(draft -> !draft.test().equals(test))) {
            throw new IllegalArgumentException("an append is of one or more events of one test");
        }
        List<Members> payloads = new ArrayList<>();
        for (EntryDraft draft : drafts) {
            if (draft.kind().equals(EventKinds.SEALED)) {
                throw new SealedTestException(Messages.text("sealMustBeSigned", test));
            }
            if (!test.isTest()) {
                throw new PayloadException(Messages.text("bookUnsigned", test));
            }
            payloads.add(payload(draft));
        }
        return database.write(connection -> {
            expectBasis(connection, basis);
            EventTable.Head head = expectedHead(connection, test, expected);
            if (head.sealed()) {
                throw new SealedTestException(Messages.text("sealedUnsigned", test));
            }
            return insertAll(connection, head, drafts, payloads);
        });
    }

    private List<LedgerEntry> insertAll(Connection connection, EventTable.Head head, List<EntryDraft> drafts, List<Members> payloads)
            throws SQLException, LedgerException {
        List<LedgerEntry> entries = new ArrayList<>();
        long size = events.count(connection);
        long changing = CompactRange.changing(size, drafts.size());
        CompactRange tree = events.last(connection, size, changing);
        Link link = head.link();
        for (int i = 0; i < drafts.size(); i++) {
            Event event = Event.of(drafts.get(i), head.sequence() + 1 + i, payloads.get(i));
            Placed placed = place(connection, event, link, size - changing, tree);
            entries.add(placed.entry());
            link = placed.entry().link();
            tree = placed.tree();
        }
        return List.copyOf(entries);
    }

    /** An event that was inserted, and the tree after it. */
    private record Placed(LedgerEntry entry, CompactRange tree) {
    }

    /** Inserts the next event; {@code tree} is over all events but the first {@code before}. */
    private Placed place(Connection connection, Event event, Link previous, long before, CompactRange tree) throws SQLException, LedgerException {
        byte[] canonical = EventCodec.encode(event);
        Link link = previous.next(canonical);
        CompactRange grown = tree.append(MerkleTree.eventLeaf(event.test(), event.sequence(), link));
        LedgerEntry entry = event.at(before + grown.size(), link, canonical);
        events.insert(connection, entry, canonical, grown.lastSubtree());
        return new Placed(entry, grown);
    }

    /** Appends one signed event and a checkpoint after it; {@code basis} is where other chains must stand. */
    public LedgerEntry appendSigned(Database database, EntryDraft draft, long expected, Signing signing, Map<TestId, Long> basis)
            throws LedgerException {
        Signer signer = signing.signer();
        Members payload = payload(draft);
        String name = CanonicalJson.normalise(signing.printedName().strip());
        if (name.isEmpty()) {
            throw new PayloadException(Messages.text("nameMissing"));
        }
        return database.write(connection -> {
            expectBasis(connection, basis);
            SignaturePart part = new SignaturePart(signing.meaning().word(), name, draft.instant().toString(), signer.key().fingerprint().hex(),
                    register(connection, draft.test()), "");
            EventTable.Head head = expectedHead(connection, draft.test(), expected);
            if (head.sealed() && !EventKinds.AFTER_SEAL.contains(draft.kind())) {
                throw new SealedTestException(Messages.text("sealed", draft.test(), draft.kind()));
            }
            byte[] statement = Statements.signature(draft.test(), head.sequence(), head.link(), draft.kind(), payload, part);
            Members signed = payload.with(SignaturePart.NAME, part.signed(signer.sign(statement)).members());
            Placed placed = place(connection, Event.of(draft, head.sequence() + 1, signed), head.link(), 0, events.tree(connection));
            seals.introduce(connection, signer, draft.instant());
            seals.introduce(connection, signing.bench(), draft.instant());
            seals.checkpoint(connection, signing.bench(), draft.instant(), placed.tree(), documents.head(connection));
            return placed.entry();
        });
    }

    /** How far the register of people is known here, for a signature in a test; it may be signed again elsewhere before the test gets there. */
    private Optional<String> register(Connection connection, TestId test) throws SQLException, LedgerException {
        long known = test.isTest() ? events.head(connection, TestId.PEOPLE).sequence() : 0;
        return known == 0 ? Optional.empty() : Optional.of(Long.toString(known));
    }

    private static Members payload(EntryDraft draft) throws PayloadException {
        Members payload = CanonicalJson.parse(draft.payload());
        if (payload.values().containsKey(SignaturePart.NAME)) {
            throw new PayloadException(Messages.text("payload.signature"));
        }
        return payload;
    }

    private void expectBasis(Connection connection, Map<TestId, Long> basis) throws SQLException, LedgerException {
        for (Map.Entry<TestId, Long> relied : basis.entrySet()) {
            expectedHead(connection, relied.getKey(), relied.getValue());
        }
    }

    private EventTable.Head expectedHead(Connection connection, TestId test, long expected) throws SQLException, LedgerException {
        EventTable.Head head = events.head(connection, test);
        if (head.sequence() != expected) {
            throw new SequenceConflictException(test, expected, head.sequence());
        }
        return head;
    }

    /** Keeps a document. */
    public Digest keep(Database database, byte[] content, DocumentKind kind) throws LedgerException {
        if (content.length > DocumentTable.LARGEST) {
            throw new PayloadException(Messages.text("document.large", content.length, DocumentTable.LARGEST));
        }
        Digest digest = Digest.of(content);
        return database.write(connection -> {
            if (documents.isErased(connection, digest)) {
                throw new WithdrawnDocumentException(Messages.text("document.withdrawn", digest));
            }
            if (documents.isBeside(kind, content.length) && !documents.holds(connection, digest)) {
                writeBeside(digest, content);
            }
            documents.insert(connection, digest, content, kind);
            return digest;
        });
    }

    /**
     * Keeps the place of an attachment that was withdrawn in the ledger from which it comes.
     *
     * @param size how many bytes it had
     */
    public void keepWithdrawn(Database database, Digest digest, long size) throws LedgerException {
        database.write(connection -> {
            documents.insertWithdrawn(connection, digest, size);
            return Boolean.TRUE;
        });
    }

    /** How many bytes a document has, or had before it was withdrawn. */
    public OptionalLong size(Connection connection, Digest digest) throws SQLException {
        return documents.size(connection, digest);
    }

    /** Whether a signed event of the test says that this attachment was withdrawn. */
    public boolean withdrawn(Connection connection, TestId test, Digest attachment) throws SQLException, LedgerException {
        for (LedgerEntry entry : events.entries(connection, test, EventKinds.ATTACHMENT_WITHDRAWN)) {
            if (References.in(entry.payload()).contains(attachment)) {
                return true;
            }
        }
        return false;
    }

    /** Whether bytes of a document stand in its row. */
    public boolean holdsWithin(Connection connection, Digest digest) throws SQLException {
        return documents.holdsWithin(connection, digest);
    }

    /** Takes the bytes out of the row of an attachment, without the safeguard against changes. */
    public int withdraw(Connection connection, Digest attachment) throws SQLException {
        return documents.withdraw(connection, attachment);
    }

    private void writeBeside(Digest digest, byte[] content) throws LedgerException {
        Attachments beside = documents.attachments().orElseThrow();
        try {
            beside.write(digest, content);
        } catch (IOException failure) {
            throw BackupFile.translated(failure, beside.folder());
        }
    }

    /** A kept document. */
    public Optional<byte[]> document(Connection connection, Digest digest) throws SQLException, LedgerException {
        return documents.content(connection, digest);
    }

    /** The events of a test from one of them on. */
    public List<LedgerEntry> entries(Connection connection, TestId test, long from) throws SQLException, LedgerException {
        return events.entries(connection, test, from);
    }

    /** The events of one kind in a test. */
    public List<LedgerEntry> entries(Connection connection, TestId test, String kind) throws SQLException, LedgerException {
        return events.entries(connection, test, kind);
    }

    /** Some events in ledger order. */
    public List<LedgerEntry> page(Connection connection, long fromPosition, int most) throws SQLException, LedgerException {
        return events.page(connection, fromPosition, most);
    }

    /** How far all tests have come: number and link of each one's last event. */
    public Map<TestId, Reached> reached(Connection connection) throws SQLException, LedgerException {
        return reached(events.heads(connection));
    }

    /** How far these tests have come; those without an event are left out. */
    public Map<TestId, Reached> reached(Connection connection, Collection<TestId> tests) throws SQLException, LedgerException {
        return reached(events.heads(connection, tests));
    }

    private static Map<TestId, Reached> reached(Map<TestId, EventTable.Head> heads) {
        Map<TestId, Reached> reached = new LinkedHashMap<>();
        heads.forEach((test, head) -> reached.put(test, new Reached(head.sequence(), head.link())));
        return reached;
    }

    /** Number and link of a test's last event. */
    public record Reached(long sequence, Link link) {
    }

    /** The link of one event, if it is there. */
    public Optional<Link> link(Connection connection, TestId test, long sequence) throws SQLException, LedgerException {
        return events.link(connection, test, sequence);
    }

    /** Position of the last event, 0 where there is none. */
    public long lastPosition(Connection connection) throws SQLException, LedgerException {
        return events.count(connection);
    }

    /** Where an event stands, if it is there. */
    public OptionalLong position(Connection connection, TestId test, long sequence) throws SQLException {
        return events.position(connection, test, sequence);
    }

    /** What a document is, if it is kept. */
    public Optional<DocumentKind> kind(Connection connection, Digest digest) throws SQLException {
        return documents.kind(connection, digest);
    }

    /** How many events of tests stand behind a position, and when the first of them was. */
    public Behind behind(Connection connection, long position) throws SQLException, LedgerException {
        return events.behind(connection, position);
    }

    /** Events that stand behind a position. */
    public record Behind(long count, Optional<Instant> since) {
    }

    /** All tests. */
    public List<TestId> tests(Connection connection) throws SQLException, LedgerException {
        return events.tests(connection);
    }

    /** How each test was opened that stands there or behind. */
    public List<LedgerEntry> openings(Connection connection, long fromPosition) throws SQLException, LedgerException {
        return events.openings(connection, fromPosition);
    }

    /** How those tests were opened that name a text, the latest first. */
    public List<LedgerEntry> openingsNaming(Connection connection, String text, long before, int most) throws SQLException, LedgerException {
        Optional<byte[]> held = held(text);
        return held.isEmpty() ? List.of() : events.openings(connection, held.get(), before, most);
    }

    /** How a text stands in canonical bytes; what can't be kept stands in none. */
    private static Optional<byte[]> held(String text) {
        try {
            return Optional.of(CanonicalText.bytes(new JsonValue.Text(CanonicalJson.normalise(text))));
        } catch (PayloadException none) {
            return Optional.empty();
        }
    }

    /** The tests that are not sealed, each with its last link. */
    public Map<TestId, Link> unsealed(Connection connection) throws SQLException, LedgerException {
        return events.unsealed(connection);
    }

    /** How far a test has come. */
    public long lastSequence(Connection connection, TestId test) throws SQLException, LedgerException {
        return events.head(connection, test).sequence();
    }

    /** Whether a test is sealed. */
    public boolean sealed(Connection connection, TestId test) throws SQLException, LedgerException {
        return events.head(connection, test).sealed();
    }

    /** All signers. */
    public List<KnownSigner> signers(Connection connection) throws SQLException, LedgerException {
        return seals.signers(connection);
    }

    /** All checkpoints. */
    public List<Checkpoint> checkpoints(Connection connection) throws SQLException, LedgerException {
        return seals.checkpoints(connection);
    }

    /** Path from an event to a root. */
    public List<Digest> inclusionPath(Connection connection, long position, long size) throws SQLException, LedgerException {
        requireOrder(position, size, events.count(connection));
        return new TreePaths(events.nodes(connection)).inclusion(position - 1, size);
    }

    /** Path from a root to a later one. */
    public List<Digest> consistencyPath(Connection connection, long older, long size) throws SQLException, LedgerException {
        requireOrder(older, size, events.count(connection));
        return new TreePaths(events.nodes(connection)).consistency(older, size);
    }

    private static void requireOrder(long first, long second, long count) {
        if (first < 1 || first > second || second > count) {
            throw new IllegalArgumentException("not in order: 1, " + first + ", " + second + ", " + count);
        }
    }
}
