package org.benchwright.ledger.internal.verify;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.benchwright.core.Digest;
import org.benchwright.ledger.Checkpoint;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.SignedCheckpoint;
import org.benchwright.ledger.SignerKey;

/**
 * Compares the ledger with checkpoints that somebody kept elsewhere: the only thing that an older copy, or a history made anew with all
 * keys at hand, can't satisfy.
 *
 * @param kept     the checkpoints
 * @param benchKey the only key that may have signed, if it is known
 * @param faults   where to put what is found
 */
record KeptCheck(List<SignedCheckpoint> kept, Optional<SignerKey> benchKey, FaultList faults) {

    void signatures() {
        for (SignedCheckpoint each : kept) {
            if (!each.holds()) {
                faults.add(FaultKind.KEPT_CHECKPOINT_FALSE, "fault.keptFalse", each.checkpoint().number());
            }
            if (benchKey.filter(own -> !own.equals(each.key())).isPresent()) {
                faults.add(FaultKind.FOREIGN_KEY, "fault.keptForeign", each.checkpoint().number());
            }
        }
    }

    void documents(DocumentCheck documents) throws SQLException {
        for (SignedCheckpoint each : kept) {
            Checkpoint checkpoint = each.checkpoint();
            if (checkpoint.documents() > documents.count()) {
                faults.add(FaultKind.OLDER_COPY, "fault.keptOlderDocuments", checkpoint.number(), checkpoint.documents(), documents.count());
                continue;
            }
            Optional<Digest> link = documents.link(checkpoint.documents());
            if (!link.equals(Optional.of(checkpoint.documentsLink()))) {
                faults.add(FaultKind.HISTORY_REWRITTEN, "fault.keptDocuments", checkpoint.number(), checkpoint.documents());
            }
        }
    }

    /** Compares those of the tree's size. */
    void meets(CompactRange tree) {
        for (SignedCheckpoint each : kept) {
            Checkpoint checkpoint = each.checkpoint();
            if (checkpoint.size() == tree.size() && !checkpoint.root().equals(tree.root())) {
                faults.add(FaultKind.HISTORY_REWRITTEN, "fault.keptRoot", checkpoint.number(), checkpoint.size());
            }
        }
    }

    /** What tells of events that are not there. */
    void finish(long events) {
        for (SignedCheckpoint each : kept) {
            Checkpoint checkpoint = each.checkpoint();
            if (checkpoint.size() > events) {
                faults.add(FaultKind.OLDER_COPY, "fault.keptOlder", checkpoint.number(), checkpoint.size(), events);
            }
        }
    }
}
