package org.benchwright.language.internal.editing;

import java.util.Map;
import java.util.function.Function;

import org.benchwright.language.editing.Meaning;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;

/** Reads the meaning of each passage off the tree. */
final class Styles {

    private static final Map<String, Meaning> RULES = Map.ofEntries(Map.entry("Number", Meaning.AMOUNT),
            Map.entry("UnsignedNumber", Meaning.AMOUNT), Map.entry("Count", Meaning.AMOUNT), Map.entry("Index", Meaning.AMOUNT),
            Map.entry("UnitWord", Meaning.AMOUNT), Map.entry("SignalWord", Meaning.SIGNAL), Map.entry("Verdict", Meaning.VERDICT),
            Map.entry("LampColour", Meaning.INDICATION), Map.entry("StillPattern", Meaning.INDICATION),
            Map.entry("FlashingPattern", Meaning.INDICATION), Map.entry("FlashSpeed", Meaning.INDICATION));

    private Styles() {
    }

    /** What a single word means. */
    static Meaning meaning(ILeafNode leaf) {
        return meaning(leaf, Styles::meaning);
    }

    /** What a word means, where it is known or found out elsewhere what a place of the grammar does. */
    static Meaning meaning(ILeafNode leaf, Function<EObject, Meaning> meanings) {
        String text = leaf.getText();
        if (leaf.isHidden()) {
            return Meaning.COMMENT;
        } else if (text.startsWith("\"")) {
            return Meaning.TEXT;
        }
        for (INode node = leaf; node != null && isWord(node, leaf); node = node.getParent()) {
            Meaning found = meanings.apply(node.getGrammarElement());
            if (found != Meaning.PLAIN) {
                return found;
            }
        }
        return leaf.getGrammarElement() instanceof Keyword && Character.isLetter(text.charAt(0)) ? Meaning.KEYWORD : Meaning.PLAIN;
    }

    /** The leaf itself, and the nodes around it that make up one word with it. */
    private static boolean isWord(INode node, ILeafNode leaf) {
        return node == leaf || isDatatype(node.getGrammarElement());
    }

    private static boolean isDatatype(EObject element) {
        if (element instanceof CrossReference) {
            return true;
        }
        return element instanceof RuleCall call && call.getRule() instanceof ParserRule rule && GrammarUtil.isDatatypeRule(rule);
    }

    /** What a place of the grammar means. */
    static Meaning meaning(EObject element) {
        if (element instanceof CrossReference || GrammarUtil.containingCrossReference(element) != null) {
            return Meaning.REFERENCE;
        } else if (!(element instanceof RuleCall call) || call.getRule() == null) {
            return Meaning.PLAIN;
        } else if (call.getRule().getName().equals("Name")) {
            return isDeclaration(call) ? Meaning.DECLARATION : Meaning.REFERENCE;
        }
        return RULES.getOrDefault(((RuleCall) element).getRule().getName(), Meaning.PLAIN);
    }

    private static boolean isDeclaration(RuleCall call) {
        Assignment assignment = GrammarUtil.containingAssignment(call);
        return assignment != null && assignment.getFeature().equals("name");
    }
}
