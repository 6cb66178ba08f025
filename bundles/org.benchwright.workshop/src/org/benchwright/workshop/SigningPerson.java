package org.benchwright.workshop;

import java.util.Arrays;

/**
 * Somebody who signs, and the password of the key. Closing it blanks the password out.
 *
 * @param id       as the register of people has it
 * @param password not copied, so that it can be blanked out
 */
public record SigningPerson(String id, char[] password) implements AutoCloseable {

    @Override
    public void close() {
        Arrays.fill(password, ' ');
    }

    @Override
    public String toString() {
        return id;
    }
}
