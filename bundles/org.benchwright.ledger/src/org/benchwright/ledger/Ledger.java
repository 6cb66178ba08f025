package org.benchwright.ledger;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.benchwright.core.Actor;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;

/**
 * The store of all tests. Only appending and reading: nothing is updated or deleted. An append names the last sequence number that the
 * writer knows of; when somebody else was faster it is refused, and that is the only lock between window, terminal and watch.
 * A ledger may be used from several threads, and a ledger file by several processes.
 */
public interface Ledger extends AutoCloseable {

    /**
     * Appends events to one test, all or none; they are durable when this returns.
     *
     * @param expectedSequence sequence number of the last event the writer knows of, 0 for a new test
     * @param drafts           at least one, all of this test, in order
     * @return the events in their places
     * @throws SequenceConflictException when the test's last sequence number is another one
     * @throws SealedTestException       when the test is sealed, or a draft is of the kind {@link EventKinds#SEALED}
     * @throws PayloadException          when a payload can't be kept
     * @throws IllegalArgumentException  when there are no drafts or some belong to another test
     */
    default List<LedgerEntry> append(TestId test, long expectedSequence, List<EntryDraft> drafts) throws LedgerException {
        return append(test, expectedSequence, drafts, Map.of());
    }

    /**
     * As {@link #append(TestId, long, List)}, and only while the books that the writer relied on stand where they were read: an approval
     * can't be withdrawn in the moment in which a test is opened by it.
     *
     * @param basis last sequence number that the writer knows of, for each of those books
     * @throws SequenceConflictException when one of them, or the test, has gone on
     */
    List<LedgerEntry> append(TestId test, long expectedSequence, List<EntryDraft> drafts, Map<TestId, Long> basis) throws LedgerException;

    /**
     * Appends one event with a signature in its payload (member {@code signature}) and a checkpoint of the ledger after it. The signature
     * covers all events of the test before it, and the event's own kind, payload and instant.
     *
     * @throws SequenceConflictException when the test's last sequence number is another one
     * @throws SealedTestException       when the test is sealed and the kind is not one that may follow
     * @throws PayloadException          when the payload can't be kept, or has a member {@code signature} already
     */
    default LedgerEntry appendSigned(EntryDraft draft, long expectedSequence, Signing signing) throws LedgerException {
        return appendSigned(draft, expectedSequence, signing, Map.of());
    }

    /**
     * As {@link #appendSigned(EntryDraft, long, Signing)}, and only while the books that the signer relied on stand where they were read: a
     * right can't be taken away in the moment in which it is used.
     *
     * @param basis last sequence number that the signer knows of, for each of those books
     * @throws SequenceConflictException when one of them, or the test, has gone on
     */
    LedgerEntry appendSigned(EntryDraft draft, long expectedSequence, Signing signing, Map<TestId, Long> basis) throws LedgerException;

    /** Ends the work on a test: {@link #appendSigned} with the kind {@link EventKinds#SEALED}, "carried out" and an empty payload. */
    default LedgerEntry seal(TestId test, long expectedSequence, Instant instant, int sitting, Duration offset, Actor actor, Signer signer,
            String printedName) throws LedgerException {
        EntryDraft draft = new EntryDraft(test, instant, sitting, offset, actor, EventKinds.SEALED, "{}");
        return appendSigned(draft, expectedSequence, new Signing(signer, Meaning.CARRIED_OUT, printedName));
    }

    /** All events of a test in order; none for an unknown test. */
    List<LedgerEntry> entries(TestId test) throws LedgerException;

    /**
     * The events of a test from one of them on, in order; none where it has not come so far.
     *
     * @param from sequence number of the first that is wanted
     */
    List<LedgerEntry> entries(TestId test, long from) throws LedgerException;

    /** The events of one kind in a test, in order. */
    List<LedgerEntry> entries(TestId test, String kind) throws LedgerException;

    /**
     * Hands over all events from {@code fromPosition} on, in ledger order, with flat memory, until the end or until cancelled. Events
     * appended meanwhile are handed over too.
     */
    void scan(long fromPosition, Consumer<LedgerEntry> consumer, Cancellation cancellation) throws LedgerException;

    /** All tests in the order in which they were opened; the books are none. */
    List<TestId> tests() throws LedgerException;

    /** The first event of each test, in the order in which they were opened: how it was opened, without reading the rest of it. */
    default List<LedgerEntry> openings() throws LedgerException {
        return openings(1);
    }

    /** The first events of tests that stand at that position of the ledger or behind it, in order. */
    List<LedgerEntry> openings(long fromPosition) throws LedgerException;

    /**
     * The first events of tests in whose canonical bytes a text stands as a string of its own, the latest first. What the string means there
     * is for the caller to see: others than those that were meant may be among them, and none lacks.
     *
     * @param before only those at smaller positions
     * @param most   no more than so many
     */
    List<LedgerEntry> openingsNaming(String text, long before, int most) throws LedgerException;

    /** The tests that are not sealed, in the order in which they were opened, each with the link of its last event. */
    Map<TestId, Link> unsealed() throws LedgerException;

    /** Sequence number of a test's last event, 0 for an unknown test. */
    long lastSequence(TestId test) throws LedgerException;

    /** Whether a test is sealed. */
    boolean sealed(TestId test) throws LedgerException;

    /**
     * Keeps a document under its digest; keeping it again changes nothing. Attachments of more than 256 KiB lie as files beside the ledger.
     * A payload names it by {@link DocumentReference}.
     *
     * @throws WithdrawnDocumentException when it was kept before, and its bytes were withdrawn
     */
    Digest keep(byte[] content, DocumentKind kind) throws LedgerException;

    /** The document with that digest, compared with it; empty when none was kept. */
    Optional<byte[]> document(Digest digest) throws LedgerException;

    /** The signatures in a test, in order, as told. */
    List<EntrySignature> signatures(TestId test) throws LedgerException;

    /** The keys that have signed in this ledger, in the order in which they were first seen. */
    List<KnownSigner> signers() throws LedgerException;

    /** All checkpoints, oldest first. */
    List<Checkpoint> checkpoints() throws LedgerException;

    /**
     * The hashes that lead from the event at {@code position} to the root of the tree over the first {@code size} events (RFC 9162, 2.1.3.1).
     *
     * @throws IllegalArgumentException when not 1 &lt;= position &lt;= size &lt;= number of events
     */
    List<Digest> inclusionPath(long position, long size) throws LedgerException;

    /**
     * The hashes that show the first {@code older} events to be the beginning of the first {@code size} (RFC 9162, 2.1.4.1).
     *
     * @throws IllegalArgumentException when not 1 &lt;= older &lt;= size &lt;= number of events
     */
    List<Digest> consistencyPath(long older, long size) throws LedgerException;

    @Override
    void close() throws LedgerException;
}
