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
import org.benchwright.ledger.internal.SignaturePart;

/**
 * What can be told of a row without knowing any other, and its link as it would be behind the row before it.
 *
 * @param row        the row
 * @param event      what its bytes say, if they say something; its payload is left out unless it is signed
 * @param differing  the columns beside the bytes that say something else
 * @param references the documents that the event names
 * @param position   the number in the column of places, if there is one
 * @param link       the link that is stored, if there is one
 * @param leaf       the leaf that stands for the event and its stored link in the tree, where both are known
 * @param guess      the link that the bytes have behind a link that was met shortly before
 */
public record DecodedRow(EventRow row, Optional<Event> event, List<String> differing, List<Digest> references, OptionalLong position,
        Optional<Link> link, Optional<Digest> leaf, Optional<Guess> guess) {

    /**
     * A link that was worked out before it was known what stands before the row.
     *
     * @param before the link that it was supposed to follow
     * @param link   the link that follows from that
     */
    record Guess(Link before, Link link) {
    }

    /** Reads {@code row}. */
    public static DecodedRow of(EventRow row) {
        return all(List.of(row)).get(0);
    }

    /** Reads rows that stand one after the other. */
    static List<DecodedRow> all(List<EventRow> rows) {
        List<DecodedRow> decoded = new ArrayList<>(rows.size());
        Map<TestId, Link> met = new HashMap<>();
        for (EventRow row : rows) {
            decoded.add(of(row, met));
        }
        return decoded;
    }

    private static DecodedRow of(EventRow row, Map<TestId, Link> met) {
        OptionalLong position = row.position().whole();
        Optional<Link> link = row.link().digest().map(Link::new);
        try {
            EventCodec.Said said = EventCodec.skim(row.canonical().blob().orElse(new byte[0]));
            Event event = said.event();
            Optional<Digest> leaf = link.map(stored -> MerkleTree.eventLeaf(event.test(), event.sequence(), stored));
            Link before = event.sequence() == 1 ? Link.before(event.test()) : met.get(event.test());
            Optional<Guess> guess = before == null ? Optional.empty() : Optional.of(new Guess(before, before.next(row.canonical().bytes())));
            link.ifPresent(stored -> met.put(event.test(), stored));
            return new DecodedRow(row, Optional.of(event), row.differing(said), said.references(), position, link, leaf, guess);
        } catch (PayloadException unreadable) {
            return new DecodedRow(row, Optional.empty(), List.of(), List.of(), position, link, Optional.empty(), Optional.empty());
        }
    }

    /** Whether the event has a signature, true or not. */
    boolean signed() {
        return event.isPresent() && event.get().payload().values().containsKey(SignaturePart.NAME);
    }

    /** The link that the bytes have behind {@code before}. */
    Link after(Link before) {
        return guess.filter(known -> known.before().equals(before)).map(Guess::link).orElseGet(() -> before.next(row.canonical().bytes()));
    }
}
