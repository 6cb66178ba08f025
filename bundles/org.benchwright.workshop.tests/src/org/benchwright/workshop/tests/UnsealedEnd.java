package org.benchwright.workshop.tests;

import java.nio.file.Path;

import org.benchwright.engine.event.Fact;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.internal.KeptTests;

/** Appends to a test behind the workshop's back. */
final class UnsealedEnd {

    private UnsealedEnd() {
    }

    static void append(Path file, Sitting sitting, Fact fact) throws Exception {
        TestId test = new TestId(sitting.test());
        try (Ledger ledger = SqliteLedger.open(file)) {
            ledger.append(test, sitting.run().lastSequence(),
                    new KeptTests().drafts(test, sitting.run().record(fact, sitting.technician(), sitting.moment())));
        }
    }
}
