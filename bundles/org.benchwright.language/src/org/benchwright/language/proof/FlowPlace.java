package org.benchwright.language.proof;

import java.util.Objects;
import java.util.Optional;
import java.util.Set;

import org.benchwright.language.editing.Place;

/**
 * A place in the flow of a procedure.
 *
 * @param id    its number in its diagram, from 0
 * @param kind  what kind of place it is
 * @param name  its name in the text: of the step or soak, or the verdict of an end
 * @param stage the title of its stage; empty for the beginning and for ends
 * @param words what is done there, or why the test ends there
 * @param marks what is to be noticed about it
 * @param text  where it stands in a text; empty where nothing in the text stands for it
 */
public record FlowPlace(int id, Kind kind, String name, String stage, String words, Set<Mark> marks, Optional<Place> text) {

    /** Kinds of places. */
    public enum Kind {
        /** The test begins; preconditions are asked. */
        BEGIN,
        /** A step. */
        STEP,
        /** A soak. */
        SOAK,
        /** The test ends accepted. */
        ACCEPTED,
        /** The test ends rejected. */
        REJECTED,
        /** The test ends undecided. */
        UNDECIDED,
        /** Making safe begins; before every end. */
        MAKE_SAFE,
        /** A step of making safe. */
        SAFE_STEP,
        /** The unit is safe, and the test is over. */
        OVER
    }

    /** What is to be noticed about a place. */
    public enum Mark {
        /** No way leads there. */
        UNREACHABLE,
        /** Entered only by going there. */
        ON_DEMAND,
        /** The supply may be on when it begins. */
        LIVE,
        /** The supply may still be on when the test is over. */
        ENDS_LIVE,
        /** Passed over where what it is for does not apply. */
        CONDITIONAL
    }

    public FlowPlace {
        Objects.requireNonNull(kind);
        marks = Set.copyOf(marks);
    }

    /** Whether a test ends here. */
    public boolean isEnd() {
        return kind == Kind.ACCEPTED || kind == Kind.REJECTED || kind == Kind.UNDECIDED;
    }
}
