package org.benchwright.ledger.people;

import java.time.Instant;
import java.time.LocalDate;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.ledger.SignerKey;

/** Something that is entered in the book of people. Nothing in it is ever changed: what no longer holds is ended by another entry. */
public sealed interface PeopleFact {

    /** The id of the person it is about. */
    String person();

    /**
     * Somebody is added, who may do nothing yet.
     *
     * @param person initials or another short id, as it stands in records
     * @param name   the name, which stands nowhere else
     */
    record PersonAdded(String person, String name) implements PeopleFact {
    }

    /** From now on the person may act in that role. */
    record RoleGranted(String person, Role role) implements PeopleFact {
    }

    /** From now on the person may not act in that role any more. */
    record RoleEnded(String person, Role role, String reason) implements PeopleFact {
    }

    /**
     * The person may carry out a procedure on units of a family, from one day to another, both included.
     *
     * @param family    its name, or {@code *} for all
     * @param procedure its name, or {@code *} for all
     */
    record Authorised(String person, String family, String procedure, LocalDate from, LocalDate until) implements PeopleFact {
    }

    /** From now on the person may not carry that out any more; named as it was granted. */
    record AuthorisationEnded(String person, String family, String procedure, String reason) implements PeopleFact {
    }

    /** The person's first key, or one after all before it were revoked. */
    record KeyEnrolled(String person, SignerKey key) implements PeopleFact {
    }

    /** A new key takes the place of the one that signs this. */
    record KeyRotated(String person, SignerKey key) implements PeopleFact {
    }

    /**
     * A key is not to be trusted any more.
     *
     * @param key    its fingerprint
     * @param from   what it signed from this instant on is not the person's
     * @param reason why
     */
    record KeyRevoked(String person, Digest key, Instant from, String reason) implements PeopleFact {
    }
}
