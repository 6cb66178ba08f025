package org.benchwright.workshop.internal;

import org.benchwright.core.Digest;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;

/** Takes the bytes of files out of a bench's own ledger that the book of receipts says were withdrawn, here or on another bench. */
public final class FileEraser {

    private FileEraser() {
    }

    /**
     * What the book's rules don't take as a withdrawal takes nothing away.
     *
     * @return how many files had bytes left
     */
    public static int erase(SqliteLedger own) throws LedgerException {
        if (!mayBeLeft(own)) {
            return 0;
        }
        int erased = 0;
        for (Digest withdrawn : ReceiptHistory.trusted(own).now().withdrawn()) {
            if (own.holdsBytes(withdrawn)) {
                own.erase(TestId.RECEIPTS, withdrawn);
                erased++;
            }
        }
        return erased;
    }

    /** Looked at whenever something was forwarded: the whole book is read only where there is something to do. */
    private static boolean mayBeLeft(SqliteLedger own) throws LedgerException {
        ReceiptCodec codec = new ReceiptCodec();
        for (LedgerEntry entry : own.entries(TestId.RECEIPTS, EventKinds.ATTACHMENT_WITHDRAWN)) {
            try {
                if (codec.fact(entry.kind(), entry.payload()) instanceof ReceiptFact.AttachmentWithdrawn away && own.holdsBytes(away.attachment())) {
                    return true;
                }
            } catch (UndecodableException notTaken) {
                continue;
            }
        }
        return false;
    }
}
