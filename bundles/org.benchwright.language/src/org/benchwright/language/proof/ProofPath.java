package org.benchwright.language.proof;

import java.util.List;
import java.util.Objects;

import org.benchwright.core.Verdict;

/**
 * One path through a procedure, told by where it leaves the straight way.
 *
 * @param turns   each place at which something else than all that is asked for happens, with what that is; empty for the straight path
 * @param steps   how many steps and soaks it enters, making safe not counted
 * @param verdict how it ends
 * @param reason  why, as the text says; may be empty
 */
public record ProofPath(List<Turn> turns, int steps, Verdict verdict, String reason) {

    /**
     * A turn.
     *
     * @param place the name of the step or soak; empty for a precondition
     * @param words what happens there
     */
    public record Turn(String place, String words) {
    }

    public ProofPath {
        turns = List.copyOf(turns);
        Objects.requireNonNull(verdict);
    }
}
