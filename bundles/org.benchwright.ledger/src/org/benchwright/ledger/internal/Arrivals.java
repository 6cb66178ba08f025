package org.benchwright.ledger.internal;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchwright.core.Digest;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.ForwardingStop;
import org.benchwright.ledger.KnownSigner;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.MerkleTree;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.TestId;

/**
 * Events that come from another ledger, within one transaction. What is there already with the same bytes is passed over, which makes an
 * arrival the same whether it happens once or twice; where other bytes stand, the test stops, and nothing is overwritten.
 */
public final class Arrivals {

    private final Connection connection;
    private final LedgerTables tables;
    private final Signer bench;
    private final Instant now;
    private final Map<TestId, EventTable.Head> heads = new HashMap<>();
    private final Map<TestId, ForwardingStop> stops = new LinkedHashMap<>();
    private CompactRange tree;
    private long added;

    /**
     * @param connection within the transaction
     * @param tables     where they arrive
     * @param bench      who brings them: signs checkpoints here, and the list of signers
     * @param now        when
     */
    public Arrivals(Connection connection, LedgerTables tables, Signer bench, Instant now) throws SQLException, LedgerException {
        this.connection = connection;
        this.tables = tables;
        this.bench = bench;
        this.now = now;
        this.tree = tables.events().tree(connection);
    }

    /** How many events were added, and which tests stopped. */
    public record Result(long added, List<ForwardingStop> stops) {
    }

    /** Takes one event up, the next of its test. */
    public void take(LedgerEntry entry, Link before, Optional<KnownSigner> signer) throws SQLException, LedgerException {
        if (stops.containsKey(entry.test())) {
            return;
        }
        EventTable.Head head = head(entry.test());
        if (entry.sequence() <= head.sequence()) {
            if (!tables.events().link(connection, entry.test(), entry.sequence()).equals(Optional.of(entry.link()))) {
                stop(entry, "forward.otherBytes");
            }
            return;
        }
        boolean next = entry.sequence() == head.sequence() + 1 && head.link().equals(before);
        boolean allowed = signer.isPresent() ? !head.sealed() || EventKinds.AFTER_SEAL.contains(entry.kind())
                : !head.sealed() && !entry.kind().equals(EventKinds.SEALED) && entry.test().isTest();
        if (!next || !allowed) {
            stop(entry, next ? "forward.notAllowed" : "forward.gap");
            return;
        }
        insert(entry, head, signer);
    }

    private void insert(LedgerEntry entry, EventTable.Head head, Optional<KnownSigner> signer) throws SQLException, LedgerException {
        CompactRange grown = tree.append(MerkleTree.eventLeaf(entry.test(), entry.sequence(), entry.link()));
        LedgerEntry placed = new LedgerEntry(grown.size(), entry.test(), entry.sequence(), entry.instant(), entry.sitting(), entry.offset(),
                entry.actor(), entry.kind(), entry.payload(), entry.link(), entry.canonical());
        Digest subtree = grown.lastSubtree();
        tables.events().insert(connection, placed, placed.canonical(), subtree);
        tree = grown;
        added++;
        heads.put(entry.test(), new EventTable.Head(entry.sequence(), entry.link(), head.sealed() || entry.kind().equals(EventKinds.SEALED)));
        if (signer.isPresent()) {
            tables.seals().introduce(connection, bench, now);
            tables.seals().bring(connection, signer.get(), bench);
            tables.seals().checkpoint(connection, bench, now, tree, tables.documents().head(connection));
        }
    }

    private EventTable.Head head(TestId test) throws SQLException, LedgerException {
        EventTable.Head known = heads.get(test);
        if (known == null) {
            known = tables.events().head(connection, test);
            heads.put(test, known);
        }
        return known;
    }

    private void stop(LedgerEntry entry, String key) {
        stops.put(entry.test(), new ForwardingStop(entry.test(), entry.sequence(), Messages.text(key, entry.test(), entry.sequence())));
    }

    /** What came of it. */
    public Result result() {
        return new Result(added, List.copyOf(stops.values()));
    }
}
