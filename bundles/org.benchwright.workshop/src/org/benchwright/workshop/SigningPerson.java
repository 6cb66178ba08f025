package org.benchwright.workshop;

/**
 * Somebody who signs, and the password of the key, which its owner blanks out after use.
 *
 * @param id       as the register of people has it
 * @param password not copied, so that it can be blanked out
 */
public record SigningPerson(String id, char[] password) {

    @Override
    public String toString() {
        return id;
    }
}
