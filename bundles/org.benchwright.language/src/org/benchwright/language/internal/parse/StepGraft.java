package org.benchwright.language.internal.parse;

import java.io.StringReader;
import java.util.List;
import java.util.Optional;

import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.impl.NodeModelBuilder;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.IParser;

/** One step, read by itself, to be put into the tree of a text in place of another. */
final class StepGraft {

    private final ICompositeNode place;
    private final IParseResult alone;

    private StepGraft(ICompositeNode place, IParseResult alone) {
        this.place = place;
        this.alone = alone;
    }

    /**
     * Reads a step.
     *
     * @param parser the language's
     * @param place  the step in whose place it is meant to be
     * @param text   its characters, with the blanks and comments before it
     * @return nothing where that does not come out as a step from end to end
     */
    static Optional<StepGraft> read(IParser parser, ICompositeNode place, String text) {
        if (!(place.getGrammarElement() instanceof RuleCall call)) {
            return Optional.empty();
        }
        IParseResult alone = parser.parse(call, new StringReader(text), place.getLookAhead());
        INode whole = alone.getRootNode().getFirstChild();
        boolean sound = alone.getRootASTElement() instanceof Step && whole instanceof ICompositeNode && !whole.hasSiblings()
                && whole.getTotalLength() == text.length() && ((ICompositeNode) whole).hasDirectSemanticElement();
        return sound ? Optional.of(new StepGraft(place, alone)) : Optional.empty();
    }

    boolean isBroken() {
        return alone.hasSyntaxErrors();
    }

    Step step() {
        return (Step) alone.getRootASTElement();
    }

    /** Puts the step in its place, in the tree of characters and in the model; the whole text is then another one. */
    @SuppressWarnings("unchecked") // a step always stands in a list of steps
    void put(String wholeText) {
        EObject old = place.getSemanticElement();
        List<EObject> steps = (List<EObject>) old.eContainer().eGet(old.eContainingFeature());
        steps.set(steps.indexOf(old), step());
        ICompositeNode root = place.getRootNode();
        NodeModelBuilder builder = new NodeModelBuilder();
        builder.replaceAndTransferLookAhead(place, alone.getRootNode());
        builder.setCompleteContent(root, wholeText);
    }

    /** The step's own node around a node of it, or the node itself; nothing where it belongs to no step. */
    static Optional<ICompositeNode> around(INode inside) {
        for (INode node = inside; node != null; node = node.getParent()) {
            if (node instanceof ICompositeNode composite && composite.hasDirectSemanticElement() && composite.getSemanticElement() instanceof Step) {
                return Optional.of(composite);
            }
        }
        return Optional.empty();
    }
}
