package org.benchwright.language.internal.inspect;

import org.benchwright.model.Family;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFile;
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

    /** Looks at a family. */
    default void family(Family family, Remarks remarks) {
        // Most inspections look at procedures only.
    }

    /** Looks at a procedure. */
    default void procedure(Procedure procedure, Remarks remarks) {
        // Some inspections look at families only.
    }
}
