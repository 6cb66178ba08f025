package org.benchwright.ledger.internal.verify;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchwright.core.Digest;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.MerkleTree;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.Event;
import org.benchwright.ledger.internal.EventCodec;
import org.benchwright.ledger.internal.PlainEvents;
import org.benchwright.ledger.internal.SignaturePart;

/**
 * What can be told of a row without knowing any other, and its link as it would be behind the row before it.
 *
 * @param canonical  the event's bytes
 * @param test       the test that it belongs to, as far as that can be told
 * @param event      what its bytes say, if they say something; its payload is left out unless it is signed
 * @param differing  the columns beside the bytes that say something else
 * @param references the documents that the event names
 * @param position   the number in the column of places, if there is one
 * @param link       the link that is stored, if there is one
 * @param subtree    the subtree that is stored, if there is one
 * @param leaf       the leaf that stands for the event and its stored link in the tree, where both are known
 * @param guess      the link that the bytes have behind a link that was met shortly before
 */
public record DecodedRow(byte[] canonical, Optional<TestId> test, Optional<Event> event, List<String> differing, List<Digest> references,
        OptionalLong position, Optional<Link> link, Optional<Digest> subtree, Optional<Digest> leaf, Optional<Guess> guess) {

    /**
     * A link that was worked out before it was known what stands before the row.
     *
     * @param before the link that it was supposed to follow
     * @param link   the link that follows from that
     */
    record Guess(Link before, Link link) {
    }

    /** Reads {@code row}. */
    public static DecodedRow of(StoredRow row) {
        return all(List.of(row)).get(0);
    }

    /** Reads rows that stand one after the other. */
    static List<DecodedRow> all(List<StoredRow> rows) {
        return new Decoder().all(rows);
    }

    /** Whether the event has a signature, true or not. */
    boolean signed() {
        return event.isPresent() && event.get().payload().values().containsKey(SignaturePart.NAME);
    }

    /** The link that the bytes have behind {@code before}. */
    Link after(Link before) {
        return guess.filter(known -> known.before().equals(before)).map(Guess::link).orElseGet(() -> before.next(canonical));
    }

    /** Reads some rows, with what it met in those before. */
    private static final class Decoder {
        private final Map<TestId, Link> met = new HashMap<>();
        private final PlainEvents plain = new PlainEvents();

        List<DecodedRow> all(List<StoredRow> rows) {
            List<DecodedRow> decoded = new ArrayList<>(rows.size());
            for (StoredRow row : rows) {
                decoded.add(row instanceof PackedRow packed ? plain(packed).orElseGet(() -> careful(packed.cells())) : careful((EventRow) row));
            }
            return decoded;
        }

        /** A plain event beside which the same is said; of anything else nothing. */
        private Optional<DecodedRow> plain(PackedRow row) {
            return plain.read(row.canonical()).filter(read -> row.agrees(plain))
                    .map(read -> decoded(row.canonical(), read.event(), List.of(), read.references(), row.position(),
                            Optional.of(new Link(row.link())), Optional.of(row.subtree())));
        }

        private DecodedRow careful(EventRow row) {
            Optional<Link> link = row.link().digest().map(Link::new);
            byte[] canonical = row.canonical().bytes();
            try {
                EventCodec.Said said = EventCodec.skim(row.canonical().blob().orElse(new byte[0]));
                return decoded(canonical, said.event(), row.differing(said), said.references(), row.position(), link, row.subtree().digest());
            } catch (PayloadException unreadable) {
                // It counts for the test that its column names, so that one fault doesn't become many.
                return new DecodedRow(canonical, row.test().text().flatMap(TestId::stored), Optional.empty(), List.of(), List.of(),
                        row.position().whole(), link, row.subtree().digest(), Optional.empty(), Optional.empty());
            }
        }

        private DecodedRow decoded(byte[] canonical, Event event, List<String> differing, List<Digest> references, Cell position, Optional<Link> link,
                Optional<Digest> subtree) {
            TestId test = event.test();
            Optional<Digest> leaf = link.map(stored -> MerkleTree.eventLeaf(test, event.sequence(), stored));
            Link before = event.sequence() == 1 ? Link.before(test) : met.get(test);
            Optional<Guess> guess = before == null ? Optional.empty() : Optional.of(new Guess(before, before.next(canonical)));
            link.ifPresent(stored -> met.put(test, stored));
            return new DecodedRow(canonical, Optional.of(test), Optional.of(event), differing, references, position.whole(), link, subtree, leaf,
                    guess);
        }
    }
}
