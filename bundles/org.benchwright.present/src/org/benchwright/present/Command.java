package org.benchwright.present;

import java.util.Optional;

/** What can be done at any time besides answering. */
public sealed interface Command {

    /** Makes the unit safe and ends the test undecided; the reason may still be missing. */
    record MakeSafe(String reason) implements Command {
    }

    /** Strikes the last entry. */
    record Strike() implements Command {
    }

    /** Adds a note. */
    record Note(String text) implements Command {
    }

    /** Says where in the rack the unit stands. */
    record Place(String position) implements Command {
    }

    /** Another technician goes on with the test. */
    record HandOver(String to) implements Command {
    }

    /** Shows what can be done. */
    record Help() implements Command {
    }

    /** Shows what happened so far. */
    record SoFar() implements Command {
    }

    /** Leaves the test open. */
    record Leave() implements Command {
    }

    /**
     * The command in what was typed: {@code !}, {@code ! reason}, {@code -}, {@code + text}, {@code @ position}, {@code > initials}, {@code ?}, {@code ??}, {@code q}. A minus or
     * plus with something right behind it is the sign of a number.
     */
    static Optional<Command> parse(String typed) {
        String text = typed.strip();
        if (text.startsWith("!")) {
            return Optional.of(new MakeSafe(text.substring(1).strip()));
        } else if (text.startsWith("+ ")) {
            return Optional.of(new Note(text.substring(2).strip()));
        } else if (text.startsWith("@")) {
            return Optional.of(new Place(text.substring(1).strip()));
        } else if (text.startsWith(">")) {
            return Optional.of(new HandOver(text.substring(1).strip()));
        }
        return switch (text) {
            case "-" -> Optional.of(new Strike());
            case "?" -> Optional.of(new Help());
            case "??" -> Optional.of(new SoFar());
            case "q", "Q" -> Optional.of(new Leave());
            default -> Optional.empty();
        };
    }
}
