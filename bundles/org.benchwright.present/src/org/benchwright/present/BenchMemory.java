package org.benchwright.present;

import org.benchwright.workshop.LedgerMemory;

/**
 * What was read of one ledger through one bench after another, so that the next one reads only what came since. May be used from several
 * threads.
 */
public final class BenchMemory {

    private final LedgerMemory known = new LedgerMemory();

    LedgerMemory known() {
        return known;
    }
}
