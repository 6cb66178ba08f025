package org.benchwright.ledger.people;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.benchwright.core.Role;

/**
 * Somebody in the register.
 *
 * @param id    initials or another short id, as it stands in records
 * @param name  the name
 * @param roles what the person may do now
 * @param keys  all keys the person ever had, in order
 */
public record Person(String id, String name, Set<Role> roles, List<PersonKey> keys) {

    public Person {
        Objects.requireNonNull(id);
        Objects.requireNonNull(name);
        roles = Set.copyOf(roles);
        keys = List.copyOf(keys);
    }

    /** The key in use, if there is one. */
    public Optional<PersonKey> key() {
        return keys.stream().filter(PersonKey::inUse).findFirst();
    }

    /** Whether the person may act in that role now. */
    public boolean may(Role role) {
        return roles.contains(role);
    }

    Person with(Set<Role> otherRoles) {
        return new Person(id, name, otherRoles, keys);
    }

    Person with(List<PersonKey> otherKeys) {
        return new Person(id, name, roles, otherKeys);
    }
}
