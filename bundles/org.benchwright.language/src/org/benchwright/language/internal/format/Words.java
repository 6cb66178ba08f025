package org.benchwright.language.internal.format;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.benchwright.language.internal.format.Word.Kind;
import org.benchwright.language.internal.format.Word.Role;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;

/** The words and comments of a parsed text, in order. */
final class Words {

    /** For each rule with a block, the parts that stand in lines of their own. */
    private static final Map<String, Set<String>> LINES = Map.of(
            "ProcedureFile", Set.of("imports", "families", "procedures", "sharedStages"),
            "Family", Set.of("supply", "lamps", "displays", "modeIndications", "keeps", "loadables", "options", "watched", "stop",
                    "faults"),
            "WatchedBy", Set.of("points"),
            "Procedure", Set.of("claim", "retest", "benchProof", "benchNeed", "hazards", "protections", "instruments", "preconditions",
                    "blocks", "makeSafe",
                    "conclusion"),
            "Stage", Set.of("steps"), "MakeSafe", Set.of("steps"), "SharedStage", Set.of("hazards", "instruments", "steps"),
            "Soak", Set.of("watch", "look", "gap", "stops"), "Step", Set.of("statements"), "Grid", Set.of("axes", "reading", "judgement"));
    private static final Set<String> BLOCKS = Set.of("Family", "WatchedBy", "Procedure", "Stage", "MakeSafe", "SharedStage", "Soak", "Step", "Fault");
    /** Words that begin a clause of a block without a rule of its own. */
    private static final Set<String> CLAUSES = Set.of("serial", "modes", "applies", "purpose", "keep", "conditions", "otherwise", "means", "often",
            "next");
    private static final Set<String> TIGHT_PARENTHESES = Set.of("CarryOut", "SharedStage");
    private static final Set<String> UNBROKEN = Set.of("Number", "UnsignedNumber", "UnitWord");

    private Words() {
    }

    static List<Word> of(ICompositeNode root) {
        List<Word> words = new ArrayList<>();
        int breaks = 0;
        for (ILeafNode leaf : root.getLeafNodes()) {
            String text = leaf.getText();
            Kind kind = kind(leaf, text);
            if (leaf.isHidden() && text.isBlank()) {
                breaks += count(text);
            } else if (!text.isEmpty()) {
                boolean word = kind == Kind.WORD;
                words.add(new Word(kind, leaf.getOffset(), text.stripTrailing(), breaks, word ? role(leaf) : Role.INNER,
                        word && isGlued(leaf, words)));
                breaks = kind == Kind.LINE_COMMENT ? count(text) : 0;
            }
        }
        return words;
    }

    private static Kind kind(ILeafNode leaf, String text) {
        if (!leaf.isHidden()) {
            return Kind.WORD;
        }
        return text.startsWith("//") ? Kind.LINE_COMMENT : Kind.INNER_COMMENT;
    }

    private static int count(String text) {
        return (int) text.chars().filter(c -> c == '\n').count();
    }

    private static Role role(ILeafNode leaf) {
        if (leaf.getGrammarElement() instanceof Keyword keyword) {
            String rule = GrammarUtil.containingRule(keyword).getName();
            if (rule.equals("Erase") && keyword.getValue().equals("spare") || rule.equals("Load") && keyword.getValue().equals("leave")) {
                return Role.ALIGNED;
            } else if (BLOCKS.contains(rule) && keyword.getValue().equals("{")) {
                return Role.OPENS;
            } else if (BLOCKS.contains(rule) && keyword.getValue().equals("}")) {
                return Role.CLOSES;
            } else if (BLOCKS.contains(rule) && CLAUSES.contains(keyword.getValue())) {
                return Role.BEGINS;
            }
        }
        return beginsLine(leaf) ? Role.BEGINS : Role.INNER;
    }

    /** Whether the word is the first one of something that stands in lines of its own. */
    private static boolean beginsLine(ILeafNode leaf) {
        for (INode node = leaf; node.getParent() != null && node.getOffset() == leaf.getOffset(); node = node.getParent()) {
            if (isLine(node.getGrammarElement())) {
                return true;
            }
        }
        return false;
    }

    private static boolean isLine(EObject element) {
        if (!(element instanceof RuleCall call) || !(call.getRule() instanceof ParserRule rule) || GrammarUtil.isDatatypeRule(rule)) {
            return false;
        }
        Assignment assignment = GrammarUtil.containingAssignment(call);
        return assignment != null && LINES.getOrDefault(GrammarUtil.containingRule(assignment).getName(), Set.of()).contains(assignment.getFeature());
    }

    private static boolean isGlued(ILeafNode leaf, List<Word> before) {
        if (before.isEmpty() || before.get(before.size() - 1).isComment()) {
            return false;
        }
        String text = leaf.getText();
        if (text.equals(",") || text.equals(")") || before.get(before.size() - 1).text().equals("(")) {
            return true;
        }
        boolean call = text.equals("(") && TIGHT_PARENTHESES.contains(GrammarUtil.containingRule(leaf.getGrammarElement()).getName());
        return call || isInsideNumber(leaf);
    }

    /** A sign, a decimal point or a fraction of units belongs to what stands before it. */
    private static boolean isInsideNumber(ILeafNode leaf) {
        for (INode node = leaf; node != null; node = node.getParent()) {
            if (node.getGrammarElement() instanceof RuleCall call && UNBROKEN.contains(call.getRule().getName())) {
                return node.getOffset() < leaf.getOffset();
            }
        }
        return false;
    }
}
