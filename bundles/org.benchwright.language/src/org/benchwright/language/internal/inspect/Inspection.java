package org.benchwright.language.internal.inspect;

import org.benchwright.model.Family;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;

/**
 * One concern that a text is looked through for. Implementations keep no state, and bear references that lead nowhere and parts
 * that are missing.
 */
public interface Inspection {

    /** Looks at a file as a whole. */
    default void file(ProcedureFile file, Remarks remarks) {
        // Most inspections look at families or procedures only.
    }

    /** Looks at one of all the things that a file says, at whatever depth. */
    default void piece(EObject piece, Remarks remarks) {
        // Most inspections know where to find what they look at.
    }

    /**
     * Looks at one step, whether of a stage or of making safe. What there is to say must follow from the step, from what it refers to and
     * from what is around it, never from other steps beside it: it is not asked again while those stay the same.
     */
    default void step(Step step, Procedure procedure, Remarks remarks) {
        // Some inspections look at a procedure as a whole.
    }

    /** Looks at a family. */
    default void family(Family family, Remarks remarks) {
        // Most inspections look at procedures only.
    }

    /** Looks at a procedure, but not at what {@link #step} finds in each of its steps. */
    default void procedure(Procedure procedure, Remarks remarks) {
        // Some inspections look at families only.
    }
}
