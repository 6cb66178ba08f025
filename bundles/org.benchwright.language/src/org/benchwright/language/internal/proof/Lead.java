package org.benchwright.language.internal.proof;

import org.benchwright.engine.plan.Move;

/** Where a way out of a place leads, before it is known how often it was taken. */
sealed interface Lead {

    /** To whatever comes next in the order of the text. */
    record Onward() implements Lead {
    }

    /** Where a move leads. */
    record Moved(Move move) implements Lead {
    }

    /** Power was lost during a soak: only beginning again and ends are possible (the engine's rule). */
    record PowerLost(Move move) implements Lead {
    }

    /** The test ends undecided, for a reason that no text gives. */
    record Undecided(String reason) implements Lead {
    }
}
