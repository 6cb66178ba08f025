package org.benchwright.language.internal.editing;

import java.util.ArrayList;
import java.util.List;

import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;

/** What can be written for a value that has a fixed set of words: {@code guarded}, {@code guarded both ways}. */
final class Phrases {

    private Phrases() {
    }

    /** All phrases of a rule that consists of words only; none where it also takes names or numbers. */
    static List<String> of(ParserRule rule) {
        boolean wordsOnly = GrammarUtil.containedRuleCalls(rule).isEmpty();
        return wordsOnly ? of(rule.getAlternatives()).stream().filter(phrase -> Character.isLetter(phrase.charAt(0))).toList() : List.of();
    }

    private static List<String> of(AbstractElement element) {
        List<String> phrases = new ArrayList<>();
        if (element instanceof Keyword keyword) {
            phrases.add(keyword.getValue());
        } else if (element instanceof Alternatives alternatives) {
            alternatives.getElements().forEach(each -> phrases.addAll(of(each)));
        } else if (element instanceof Group group) {
            phrases.addAll(inOrder(group.getElements()));
        }
        if (GrammarUtil.isOptionalCardinality(element)) {
            phrases.add("");
        }
        return phrases;
    }

    private static List<String> inOrder(List<AbstractElement> elements) {
        List<String> phrases = List.of("");
        for (AbstractElement element : elements) {
            List<String> longer = new ArrayList<>();
            for (String beginning : phrases) {
                of(element).forEach(word -> longer.add((beginning + " " + word).strip()));
            }
            phrases = longer;
        }
        return phrases;
    }
}
