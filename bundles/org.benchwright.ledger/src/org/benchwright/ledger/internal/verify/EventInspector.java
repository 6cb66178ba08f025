package org.benchwright.ledger.internal.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import org.benchwright.core.Digest;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.MerkleTree;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.Event;
import org.benchwright.ledger.internal.Messages;

/** The first line of verification for one row: pure, it knows nothing but the row and what came before it. */
public final class EventInspector {

    /**
     * What came before a row.
     *
     * @param position position that the row must have
     * @param points   how far each test has come
     * @param tree     the tree over all rows before; empty once it can't be known any more
     */
    public record Before(long position, Function<TestId, TestPoint> points, Optional<CompactRange> tree) {
    }

    /**
     * What was found.
     *
     * @param faults what is wrong with the row
     * @param event  what its bytes say, if they say something
     * @param test   the test it belongs to, as far as that can be told
     * @param point  how far that test has come now
     * @param tree   the tree over all rows up to this
     */
    public record Result(List<Fault> faults, Optional<Event> event, Optional<TestId> test, Optional<TestPoint> point,
            Optional<CompactRange> tree) {
    }

    private final DecodedRow decoded;
    private final Before before;
    private final List<Fault> faults = new ArrayList<>();
    private Optional<TestId> test = Optional.empty();
    private OptionalLong sequence = OptionalLong.empty();

    private EventInspector(DecodedRow decoded, Before before) {
        this.decoded = decoded;
        this.before = before;
    }

    /** Looks at a row. */
    public static Result inspect(DecodedRow row, Before before) {
        return new EventInspector(row, before).inspect();
    }

    private Result inspect() {
        Optional<Event> event = decoded.event();
        test = decoded.test();
        Optional<TestPoint> point = test.map(before.points());
        sequence = event.map(known -> OptionalLong.of(known.sequence()))
                .orElseGet(() -> point.isPresent() ? OptionalLong.of(point.get().sequence() + 1) : OptionalLong.empty());
        if (event.isEmpty()) {
            fault(FaultKind.EVENT_UNREADABLE, "fault.unreadable");
        }
        position();
        decoded.differing().forEach(column -> fault(FaultKind.COLUMN_DIFFERS, "fault.column", column));
        Optional<Link> stored = decoded.link();
        point.ifPresent(known -> chain(known, event, stored));
        Optional<CompactRange> tree = before.tree().flatMap(known -> tree(known, stored));
        Optional<TestPoint> next = point.map(known -> new TestPoint(sequence.orElse(known.sequence() + 1), stored.orElse(known.link()),
                known.sealed() || event.filter(said -> said.kind().equals(EventKinds.SEALED)).isPresent(),
                known.clean() && faults.isEmpty()));
        return new Result(List.copyOf(faults), event, test, next, tree);
    }

    private void position() {
        OptionalLong found = decoded.position();
        if (found.isEmpty() || found.getAsLong() != before.position()) {
            fault(FaultKind.POSITION_BROKEN, "fault.position", before.position(), found.isPresent() ? found.getAsLong() : "?");
        }
    }

    private void chain(TestPoint point, Optional<Event> event, Optional<Link> stored) {
        event.ifPresent(said -> {
            if (said.sequence() != point.sequence() + 1) {
                fault(FaultKind.SEQUENCE_BROKEN, "fault.sequence", point.sequence() + 1, said.sequence());
            }
            if (point.sealed() && !EventKinds.AFTER_SEAL.contains(said.kind())) {
                fault(FaultKind.AFTER_SEAL, "fault.afterSeal", said.kind());
            }
        });
        Link wanted = decoded.after(point.link());
        if (!stored.equals(Optional.of(wanted))) {
            fault(FaultKind.LINK_BROKEN, "fault.link");
        }
    }

    /** The tree with this row; goes on with the subtree that is stored, so that one fault doesn't become many. */
    private Optional<CompactRange> tree(CompactRange tree, Optional<Link> stored) {
        Optional<Digest> subtree = decoded.subtree();
        if (test.isEmpty() || sequence.isEmpty() || stored.isEmpty()) {
            fault(FaultKind.ORDER_CHANGED, "fault.order");
            return Optional.empty();
        }
        CompactRange grown = tree.append(decoded.leaf().orElseGet(() -> MerkleTree.eventLeaf(test.get(), sequence.getAsLong(), stored.get())));
        if (subtree.isPresent() && subtree.get().equals(grown.lastSubtree())) {
            return Optional.of(grown);
        }
        fault(FaultKind.ORDER_CHANGED, "fault.order");
        return subtree.map(found -> {
            List<Digest> roots = new ArrayList<>(grown.subtrees());
            roots.set(roots.size() - 1, found);
            return new CompactRange(grown.size(), roots);
        });
    }

    private void fault(FaultKind kind, String key, Object... values) {
        String words = Messages.text(key, values);
        String placed = test.isEmpty() ? Messages.text("fault.at", before.position(), words)
                : Messages.text("fault.in", test.get(), sequence.isPresent() ? sequence.getAsLong() : "?", before.position(), words);
        faults.add(new Fault(test, sequence, kind, placed));
    }
}
