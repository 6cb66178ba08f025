package org.benchwright.language.tests;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;

/**
 * How a part of the grammar is written down for people: words of the language as they are, {@code [ ]} around what may be
 * missing, {@code |}
 * between choices, {@code ...} behind what may come again, names in angle brackets.
 *
 * @param inline rules whose few words stand in place of their name
 */
record GrammarSyntax(Collection<AbstractRule> inline) {

    /** The syntax of a rule, in one line. */
    String of(AbstractRule rule) {
        return text(rule.getAlternatives(), false);
    }

    private String text(AbstractElement element, boolean within) {
        if (isOptional(element)) {
            return "[" + counted(element, bare(element, false)) + "]";
        }
        boolean grouped = element.getCardinality() != null
                && !(element instanceof Assignment || element instanceof RuleCall || element instanceof Keyword);
        String bare = bare(element, within && !grouped);
        return counted(element, grouped ? "(" + bare + ")" : bare);
    }

    private static boolean isOptional(AbstractElement element) {
        return "?".equals(element.getCardinality()) || "*".equals(element.getCardinality());
    }

    private static String counted(AbstractElement element, String text) {
        return "*".equals(element.getCardinality()) || "+".equals(element.getCardinality()) ? text + " ..." : text;
    }

    private String bare(AbstractElement element, boolean within) {
        if (element instanceof Keyword keyword) {
            return literal(keyword.getValue());
        }
        if (element instanceof RuleCall call) {
            return named(call.getRule());
        }
        if (element instanceof Assignment assignment) {
            return text(assignment.getTerminal(), true);
        }
        if (element instanceof CrossReference reference) {
            return place(reference.getType().getClassifier().getName());
        }
        if (element instanceof Alternatives choices) {
            String text = choices.getElements().stream().map(each -> text(each, false)).collect(Collectors.joining(" | "));
            return within ? "(" + text + ")" : text;
        }
        if (element instanceof Group group) {
            return group.getElements().stream().filter(each -> !(each instanceof Action)).map(each -> text(each, true))
                    .collect(Collectors.joining(" "));
        }
        throw new IllegalArgumentException("no such element: " + element);
    }

    /** What the notation uses itself stands in quotes where the language means it. */
    private static String literal(String keyword) {
        return List.of("(", ")", "|", "..").contains(keyword) ? "\"" + keyword + "\"" : keyword;
    }

    private String named(AbstractRule rule) {
        return switch (rule.getName()) {
            case "STRING" -> "\"...\"";
            case "INT", "Count", "Index" -> "<whole-number>";
            case "Number", "UnsignedNumber" -> "<number>";
            case "UnitWord" -> "<unit-of-measure>";
            case "Name", "BareName", "ParameterName" -> "<name>";
            default -> inline.contains(rule) ? (rule.getAlternatives() instanceof Alternatives ? "(" + of(rule) + ")"
                    : of(rule)) : place(rule.getName());
        };
    }

    private static String place(String name) {
        return "<" + words(name).replace(' ', '-') + ">";
    }

    /** The words of a name: {@code whenStopped} is "when stopped". */
    static String words(String name) {
        return name.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
    }
}
