package org.benchwright.workshop.internal;

import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.people.KeyRefusedException;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKey;
import org.benchwright.ledger.people.PersonKeyStore;
import org.benchwright.workshop.SignedIn;
import org.benchwright.workshop.SigningPerson;
import org.benchwright.workshop.StoreException;

/** Opens people's keys. */
public final class PeopleKeys {

    private PeopleKeys() {
    }

    /**
     * The person of that id.
     *
     * @throws RefusedException if there is none
     */
    public static Person person(People people, String id) throws RefusedException {
        return people.person(id).orElseThrow(() -> new RefusedException(Message.PEOPLE_UNKNOWN.text(id)));
    }

    /** Whether somebody may release in that role. Anybody else is a second person; to be anything more the register must say so. */
    public static boolean mayRelease(Person person, Role as) {
        return as == Role.SECOND_PERSON || person.may(as);
    }

    /**
     * The key that somebody signs with, locked.
     *
     * @throws RefusedException if there is no such person, or no key of theirs is in use
     */
    public static PersonKey key(People people, String id) throws RefusedException {
        return person(people, id).key().orElseThrow(() -> new RefusedException(Message.PEOPLE_NO_KEY.text(id)));
    }

    /**
     * The key of somebody who signs.
     *
     * @throws RefusedException if there is no such person or key, the password or PIN is not taken, or the key that was opened as they signed in
     *                          is theirs no more
     */
    public static Signer unlock(PersonKeyStore keys, People people, SigningPerson who) throws RefusedException, StoreException {
        Person person = person(people, who.id());
        PersonKey key = key(people, who.id());
        if (who.signedIn().isPresent()) {
            return opened(key, who, who.signedIn().get());
        }
        try {
            return keys.unlock(person, key.key(), who.password());
        } catch (KeyRefusedException refused) {
            throw new RefusedException(refused.getMessage());
        }
    }

    /** Who has signed in may have got another key since, or lost this one. */
    private static Signer opened(PersonKey key, SigningPerson who, SignedIn signedIn) throws RefusedException {
        if (!signedIn.id().equals(who.id())) {
            throw new RefusedException(Message.STATION_LOCKED.text(who.id()));
        }
        Signer signer = signedIn.key(who.password());
        if (!signer.key().equals(key.key())) {
            signedIn.lock();
            throw new RefusedException(Message.STATION_LOCKED.text(who.id()));
        }
        return signer;
    }
}
