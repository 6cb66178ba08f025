package org.benchwright.language.internal.text;

import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.antlr.runtime.MismatchedTokenException;
import org.antlr.runtime.RecognitionException;
import org.antlr.runtime.Token;
import org.benchwright.language.RemarkCode;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.SyntaxErrorMessage;
import org.eclipse.xtext.parser.antlr.ISyntaxErrorMessageProvider;

/** Says what does not fit and what was expected instead, in the reader's words and not the parser's. */
public class PlainSyntaxMessages implements ISyntaxErrorMessageProvider {

    private static final Map<String, SyntaxText> TERMINALS = Map.of("RULE_ID", SyntaxText.A_NAME, "RULE_INT", SyntaxText.A_NUMBER,
            "RULE_STRING", SyntaxText.A_TEXT, "EOF", SyntaxText.THE_END, "<EOF>", SyntaxText.THE_END);

    private static final Map<String, SyntaxText> RULES = Map.ofEntries(
            Map.entry("ProcedureFile", SyntaxText.A_FILE), Map.entry("Family", SyntaxText.A_FAMILY),
            Map.entry("Fault", SyntaxText.A_FAULT),
            Map.entry("Procedure", SyntaxText.A_PROCEDURE), Map.entry("Stage", SyntaxText.A_STEP_LIST),
            Map.entry("MakeSafe", SyntaxText.A_STEP_LIST), Map.entry("Soak", SyntaxText.A_SOAK),
            Map.entry("Step", SyntaxText.A_STATEMENT), Map.entry("Statement", SyntaxText.A_STATEMENT),
            Map.entry("Name", SyntaxText.A_NAME), Map.entry("ParameterName", SyntaxText.A_NAME), Map.entry("BareName", SyntaxText.A_NAME),
            Map.entry("UnitWord", SyntaxText.A_UNIT), Map.entry("LampColour", SyntaxText.A_COLOUR),
            Map.entry("LampState", SyntaxText.A_LAMP_STATE), Map.entry("Outcome", SyntaxText.AN_OUTCOME),
            Map.entry("SoakOutcome", SyntaxText.A_SOAK_OUTCOME), Map.entry("Amount", SyntaxText.AN_AMOUNT),
            Map.entry("Number", SyntaxText.A_NUMBER), Map.entry("Count", SyntaxText.A_WHOLE_NUMBER),
            Map.entry("Index", SyntaxText.A_WHOLE_NUMBER), Map.entry("Limits", SyntaxText.LIMITS),
            Map.entry("Range", SyntaxText.LIMITS), Map.entry("Shown", SyntaxText.AN_INDICATION),
            Map.entry("Expected", SyntaxText.AN_INDICATION), Map.entry("Expectation", SyntaxText.AN_INDICATION),
            Map.entry("Expression", SyntaxText.AN_EXPRESSION), Map.entry("Term", SyntaxText.AN_EXPRESSION),
            Map.entry("SignalWord", SyntaxText.A_SIGNAL_WORD), Map.entry("Verdict", SyntaxText.A_VERDICT));

    private static final Set<SyntaxText> LISTS = EnumSet.of(SyntaxText.A_FILE, SyntaxText.A_FAMILY, SyntaxText.A_PROCEDURE,
            SyntaxText.A_STEP_LIST, SyntaxText.A_SOAK, SyntaxText.A_STATEMENT, SyntaxText.A_FAULT);

    @Override
    public SyntaxErrorMessage getSyntaxErrorMessage(IParserErrorContext context) {
        return new SyntaxErrorMessage(words(context), RemarkCode.SYNTAX.word());
    }

    @Override
    public SyntaxErrorMessage getSyntaxErrorMessage(IValueConverterErrorContext context) {
        return new SyntaxErrorMessage(context.getDefaultMessage(), RemarkCode.SYNTAX.word());
    }

    private static String words(IParserErrorContext context) {
        RecognitionException problem = context.getRecognitionException();
        Token found = problem == null ? null : problem.token;
        if (found == null) {
            return unclosed(context).text();
        }
        Optional<String> expected = expected(context, problem);
        if (found.getType() == Token.EOF) {
            return expected.map(SyntaxText.ENDS_TOO_EARLY_EXPECTED::text).orElseGet(SyntaxText.ENDS_TOO_EARLY::text);
        }
        String text = found.getText() == null ? "" : found.getText();
        if (text.startsWith("\"") && !text.endsWith("\"") || text.equals("\"")) {
            return SyntaxText.TEXT_NOT_CLOSED.text();
        }
        String shown = shown(text);
        return expected.map(what -> SyntaxText.DOES_NOT_FIT_EXPECTED.text(shown, what))
                .orElseGet(() -> SyntaxText.DOES_NOT_FIT.text(shown));
    }

    /** The lexer itself only stumbles where a comment or a text has no end; it names the character that it waited for. */
    private static SyntaxText unclosed(IParserErrorContext context) {
        return String.valueOf(context.getDefaultMessage()).contains("'*'") ? SyntaxText.COMMENT_NOT_CLOSED : SyntaxText.TEXT_NOT_CLOSED;
    }

    private static Optional<String> expected(IParserErrorContext context, RecognitionException problem) {
        Optional<String> byToken = problem instanceof MismatchedTokenException mismatch ? token(context, mismatch.expecting)
                : Optional.empty();
        Optional<SyntaxText> byRule = rule(context.getCurrentNode());
        boolean endsList = byToken.filter(what -> what.equals("'}'") || what.equals(SyntaxText.THE_END.text())).isPresent();
        if (endsList && byRule.filter(LISTS::contains).isPresent()) {
            // The parser only misses the end of the list; the reader may have meant another item of it.
            return byRule.map(SyntaxText::text);
        }
        return byToken.or(() -> byRule.map(SyntaxText::text));
    }

    private static Optional<String> token(IParserErrorContext context, int type) {
        String[] names = context.getTokenNames();
        if (type == Token.EOF) {
            return Optional.of(SyntaxText.THE_END.text());
        }
        if (type < 0 || type >= names.length) {
            return Optional.empty();
        }
        String name = names[type];
        return name.startsWith("'") ? Optional.of(name) : Optional.ofNullable(TERMINALS.get(name)).map(SyntaxText::text);
    }

    private static Optional<SyntaxText> rule(INode node) {
        for (INode each = node; each != null; each = each.getParent()) {
            SyntaxText phrase = RULES.get(ruleName(each.getGrammarElement()));
            if (phrase != null) {
                return Optional.of(phrase);
            }
        }
        return Optional.empty();
    }

    private static String ruleName(EObject grammarElement) {
        if (grammarElement instanceof RuleCall call) {
            return call.getRule().getName();
        }
        AbstractRule rule = grammarElement == null ? null : GrammarUtil.containingRule(grammarElement);
        return rule == null ? "" : rule.getName();
    }

    private static String shown(String text) {
        String oneLine = text.replaceAll("[\\p{Cntrl}]", "?");
        return oneLine.length() > 40 ? oneLine.substring(0, 37) + "..." : oneLine;
    }
}
