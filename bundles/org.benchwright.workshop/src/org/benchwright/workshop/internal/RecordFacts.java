package org.benchwright.workshop.internal;

import org.benchwright.engine.record.RecordFact;

/** What is signed about records after their seal as the ledger keeps it. */
public final class RecordFacts extends SignedFacts<RecordFact> {

    /** The codec of today's format. */
    public RecordFacts() {
        super(TypeNames.records(), RecordFact.class);
    }
}
