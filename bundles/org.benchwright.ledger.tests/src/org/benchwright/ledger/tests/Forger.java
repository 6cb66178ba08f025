package org.benchwright.ledger.tests;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.benchwright.core.Cancellation;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.SqliteLedger;

/** Somebody who writes a ledger anew with the program itself, some entries changed, and signs with a key of his own. */
final class Forger {

    private Forger() {
    }

    /** Copies all of {@code from} into a new ledger in {@code folder}, with {@code old} replaced in every payload. */
    static Path replay(Path from, Path folder, BenchKey key, String old, String now) throws Exception {
        Path file = folder.resolve("bench.ledger");
        try (Ledger source = SqliteLedger.openReadOnly(from); Ledger target = SqliteLedger.open(file)) {
            List<LedgerEntry> entries = new ArrayList<>();
            source.scan(1, entries::add, Cancellation.never());
            target.keep("procedure tarn-c16 { }".getBytes(), DocumentKind.PROCEDURE_TEXT);
            target.keep("{\"plan\":\"tarn-c16\"}".getBytes(), DocumentKind.PLAN);
            for (LedgerEntry entry : entries) {
                copy(entry, target, key, old, now);
            }
        }
        return file;
    }

    private static void copy(LedgerEntry entry, Ledger target, BenchKey key, String old, String now) throws Exception {
        long before = entry.sequence() - 1;
        if (entry.kind().equals(EventKinds.SEALED)) {
            target.seal(entry.test(), before, entry.instant(), entry.sitting(), entry.offset(), entry.actor(), key, "technician QN");
        } else {
            target.append(entry.test(), before, List.of(new EntryDraft(entry.test(), entry.instant(), entry.sitting(), entry.offset(),
                    entry.actor(), entry.kind(), entry.payload().replace(old, now))));
        }
    }
}
