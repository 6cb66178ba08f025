package org.benchwright.engine.revision;

import java.time.Instant;
import java.util.Set;
import org.benchwright.core.Role;

/**
 * A fact about a revision, with who signed it.
 *
 * @param number  its number among all of them, from 1
 * @param instant when
 * @param person  who, as the register of people has them
 * @param roles   what that person was allowed to do then
 * @param fact    what was signed
 */
public record RevisionEvent(long number, Instant instant, String person, Set<Role> roles, RevisionFact fact) {

    public RevisionEvent {
        roles = Set.copyOf(roles);
    }
}
