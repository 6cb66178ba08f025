package org.benchwright.core;

import java.util.Objects;

import org.benchwright.core.internal.Message;

/**
 * Who acts, by the id of their key: names live in a register of their own and stay out of records.
 *
 * @param id 1 to 64 ASCII letters, digits, dots, dashes or underscores
 * @param role in which capacity
 */
public record Actor(String id, Role role) {

    private static final int LONGEST = 64;

    /**
     * Checks the id.
     *
     * @throws IllegalArgumentException when it is no key id
     */
    public Actor {
        Objects.requireNonNull(role);
        if (!isId(id)) {
            throw new IllegalArgumentException(Message.ACTOR_ID.text(id));
        }
    }

    private static boolean isId(String id) {
        for (int i = 0; i < id.length(); i++) {
            if (!allowed(id.charAt(i))) {
                return false;
            }
        }
        return !id.isEmpty() && id.length() <= LONGEST;
    }

    private static boolean allowed(char letter) {
        return letter >= 'A' && letter <= 'Z' || letter >= 'a' && letter <= 'z' || letter >= '0' && letter <= '9' || letter == '.' || letter == '-'
                || letter == '_';
    }

    /**
     * Role and id.
     *
     * @return {@code technician QN}
     */
    @Override
    public String toString() {
        return role.word() + " " + id;
    }
}
