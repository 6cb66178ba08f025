package org.benchwright.workshop;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.people.KeyRefusedException;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.PeopleBook;
import org.benchwright.ledger.people.PeopleFact;
import org.benchwright.ledger.people.PeopleRefusedException;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKey;
import org.benchwright.ledger.people.PersonKeyStore;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.PeopleKeys;

/** The register of people of a bench's ledger: who they are, what they may do, and their keys. Whatever is entered is signed. */
public final class Registrar {

    private final Ledger ledger;
    private final PeopleBook book;
    private final PersonKeyStore keys;
    private final BenchTime time;

    Registrar(Ledger ledger, Signer benchKey, PersonKeyStore keys, BenchTime time) {
        this.ledger = ledger;
        this.book = new PeopleBook(ledger, benchKey);
        this.keys = keys;
        this.time = time;
    }

    /**
     * Everybody who was ever in it, in the order in which they were added.
     *
     * @throws StoreException if it can't be read, or is not as it was signed
     */
    public List<RegisteredPerson> people() throws StoreException {
        return read().all().stream().map(Registrar::shown).toList();
    }

    static RegisteredPerson shown(Person person) {
        return new RegisteredPerson(person.id(), person.name(), person.roles(), person.keys().stream().map(Registrar::shown).toList(),
                person.authorisations().stream().map(each -> new RegisteredPerson.MayCarryOut(each.family(), each.procedure(), each.from(),
                        each.until(), each.ended())).toList());
    }

    private static RegisteredPerson.Key shown(PersonKey key) {
        RegisteredPerson.KeyState state = key.inUse() ? RegisteredPerson.KeyState.IN_USE
                : key.revoked().isPresent() ? RegisteredPerson.KeyState.REVOKED : RegisteredPerson.KeyState.REPLACED;
        return new RegisteredPerson.Key(key.key().fingerprint().hex(), state, key.revoked().map(PersonKey.Revocation::reason).orElse(""));
    }

    /**
     * Begins the register: the first person, administrator and whatever else, with a key. The bench signs it, as nobody else can yet.
     *
     * @param roles what the person may do beside keeping the register
     * @throws RefusedException   if somebody has a key already, or id, name or password will not do
     * @throws OvertakenException if somebody else entered something in the same moment
     */
    public void begin(String id, String name, Collection<Role> roles, char[] password)
            throws RefusedException, OvertakenException, StoreException {
        Signer bench = book.bench();
        if (read().anyKeys()) {
            throw new RefusedException(Message.PEOPLE_BEGUN.text());
        }
        Optional<Person> known = read().person(id);
        Person person = known.orElse(new Person(id, name, Set.of(), List.of()));
        // What is entered stays; so nothing is before the password is known to do.
        refuse(PeopleBook.objection(roles).or(() -> keys.objection(person, password)));
        if (known.isEmpty()) {
            enter(new PeopleFact.PersonAdded(id, name), bench);
        }
        grant(id, List.of(Role.ADMINISTRATOR), bench);
        grant(id, roles, enterKey(person, password, key -> new PeopleFact.KeyEnrolled(id, key), bench));
    }

    /**
     * Asked before anybody types a password.
     *
     * @throws RefusedException if there is nobody of that id
     */
    public void requirePerson(String id) throws RefusedException, StoreException {
        PeopleKeys.person(read(), id);
    }

    /**
     * Asked before anybody types a password.
     *
     * @throws RefusedException if there is nobody of that id, or no key of theirs is in use
     */
    public void requireSigner(String id) throws RefusedException, StoreException {
        PeopleKeys.key(read(), id);
    }

    /**
     * Asked before anybody types a new password a second time.
     *
     * @throws RefusedException if there is nobody of that id, or the password will not do
     */
    public void requirePassword(String id, char[] password) throws RefusedException, StoreException {
        refuse(keys.objection(PeopleKeys.person(read(), id), password));
    }

    /**
     * Adds somebody, without a key.
     *
     * @param by an administrator
     */
    public void add(SigningPerson by, String id, String name, Collection<Role> roles)
            throws RefusedException, OvertakenException, StoreException {
        // What is entered stays; so nothing is before all roles are known to do.
        refuse(PeopleBook.objection(roles));
        Signer signer = unlock(by);
        enter(new PeopleFact.PersonAdded(id, name), signer);
        grant(id, roles, signer);
    }

    /**
     * Gives somebody a key, who types the password for it beside the administrator.
     *
     * @param by an administrator
     */
    public void enroll(SigningPerson by, String id, char[] password) throws RefusedException, OvertakenException, StoreException {
        Signer signer = unlock(by);
        enterKey(PeopleKeys.person(read(), id), password, key -> new PeopleFact.KeyEnrolled(id, key), signer);
    }

