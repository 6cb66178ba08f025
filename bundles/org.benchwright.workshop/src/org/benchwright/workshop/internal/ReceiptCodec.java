package org.benchwright.workshop.internal;

import org.benchwright.engine.receipt.ReceiptFact;

/** What is signed about units in the house as the ledger keeps it. */
public final class ReceiptCodec extends SignedFacts<ReceiptFact> {

    /** With the pinned names. */
    public ReceiptCodec() {
        super(TypeNames.receipts(), ReceiptFact.class);
    }
}
