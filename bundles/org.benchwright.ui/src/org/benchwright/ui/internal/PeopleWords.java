package org.benchwright.ui.internal;

import org.benchwright.present.PersonRow;

/** People of the register in words. */
public final class PeopleWords {

    private PeopleWords() {
    }

    /** Initials, name, and what the person may do. */
    public static String of(PersonRow person) {
        return Message.PERSON.text(person.id(), person.name(), roles(person));
    }

    /** What the person may do. */
    public static String roles(PersonRow person) {
        return person.roles().isEmpty() ? Message.PERSON_NO_ROLE.text() : String.join(", ", person.roles());
    }
}