    /** Puts a new key in the place of the own one; what the old one signed stays true. */
    public void rotate(SigningPerson own, char[] password) throws RefusedException, OvertakenException, StoreException {
        Signer signer = unlock(own);
        enterKey(PeopleKeys.person(read(), own.id()), password, key -> new PeopleFact.KeyRotated(own.id(), key), signer);
    }

    /**
     * Says that a key is not to be trusted any more.
     *
     * @param by          an administrator, or the key's holder
     * @param id          whose key
     * @param fingerprint how the key's fingerprint begins; empty: the one in use
     * @param from        since when; empty: now
     */
    public void revoke(SigningPerson by, String id, String fingerprint, Optional<Instant> from, String reason)
            throws RefusedException, OvertakenException, StoreException {
        Signer signer = unlock(by);
        PersonKey key = PeopleKeys.person(read(), id).keys().stream()
                .filter(each -> fingerprint.isEmpty() ? each.inUse() : each.key().fingerprint().hex().startsWith(fingerprint))
                .findFirst().orElseThrow(() -> new RefusedException(Message.PEOPLE_OTHER_KEY.text(id)));
        enter(new PeopleFact.KeyRevoked(id, key.key().fingerprint(), from.orElseGet(this::now), reason), signer);
    }

    /** Lets somebody act in a role. */
    public void grant(SigningPerson by, String id, Role role) throws RefusedException, OvertakenException, StoreException {
        enter(new PeopleFact.RoleGranted(id, role), unlock(by));
    }

    /**
     * Lets somebody carry out a procedure on units of a family.
     *
     * @param by        an administrator
     * @param family    its name, or {@code *} for all
     * @param procedure its name, or {@code *} for all
     * @param from      first day
     * @param until     last day
     */
    public void authorise(SigningPerson by, String id, String family, String procedure, LocalDate from, LocalDate until)
            throws RefusedException, OvertakenException, StoreException {
        enter(new PeopleFact.Authorised(id, family, procedure, from, until), unlock(by));
    }

    /** Ends an authorisation before its last day; named as it was granted. */
    public void endAuthorisation(SigningPerson by, String id, String family, String procedure, String reason)
            throws RefusedException, OvertakenException, StoreException {
        enter(new PeopleFact.AuthorisationEnded(id, family, procedure, reason), unlock(by));
    }

    /** Lets somebody act in a role no more. */
    public void end(SigningPerson by, String id, Role role, String reason) throws RefusedException, OvertakenException, StoreException {
        enter(new PeopleFact.RoleEnded(id, role, reason), unlock(by));
    }

    private static void refuse(Optional<String> objection) throws RefusedException {
        if (objection.isPresent()) {
            throw new RefusedException(objection.get());
        }
    }

    /**
     * For whoever has no ledger yet, and makes none for what will be refused.
     *
     * @throws RefusedException if something speaks against beginning a register so
     */
    public static void requireFirst(String id, String name, Collection<Role> roles, char[] password) throws RefusedException {
        refuse(PeopleBook.objectionToFirst(id, name, roles, password));
    }

    private void grant(String id, Collection<Role> roles, Signer signer) throws RefusedException, OvertakenException, StoreException {
        for (Role role : roles) {
            if (!PeopleKeys.person(read(), id).may(role)) {
                enter(new PeopleFact.RoleGranted(id, role), signer);
            }
        }
    }

    /** Makes a key and enters it; what the register does not take leaves no file behind. */
    private Signer enterKey(Person person, char[] password, Function<SignerKey, PeopleFact> fact, Signer signer)
            throws RefusedException, OvertakenException, StoreException {
        Signer own = create(person, password);
        try {
            enter(fact.apply(own.key()), signer);
            return own;
        } catch (RefusedException | OvertakenException e) {
            // When the store fails it may have been entered all the same.
            keys.discard(own.key());
            throw e;
        }
    }

    private Signer create(Person person, char[] password) throws RefusedException {
        try {
            return keys.create(person, password);
        } catch (KeyRefusedException refused) {
            throw new RefusedException(refused.getMessage());
        }
    }

    private Signer unlock(SigningPerson who) throws RefusedException, StoreException {
        return PeopleKeys.unlock(keys, read(), who);
    }

    private Instant now() {
        return time.now().truncatedTo(ChronoUnit.MILLIS);
    }

    private People read() throws StoreException {
        return LedgerWork.of(() -> People.read(ledger));
    }

    private void enter(PeopleFact fact, Signer signer) throws RefusedException, OvertakenException, StoreException {
        try {
            book.enter(fact, signer, now());
        } catch (PeopleRefusedException refused) {
            throw new RefusedException(refused.getMessage());
        } catch (SequenceConflictException conflict) {
            throw new OvertakenException(Message.BOOK_OVERTAKEN.text(), conflict);
        } catch (LedgerException failure) {
            throw LedgerWork.failed(failure);
        }
    }
}
