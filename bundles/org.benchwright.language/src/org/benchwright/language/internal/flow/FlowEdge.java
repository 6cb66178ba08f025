package org.benchwright.language.internal.flow;

import org.eclipse.emf.ecore.EObject;

/**
 * A way from one place to the next.
 *
 * @param from    where it begins
 * @param to      where it leads
 * @param cause   what in the text makes it: the outcome, or the place itself where it simply goes on
 * @param bounded whether it can be taken a bounded number of times only
 */
public record FlowEdge(FlowNode from, FlowNode to, EObject cause, boolean bounded) {

    /** Whether it leads to where it begins, or to a place before that in the order of the text. */
    public boolean leadsBack() {
        return to.id() <= from.id();
    }
}
