package org.benchwright.workshop;

import java.time.LocalDate;
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
 * @param authorisations what the person ever might carry out, in order
 */
public record RegisteredPerson(String id, String name, Set<Role> roles, List<Key> keys, List<MayCarryOut> authorisations) {

    public RegisteredPerson {
        roles = Set.copyOf(roles);
        keys = List.copyOf(keys);
        authorisations = List.copyOf(authorisations);
    }

    /**
     * An authorisation.
     *
     * @param family    for units of it; {@code *} for all
     * @param procedure for it; {@code *} for all
     * @param from      first day
     * @param until     last day
     * @param ended     true if it was ended before
     */
    public record MayCarryOut(String family, String procedure, LocalDate from, LocalDate until, boolean ended) {
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
