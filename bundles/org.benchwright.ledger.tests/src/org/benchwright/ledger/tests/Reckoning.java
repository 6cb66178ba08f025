package org.benchwright.ledger.tests;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.MerkleTree;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.Event;
import org.benchwright.ledger.internal.EventCodec;

/** An attacker who knows the format and reckons again whatever needs no key. */
final class Reckoning {

    private Reckoning() {
    }

    /** Reckons links and subtrees again. */
    static void again(Path ledger) throws SQLException {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.behindTheTriggers(Reckoning::again);
        }
    }

    private static void again(Tamper tamper) throws SQLException {
        Map<TestId, Link> links = new HashMap<>();
        Map<TestId, Long> sequences = new HashMap<>();
        CompactRange tree = CompactRange.empty();
        long events = tamper.number("SELECT count(*) FROM event");
        for (long position = 1; position <= events; position++) {
            String where = " FROM event WHERE position = " + position;
            TestId test = new TestId(new String(tamper.bytes("SELECT test_id" + where), StandardCharsets.UTF_8));
            Link link = links.getOrDefault(test, Link.before(test)).next(tamper.bytes("SELECT canonical" + where));
            links.put(test, link);
            long sequence = sequences.merge(test, 1L, Long::sum);
            tree = tree.append(MerkleTree.eventLeaf(test, sequence, link));
            tamper.run("UPDATE event SET link = ?, subtree = ? WHERE position = ?", link.digest().bytes(), tree.lastSubtree().bytes(),
                    position);
        }
    }

    /** Rewrites an event and reckons again. */
    static void rewrite(Path ledger, long position, String from, String to) throws SQLException {
        try (Tamper tamper = Tamper.with(ledger)) {
            String canonical = new String(tamper.bytes("SELECT canonical FROM event WHERE position = " + position), StandardCharsets.UTF_8);
            if (!canonical.contains(from)) {
                throw new IllegalArgumentException("nothing to rewrite in " + canonical);
            }
            tamper.behindTheTriggers(work -> work.run("UPDATE event SET canonical = ? WHERE position = ?",
                    canonical.replace(from, to).getBytes(StandardCharsets.UTF_8), position));
        }
        again(ledger);
    }

    /** Appends an event of {@code kind} to the test whose first event has the place {@code index}, all but the signature in order. */
    static void appendUnsigned(Path ledger, int index, String kind) throws SQLException, PayloadException {
        try (Tamper tamper = Tamper.with(ledger)) {
            long position = tamper.number("SELECT count(*) + 1 FROM event");
            byte[] first = tamper.bytes("SELECT canonical FROM event WHERE position = " + (index + 2 + 4));
            Event like = EventCodec.decode(tamper.bytes("SELECT canonical FROM event WHERE position = " + (index + 1)));
            long sequence = tamper.number("SELECT max(sequence) + 1 FROM event WHERE test_id = '" + like.test() + "'");
            byte[] canonical = EventCodec.encode(new Event(like.test(), sequence, like.instant(), like.sitting(), like.offset(), like.actor(),
                    kind, EventCodec.decode(first).payload()));
            tamper.run("INSERT INTO event VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, zeroblob(32), zeroblob(32), ?)", position, like.test().value(),
                    sequence, like.instant().toString(), like.sitting(), like.offset().toString(), like.actor().id(),
                    like.actor().role().word(), kind, canonical);
        }
        again(ledger);
    }
}
