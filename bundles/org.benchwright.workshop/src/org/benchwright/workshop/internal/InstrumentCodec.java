package org.benchwright.workshop.internal;

import org.benchwright.engine.instrument.InstrumentFact;

/** What is signed about instruments as the ledger keeps it. */
public final class InstrumentCodec extends SignedFacts<InstrumentFact> {

    /** With the pinned names. */
    public InstrumentCodec() {
        super(TypeNames.instruments(), InstrumentFact.class);
    }
}
