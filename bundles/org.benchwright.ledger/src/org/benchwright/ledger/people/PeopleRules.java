package org.benchwright.ledger.people;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.people.PeopleFact.AuthorisationEnded;
import org.benchwright.ledger.people.PeopleFact.Authorised;
import org.benchwright.ledger.people.PeopleFact.KeyEnrolled;
import org.benchwright.ledger.people.PeopleFact.KeyRevoked;
import org.benchwright.ledger.people.PeopleFact.KeyRotated;
import org.benchwright.ledger.people.PeopleFact.PersonAdded;
import org.benchwright.ledger.people.PeopleFact.RoleEnded;
import org.benchwright.ledger.people.PeopleFact.RoleGranted;

/**
 * Who may enter what in the register: asked before an entry is made, and again by everybody who reads it.
 *
 * @param people   the register before
 * @param signer   fingerprint of the key that signs the entry
 * @param position the entry's place in the ledger
 * @param instant  its instant
 */
record PeopleRules(People people, Digest signer, long position, Instant instant) {

    private static final Pattern ID = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,19}");
    private static final Pattern NAME = Pattern.compile("[\\p{L}_][\\p{L}\\p{M}0-9_]{0,99}");
    private static final int LONGEST_TEXT = 200;
    private static final Set<Role> OF_PEOPLE = EnumSet.complementOf(EnumSet.of(Role.WATCH, Role.BENCH));

    /** What speaks against the entry; nothing if it holds. */
    Optional<String> objection(PeopleFact fact) {
        Optional<String> unauthorised = unauthorised(fact);
        return unauthorised.isPresent() ? unauthorised : unfit(fact);
    }

    /** What speaks against anybody's having that role. */
    static Optional<String> objection(Role role) {
        return first(OF_PEOPLE.contains(role), "people.noRole", role.word());
    }

    /** What speaks against somebody who is not in a register yet. */
    static Optional<String> objectionToFirst(String id, String name) {
        return first(ID.matcher(id).matches(), "people.id", id).or(() -> namedSo(name));
    }

    private static Optional<String> namedSo(String name) {
        return first(!name.isBlank() && name.length() <= LONGEST_TEXT, "people.name", LONGEST_TEXT);
    }

    // ---- what is entered

    private Optional<String> unfit(PeopleFact fact) {
        Optional<Person> person = people.person(fact.person());
        if (fact instanceof PersonAdded added) {
            return added(added);
        } else if (person.isEmpty()) {
            return said("people.unknown", fact.person());
        } else if (fact instanceof RoleGranted granted) {
            return objection(granted.role())
                    .or(() -> first(!person.get().may(granted.role()), "people.hasRole", fact.person(), granted.role().word()));
        } else if (fact instanceof RoleEnded ended) {
            return first(person.get().may(ended.role()), "people.hasNotRole", fact.person(), ended.role().word())
                    .or(() -> reason(ended.reason()))
                    .or(() -> first(ended.role() != Role.ADMINISTRATOR || !last(person.get()), "people.last", fact.person()));
        } else if (fact instanceof Authorised a) {
            return first(named(a.family()) && named(a.procedure()), "people.authorisedFor")
                    .or(() -> first(!a.until().isBefore(a.from()), "people.days", a.from(), a.until()));
        } else if (fact instanceof AuthorisationEnded e) {
            boolean held = person.get().authorisations().stream().anyMatch(each -> !each.ended() && each.family().equals(e.family())
                    && each.procedure().equals(e.procedure()));
            return first(held, "people.notAuthorised", fact.person(), e.procedure(), e.family()).or(() -> reason(e.reason()));
        } else if (fact instanceof KeyEnrolled enrolled) {
            return first(person.get().key().isEmpty(), "people.hasKey", fact.person()).or(() -> fresh(enrolled.key()));
        } else if (fact instanceof KeyRotated rotated) {
            return first(person.get().key().isPresent(), "people.noKey", fact.person()).or(() -> fresh(rotated.key()));
        }
        return revoked((KeyRevoked) fact, person.get());
    }

    private static boolean named(String what) {
        return what.equals(Authorisation.ANY) || NAME.matcher(what).matches();
    }

    private Optional<String> added(PersonAdded added) {
        boolean there = people.all().stream().anyMatch(person -> person.id().equalsIgnoreCase(added.person()));
        return first(ID.matcher(added.person()).matches(), "people.id", added.person())
                .or(() -> first(!there, "people.there", added.person()))
                .or(() -> namedSo(added.name()));
    }

    private Optional<String> revoked(KeyRevoked revoked, Person person) {
        Optional<PersonKey> key = person.keys().stream().filter(each -> each.key().fingerprint().equals(revoked.key())).findFirst();
        return first(key.isPresent(), "people.notTheirs", person.id(), revoked.key().hex())
                .or(() -> first(key.get().revoked().isEmpty(), "people.revokedBefore", revoked.key().hex()))
                .or(() -> first(!revoked.from().isAfter(instant), "people.future", revoked.from()))
                .or(() -> reason(revoked.reason()))
                .or(() -> first(!key.get().inUse() || !last(person), "people.last", person.id()));
    }

    private Optional<String> fresh(SignerKey key) {
        return first(people.key(key.fingerprint()).isEmpty() && !key.fingerprint().equals(signer), "people.keyUsed", key);
    }

    private static Optional<String> reason(String reason) {
        return first(!reason.isBlank() && reason.length() <= LONGEST_TEXT, "people.reason", LONGEST_TEXT);
    }

    /** Without an administrator nobody could enter anything any more. */
    private boolean last(Person person) {
        return people.administrators().equals(List.of(person));
    }

    // ---- who enters it

    private Optional<String> unauthorised(PeopleFact fact) {
        Optional<Person> holder = people.holder(signer);
        if (holder.isEmpty()) {
            // The bench itself, as long as nobody has a key; verification tells when it was any other key.
            return first(!people.anyKeys(), "people.bench").or(() -> firstKey(fact));
        }
        if (!people.key(signer).orElseThrow().signs(position, instant)) {
            return said("people.keyEnded", signer.hex());
        }
        boolean own = holder.get().id().equals(fact.person());
        if (fact instanceof KeyRotated) {
            return first(own && holder.get().key().filter(key -> key.key().fingerprint().equals(signer)).isPresent(), "people.ownKey",
                    fact.person());
        }
        boolean allowed = holder.get().may(Role.ADMINISTRATOR) || own && fact instanceof KeyRevoked;
        return first(allowed, "people.administratorOnly", holder.get().id());
    }

    private Optional<String> firstKey(PeopleFact fact) {
        boolean administrator = people.person(fact.person()).filter(person -> person.may(Role.ADMINISTRATOR)).isPresent();
        return first(!(fact instanceof KeyEnrolled) || administrator, "people.firstKey", fact.person());
    }

    private static Optional<String> first(boolean holds, String key, Object... values) {
        return holds ? Optional.empty() : said(key, values);
    }

    private static Optional<String> said(String key, Object... values) {
        return Optional.of(Messages.text(key, values));
    }
}
