package org.benchwright.language.internal.parse;

import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.StreamSupport;

import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.ParseResult;

/** A tree whose only mistakes are inside some of its steps. */
final class StepwiseResult extends ParseResult {

    /** More broken steps than anybody has at once while typing; bounds the work. */
    static final int MOST_BROKEN = 8;

    private final Set<Step> broken = Collections.newSetFromMap(new IdentityHashMap<>());

    StepwiseResult(EObject content, ICompositeNode root, Set<Step> broken) {
        super(content, root, !broken.isEmpty());
        this.broken.addAll(broken);
    }

    /** The steps that have mistakes. */
    Set<Step> broken() {
        return Collections.unmodifiableSet(broken);
    }

    /** Looked for in the broken steps only: a long text has many thousands of places. */
    @Override
    public Iterable<INode> getSyntaxErrors() {
        List<ICompositeNode> steps = broken.stream().map(NodeModelUtils::findActualNodeFor).filter(Objects::nonNull)
                .sorted(Comparator.comparing(INode::getTotalOffset)).toList();
        return steps.stream().flatMap(step -> StreamSupport.stream(step.getAsTreeIterable().spliterator(), false))
                .filter(node -> node.getSyntaxErrorMessage() != null).toList();
    }
}
