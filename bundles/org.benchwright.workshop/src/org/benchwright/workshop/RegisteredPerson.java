package org.benchwright.workshop;

import java.util.List;
import java.util.Set;

import org.benchwright.core.Role;

/**
 * Somebody in a ledger's register of people.
 *
 * @param id    initials or another short id, as it stands in records
 * @param name  the name, which stands nowhere else
 * @param roles what the person may do now
 * @param keys  all keys that the person ever had, in order
 */
public record RegisteredPerson(String id, String name, Set<Role> roles, List<Key> keys) {

    public RegisteredPerson {
        roles = Set.copyOf(roles);
        keys = List.copyOf(keys);
    }

    /** How a key stands. */
    public enum KeyState {
        IN_USE, REPLACED, REVOKED
    }

    /**
     * A key.
     *
     * @param fingerprint of its public half
     * @param state       how it stands
     * @param reason      why it was revoked; empty if it was not
     */
    public record Key(String fingerprint, KeyState state, String reason) {
    }
}
