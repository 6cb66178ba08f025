package org.benchwright.language.tests;

import java.util.List;
import java.util.Random;

import org.benchwright.language.ProcedureStandaloneSetup;
import org.benchwright.language.services.ProcedureGrammarAccess;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.TerminalRule;
import org.eclipse.xtext.UnorderedGroup;

/** Texts that the grammar itself writes, at random: well formed mostly, meaningful hardly ever. */
final class RandomTexts {

    private static final ProcedureGrammarAccess GRAMMAR = new ProcedureStandaloneSetup().createInjectorAndDoEMFRegistration()
            .getInstance(ProcedureGrammarAccess.class);
    private static final List<String> NAMES = List.of("lark", "lark_base", "pwr", "ok", "out", "run", "meter", "mains",
            "on", "supply", "step",
            "owner_program", "W01", "x", "V", "mA");
    private static final int MOST_WORDS = 600;

    private final Random random;
    private final StringBuilder text = new StringBuilder();
    private int words;

    private RandomTexts(Random random) {
        this.random = random;
    }

    /** A text of the whole grammar. */
    static String next(Random random) {
        RandomTexts texts = new RandomTexts(random);
        texts.rule(GRAMMAR.getProcedureFileRule(), 0);
        return texts.text.toString();
    }

    private void rule(AbstractRule rule, int depth) {
        if (rule instanceof TerminalRule terminal) {
            terminal(terminal.getName());
        } else {
            element(rule.getAlternatives(), depth + 1);
        }
    }

    private void element(AbstractElement element, int depth) {
        for (int times = times(element, depth); times > 0; times--) {
            once(element, depth);
        }
    }

    private int times(AbstractElement element, int depth) {
        boolean enough = depth > 60 || words > MOST_WORDS;
        if (GrammarUtil.isOptionalCardinality(element)) {
            return enough ? 0 : GrammarUtil.isMultipleCardinality(element) ? random.nextInt(4) : random.nextInt(2);
        }
        return GrammarUtil.isMultipleCardinality(element) && !enough ? 1 + random.nextInt(3) : 1;
    }

    private void once(AbstractElement element, int depth) {
        if (element instanceof Alternatives alternatives) {
            List<AbstractElement> all = alternatives.getElements();
            element(all.get(depth > 60 ? 0 : random.nextInt(all.size())), depth);
        } else if (element instanceof Group group) {
            group.getElements().forEach(each -> element(each, depth));
        } else if (element instanceof UnorderedGroup group) {
            group.getElements().forEach(each -> element(each, depth));
        } else if (element instanceof Assignment assignment) {
            element(assignment.getTerminal(), depth);
        } else if (element instanceof Keyword keyword) {
            word(keyword.getValue());
        } else if (element instanceof RuleCall call) {
            rule(call.getRule(), depth);
        } else if (element instanceof CrossReference) {
            word(NAMES.get(random.nextInt(NAMES.size())));
        }
    }

    private void terminal(String name) {
        word(switch (name) {
            case "INT" -> Integer.toString(random.nextInt(30));
            case "STRING" -> random.nextInt(20) == 0 ? "\"\"" : "\"text\"";
            default -> NAMES.get(random.nextInt(NAMES.size()));
        });
    }

    private void word(String word) {
        words++;
        boolean apart = text.length() > 0 && Character.isLetterOrDigit(text.charAt(text.length() - 1))
                && Character.isLetterOrDigit(word.charAt(0));
        text.append(apart || random.nextInt(3) > 0 && !Character.isDigit(word.charAt(0)) ? " " : "").append(word);
    }
}
