package org.benchwright.engine.instrument;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;

/**
 * A fact about an instrument, with who signed it.
 *
 * @param number  its number among all of them, from 1
 * @param instant when
 * @param person  who signed it; empty: the bench, which may as long as nobody has a key
 * @param roles   what that person was allowed to do then
 * @param bench   true if the bench may sign at that place of the ledger
 * @param fact    what was signed
 */
public record InstrumentEvent(long number, Instant instant, Optional<String> person, Set<Role> roles, boolean bench, InstrumentFact fact) {

    public InstrumentEvent {
        roles = Set.copyOf(roles);
    }
}
