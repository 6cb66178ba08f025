package org.benchwright.workshop.internal;

import org.benchwright.engine.RefusedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.people.KeyRefusedException;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKey;
import org.benchwright.ledger.people.PersonKeyStore;
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

    /**
     * The key of somebody who signs.
     *
     * @throws RefusedException if there is no such person or key, or the password is not taken
     */
    public static Signer unlock(PersonKeyStore keys, People people, SigningPerson who) throws RefusedException, StoreException {
        Person person = person(people, who.id());
        PersonKey key = person.key().orElseThrow(() -> new RefusedException(Message.PEOPLE_NO_KEY.text(who.id())));
        try {
            return keys.unlock(person, key.key(), who.password());
        } catch (KeyRefusedException refused) {
            throw new RefusedException(refused.getMessage());
        }
    }

    /** A failure of the ledger in the words of this room. */
    public static StoreException store(LedgerException failure) {
        return new StoreException(failure.getMessage(), failure);
    }
}
