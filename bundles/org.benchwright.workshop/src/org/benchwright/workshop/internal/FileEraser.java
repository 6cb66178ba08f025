package org.benchwright.workshop.internal;

import org.benchwright.core.Digest;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;

/** Takes the bytes of files out of a bench's own ledger that the book of receipts says were withdrawn, here or on another bench. */
public final class FileEraser {

    private FileEraser() {
    }

    /** What the book's rules don't take as a withdrawal takes nothing away. */
    public static void erase(SqliteLedger own) throws LedgerException {
        if (own.entries(TestId.RECEIPTS, EventKinds.ATTACHMENT_WITHDRAWN).isEmpty()) {
            return;
        }
        for (Digest withdrawn : ReceiptHistory.trusted(own).now().withdrawn()) {
            if (own.document(withdrawn).isPresent()) {
                own.erase(TestId.RECEIPTS, withdrawn);
            }
        }
    }
}
