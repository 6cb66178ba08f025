package org.benchwright.ledger.people;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.ledger.EntrySignature;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.SignedBook;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.people.PeopleFact.AuthorisationEnded;
import org.benchwright.ledger.people.PeopleFact.Authorised;
import org.benchwright.ledger.people.PeopleFact.KeyEnrolled;
import org.benchwright.ledger.people.PeopleFact.KeyRevoked;
import org.benchwright.ledger.people.PeopleFact.KeyRotated;
import org.benchwright.ledger.people.PeopleFact.PersonAdded;
import org.benchwright.ledger.people.PeopleFact.RoleEnded;
import org.benchwright.ledger.people.PeopleFact.RoleGranted;

/** The register of people as the events of its book make it. Immutable. */
public final class People {

    private final Map<String, Person> persons;
    /** Ids by the fingerprints of their keys. */
    private final Map<Digest, String> holders;
    private final List<Objection> objections;

    private People(Map<String, Person> persons, Map<Digest, String> holders, List<Objection> objections) {
        this.persons = persons;
        this.holders = holders;
        this.objections = List.copyOf(objections);
    }

    /**
     * An event of the book that does not hold, because its signer had no right to it or because it does not fit what stood there.
     *
     * @param sequence number of the event
     * @param words    why
     */
    public record Objection(long sequence, String words) {
    }

    /** Nobody. */
    public static People none() {
        return new People(Map.of(), Map.of(), List.of());
    }

    /**
     * The register of a ledger, read only when all its links and signatures are true.
     *
     * @throws org.benchwright.ledger.LedgerDamagedException when one is not
     */
    public static People read(Ledger ledger) throws LedgerException {
        return of(SignedBook.read(ledger, TestId.PEOPLE));
    }

    /** The register that these events of its book make. What does not hold changes nothing and is among the {@link #objections}. */
    public static People of(List<LedgerEntry> entries) {
        People people = none();
        for (LedgerEntry entry : entries) {
            people = people.with(entry);
        }
        return people;
    }

    /** The register after one more event of its book, see {@link #of}. */
    public People with(LedgerEntry entry) {
        Optional<PeopleFact> fact = PeopleCodec.fact(entry);
        Optional<EntrySignature> signature = EntrySignature.in(entry);
        Optional<String> words = fact.isEmpty() || signature.isEmpty() ? Optional.of(Messages.text("people.unreadable"))
                : new PeopleRules(this, signature.get().fingerprint(), entry.position(), entry.instant()).objection(fact.get())
                        .or(() -> saidOtherwise(entry.actor(), signature.get()));
        if (words.isPresent()) {
            List<Objection> more = new ArrayList<>(objections);
            more.add(new Objection(entry.sequence(), words.get()));
            return new People(persons, holders, more);
        }
        Map<String, Person> next = new LinkedHashMap<>(persons);
        next.put(fact.get().person(), after(fact.get(), entry.position()));
        return new People(next, holders(fact.get()), objections);
    }

    /** An entry is in the name of its signer, in print too, and its signature means that it was registered. */
    private Optional<String> saidOtherwise(Actor by, EntrySignature signature) {
        Optional<Person> holder = holder(signature.fingerprint());
        boolean named = holder.isPresent() ? holder.get().id().equals(by.id()) && signature.prints(by) && actsAs(holder.get(), by.role())
                : by.role() == Role.BENCH;
        return named && signature.meaning() == Meaning.REGISTERED ? Optional.empty()
                : Optional.of(Messages.text("people.saidOtherwise", signature.meaning().word(), signature.printedName(),
                        holder.map(Person::id).orElse(Role.BENCH.word())));
    }

    /** In a role that the person has; whoever has none puts another key in the place of the own one as a technician. */
    private static boolean actsAs(Person person, Role role) {
        return person.may(role) || person.roles().isEmpty() && role == Role.TECHNICIAN;
    }

