package org.benchwright.core;

import java.util.Objects;
import java.util.regex.Pattern;

import org.benchwright.core.internal.Message;

/**
 * Who acts, by the id of their key: names live in a register of their own and stay out of records.
 *
 * @param id 1 to 64 ASCII letters, digits, dots, dashes or underscores
 * @param role in which capacity
 */
public record Actor(String id, Role role) {

    private static final Pattern ID = Pattern.compile("[A-Za-z0-9._-]{1,64}");

    /**
     * Checks the id.
     *
     * @throws IllegalArgumentException when it is no key id
     */
    public Actor {
        Objects.requireNonNull(role);
        if (!ID.matcher(id).matches()) {
            throw new IllegalArgumentException(Message.ACTOR_ID.text(id));
        }
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
