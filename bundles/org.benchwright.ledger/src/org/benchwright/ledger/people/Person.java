package org.benchwright.ledger.people;

import java.time.LocalDate;
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
 * @param authorisations what the person ever might carry out, in order
 */
public record Person(String id, String name, Set<Role> roles, List<PersonKey> keys, List<Authorisation> authorisations) {

    /** Somebody who was never authorised for anything in particular. */
    public Person(String id, String name, Set<Role> roles, List<PersonKey> keys) {
        this(id, name, roles, keys, List.of());
    }

    public Person {
        Objects.requireNonNull(id);
        Objects.requireNonNull(name);
        roles = Set.copyOf(roles);
        keys = List.copyOf(keys);
        authorisations = List.copyOf(authorisations);
    }

    /** The key in use, if there is one. */
    public Optional<PersonKey> key() {
        return keys.stream().filter(PersonKey::inUse).findFirst();
    }

    /** Whether the person may act in that role now. */
    public boolean may(Role role) {
        return roles.contains(role);
    }

    /** Whether the person may carry out that procedure on units of that family on that day. */
    public boolean mayCarryOut(String family, String procedure, LocalDate day) {
        return authorisations.stream().anyMatch(each -> each.isAbout(family, procedure) && each.holdsOn(day));
    }

    Person authorised(List<Authorisation> other) {
        return new Person(id, name, roles, keys, other);
    }

    Person with(Set<Role> otherRoles) {
        return new Person(id, name, otherRoles, keys, authorisations);
    }

    Person with(List<PersonKey> otherKeys) {
        return new Person(id, name, roles, otherKeys, authorisations);
    }
}
