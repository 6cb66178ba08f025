package org.benchwright.core;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.internal.Message;

/** In which capacity somebody or something acts in a test. */
public enum Role {
    /** Carries the procedure out. */
    TECHNICIAN(Message.ROLE_TECHNICIAN),
    /** Releases a step; none of the test's technicians. */
    SECOND_PERSON(Message.ROLE_SECOND_PERSON),
    /** Releases what a second person may not. */
    SUPERVISOR(Message.ROLE_SUPERVISOR),
    /** Writes, approves and revises procedures. */
    ENGINEER(Message.ROLE_ENGINEER),
    /** Reviews records and decides on departures; acted nowhere in the test. */
    AUDITOR(Message.ROLE_AUDITOR),
    /** Keeps the register of people: who they are, which keys are theirs, what they may do. */
    ADMINISTRATOR(Message.ROLE_ADMINISTRATOR),
    /** The unattended observation of a unit on soak. */
    WATCH(Message.ROLE_WATCH),
    /** The bench itself: what the program notes without anybody's doing. */
    BENCH(Message.ROLE_BENCH);

    private static final Map<String, Role> BY_WORD = Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(Role::word, role -> role));

    private final Message label;
    private final String word;

    Role(Message label) {
        this.label = label;
        this.word = name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /**
     * The role as shown to people.
     *
     * @return {@code second person}
     */
    public String label() {
        return label.text();
    }

    /**
     * The role as written into records, the same in every language.
     *
     * @return {@code second person}
     */
    public String word() {
        return word;
    }

    /**
     * Finds a role by its word.
     *
     * @param word as {@link #word()} gives it
     * @return the role, or nothing
     */
    public static Optional<Role> find(String word) {
        return Optional.ofNullable(BY_WORD.get(word));
    }
}
