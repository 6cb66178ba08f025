package org.benchwright.workshop;

import java.util.Optional;

/**
 * Somebody who signs, and the password of the key, which its owner blanks out after use.
 *
 * @param id       as the register of people has it
 * @param password the full one, or the PIN of whoever has signed in; not copied, so that it can be blanked out
 * @param signedIn who has signed in, if that PIN is theirs; empty where the full password is given
 */
public record SigningPerson(String id, char[] password, Optional<SignedIn> signedIn) {

    /** Somebody who signs with the full password. */
    public SigningPerson(String id, char[] password) {
        this(id, password, Optional.empty());
    }

    @Override
    public String toString() {
        return id;
    }
}
