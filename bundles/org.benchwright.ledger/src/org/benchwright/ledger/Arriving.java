package org.benchwright.ledger;

import java.util.Objects;
import java.util.Optional;

/**
 * An event on its way from one ledger to another, where it keeps its bytes and its link and gets another position.
 *
 * @param entry  the event
 * @param before the link of the event before it in its test
 * @param signer the key that signed it, if it is signed
 */
record Arriving(LedgerEntry entry, Link before, Optional<KnownSigner> signer) {

    Arriving {
        Objects.requireNonNull(entry);
        Objects.requireNonNull(before);
        Objects.requireNonNull(signer);
    }
}
