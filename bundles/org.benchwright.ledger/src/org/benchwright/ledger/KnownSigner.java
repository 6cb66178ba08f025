package org.benchwright.ledger;

import java.time.Instant;
import java.util.Objects;

/**
 * A key that has signed something in this ledger.
 *
 * @param key       its public half
 * @param firstSeen when it signed here for the first time
 */
public record KnownSigner(SignerKey key, Instant firstSeen) {

    public KnownSigner {
        Objects.requireNonNull(key);
        Objects.requireNonNull(firstSeen);
    }
}
