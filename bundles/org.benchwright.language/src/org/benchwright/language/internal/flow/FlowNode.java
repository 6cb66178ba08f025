package org.benchwright.language.internal.flow;

import org.eclipse.emf.ecore.EObject;

/**
 * A place on a way through a procedure.
 *
 * @param id     its number in its graph
 * @param kind   what kind of place it is
 * @param source what in the text it stands for
 */
public record FlowNode(int id, Kind kind, EObject source) {

    /** Kinds of places. */
    public enum Kind {
        /** The test begins; preconditions are asked. */
        BEGIN,
        /** A stage is entered. */
        STAGE,
        /** A soak runs. */
        SOAK,
        /** A step is entered, its hazards are shown. */
        STEP,
        /** A statement of a step is carried out. */
        STATEMENT,
        /** A verdict is reached. */
        CONCLUDED,
        /** Making safe begins. */
        MAKE_SAFE,
        /** The test is over and the bench is left. */
        OVER,
        /** The text says nothing about what comes next. */
        LOST
    }
}
