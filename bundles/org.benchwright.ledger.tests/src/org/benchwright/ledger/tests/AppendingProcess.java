package org.benchwright.ledger.tests;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;

/**
 * Appends to one test, as fast as it can, and prints each sequence number once it is acknowledged. Arguments: ledger, test id, name of the
 * writer, number of appends.
 */
public final class AppendingProcess {

    private AppendingProcess() {
    }

    public static void main(String[] arguments) throws Exception {
        TestId test = new TestId(arguments[1]);
        long wanted = Long.parseLong(arguments[3]);
        try (Ledger ledger = SqliteLedger.open(Path.of(arguments[0]))) {
            System.out.println("ready");
            long last = ledger.lastSequence(test);
            for (long done = 0; done < wanted;) {
                try {
                    List<LedgerEntry> kept = ledger.append(test, last, List.of(draft(test, arguments[2], done), draft(test, arguments[2], done)));
                    last = kept.get(1).sequence();
                    done++;
                    System.out.println(kept.get(0).sequence() + " " + last);
                } catch (SequenceConflictException faster) {
                    last = faster.actual();
                }
            }
        }
    }

    private static EntryDraft draft(TestId test, String writer, long number) {
        return new EntryDraft(test, SampleLedger.START.plusSeconds(number), 1, Duration.ofSeconds(number), SampleLedger.TECHNICIAN, "note",
                "{\"writer\":\"" + writer + "\",\"number\":\"" + number + "\"}");
    }
}
