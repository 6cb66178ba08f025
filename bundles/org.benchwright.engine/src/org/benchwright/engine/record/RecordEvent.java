package org.benchwright.engine.record;

import java.time.Instant;
import java.util.Set;

import org.benchwright.core.Role;

/**
 * A fact about a sealed record, with who signed it.
 *
 * @param sequence its number in the test
 * @param instant  when
 * @param person   who, as the register of people has them
 * @param roles    what that person was allowed to do then
 * @param fact     what was signed
 */
public record RecordEvent(long sequence, Instant instant, String person, Set<Role> roles, RecordFact fact) {

    public RecordEvent {
        roles = Set.copyOf(roles);
    }
}
