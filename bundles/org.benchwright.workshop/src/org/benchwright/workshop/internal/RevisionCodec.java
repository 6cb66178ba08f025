package org.benchwright.workshop.internal;

import org.benchwright.engine.revision.RevisionFact;

/** What is signed about revisions as the ledger keeps it. */
public final class RevisionCodec extends SignedFacts<RevisionFact> {

    /** The codec of today's format. */
    public RevisionCodec() {
        super(TypeNames.revisions(), RevisionFact.class);
    }
}