    private Map<Digest, String> holders(PeopleFact fact) {
        Optional<SignerKey> key = fact instanceof KeyEnrolled enrolled ? Optional.of(enrolled.key())
                : fact instanceof KeyRotated rotated ? Optional.of(rotated.key()) : Optional.empty();
        if (key.isEmpty()) {
            return holders;
        }
        Map<Digest, String> next = new HashMap<>(holders);
        next.put(key.get().fingerprint(), fact.person());
        return next;
    }

    private Person after(PeopleFact fact, long position) {
        if (fact instanceof PersonAdded added) {
            return new Person(added.person(), added.name(), Set.of(), List.of());
        }
        Person person = persons.get(fact.person());
        if (fact instanceof RoleGranted granted) {
            return person.with(roles(person, granted.role(), true));
        } else if (fact instanceof RoleEnded ended) {
            return person.with(roles(person, ended.role(), false));
        } else if (fact instanceof Authorised a) {
            List<Authorisation> more = new ArrayList<>(person.authorisations());
            more.add(new Authorisation(a.family(), a.procedure(), a.from(), a.until(), false));
            return person.authorised(more);
        } else if (fact instanceof AuthorisationEnded e) {
            return person.authorised(person.authorisations().stream()
                    .map(each -> each.family().equals(e.family()) && each.procedure().equals(e.procedure()) ? each.end() : each).toList());
        } else if (fact instanceof KeyRevoked revoked) {
            PersonKey.Revocation how = new PersonKey.Revocation(position, revoked.from(), revoked.reason());
            return person.with(person.keys().stream().map(key -> key.key().fingerprint().equals(revoked.key())
                    ? new PersonKey(key.key(), key.enrolled(), key.replaced(), Optional.of(how)) : key).toList());
        }
        List<PersonKey> keys = new ArrayList<>();
        person.keys().forEach(key -> keys.add(key.inUse()
                ? new PersonKey(key.key(), key.enrolled(), OptionalLong.of(position), key.revoked()) : key));
        keys.add(new PersonKey(fact instanceof KeyEnrolled enrolled ? enrolled.key() : ((KeyRotated) fact).key(), position,
                OptionalLong.empty(), Optional.empty()));
        return person.with(keys);
    }

    private static Set<Role> roles(Person person, Role role, boolean granted) {
        Set<Role> roles = EnumSet.noneOf(Role.class);
        roles.addAll(person.roles());
        if (granted) {
            roles.add(role);
        } else {
            roles.remove(role);
        }
        return roles;
    }

    /** Everybody who ever was in it, in the order in which they were added. */
    public Collection<Person> all() {
        return persons.values();
    }

    /** The person of that id; small letters are not forgiven, for the id stands in records. */
    public Optional<Person> person(String id) {
        return Optional.ofNullable(persons.get(id));
    }

    /**
     * Whether only authorised people may carry out that procedure on units of that family: so it is once anybody was ever authorised for it.
     */
    public boolean asksAuthorisation(String family, String procedure) {
        return persons.values().stream().flatMap(person -> person.authorisations().stream()).anyMatch(each -> each.isAbout(family, procedure));
    }

    /** Whether that person may carry out that procedure on units of that family on that day. */
    public boolean mayCarryOut(String id, String family, String procedure, LocalDate day) {
        return !asksAuthorisation(family, procedure) || person(id).filter(person -> person.mayCarryOut(family, procedure, day)).isPresent();
    }

    /** Whose key that is, or was. */
    public Optional<Person> holder(Digest fingerprint) {
        return Optional.ofNullable(holders.get(fingerprint)).map(persons::get);
    }

    /** The key of that fingerprint, whoever's it is. */
    public Optional<PersonKey> key(Digest fingerprint) {
        return holder(fingerprint).flatMap(person -> person.keys().stream().filter(key -> key.key().fingerprint().equals(fingerprint)).findFirst());
    }

    /** Whether anybody ever had a key; as long as nobody had, the bench signs. */
    public boolean anyKeys() {
        return !holders.isEmpty();
    }

    /** Those who may keep the register now. */
    public List<Person> administrators() {
        return persons.values().stream().filter(person -> person.may(Role.ADMINISTRATOR) && person.key().isPresent()).toList();
    }

    /** Events of the book that do not hold. */
    public List<Objection> objections() {
        return objections;
    }
}
