package org.benchwright.present;

import java.util.List;

/**
 * Somebody in the register of people.
 *
 * @param id    initials or another short id
 * @param name  the name
 * @param roles what the person may do now, in words
 * @param keys  the person's keys, the latest last
 * @param authorisations what the person ever might carry out
 */
public record PersonRow(String id, String name, List<String> roles, List<Key> keys, List<Authorised> authorisations) {

    public PersonRow {
        roles = List.copyOf(roles);
        keys = List.copyOf(keys);
        authorisations = List.copyOf(authorisations);
    }

    /**
     * What somebody may, or might, carry out.
     *
     * @param family    its name, or {@code *} for all
     * @param procedure its name, or {@code *} for all
     * @param ended     true if it was ended before its last day
     * @param words     the same in words
     */
    public record Authorised(String family, String procedure, boolean ended, String words) {
    }

    /**
     * A key.
     *
     * @param fingerprint of its public half
     * @param inUse       whether the person signs with it
     * @param state       how it stands, in words
     */
    public record Key(String fingerprint, boolean inUse, String state) {
    }

    /** Whether the person can sign. */
    public boolean signs() {
        return keys.stream().anyMatch(Key::inUse);
    }
}
