package org.benchwright.language.internal.parse;

import java.util.OptionalInt;

import org.antlr.runtime.ANTLRStringStream;
import org.antlr.runtime.CommonToken;
import org.antlr.runtime.Token;
import org.eclipse.xtext.parser.antlr.Lexer;

/**
 * Finds where a text is nested deeper than any procedure, before the parser runs into it: parentheses, alternatives after
 * alternatives, sums. What passes is read with a bounded stack.
 */
public final class NestingScan {

    private static final int MOST_PARENTHESES = 50;
    private static final int MOST_ALTERNATIVES = 200;
    private static final int MOST_TERMS = 500;

    private int parentheses;
    private int alternatives;
    private int terms;

    private NestingScan() {
    }

    /** Where a text becomes too deep; nothing where it does not. */
    public static OptionalInt tooDeep(Lexer lexer, String text) {
        lexer.setCharStream(new ANTLRStringStream(text));
        NestingScan scan = new NestingScan();
        for (Token token = lexer.nextToken(); token.getType() != Token.EOF; token = lexer.nextToken()) {
            if (scan.isTooDeep(token.getText())) {
                return OptionalInt.of(((CommonToken) token).getStartIndex());
            }
        }
        return OptionalInt.empty();
    }

    private boolean isTooDeep(String word) {
        switch (word) {
            case "(" -> parentheses++;
            case ")" -> parentheses--;
            case "or" -> alternatives++;
            case "+", "-" -> terms++;
            case "," -> terms = 0;
            case "{", "}" -> {
                parentheses = 0;
                alternatives = 0;
                terms = 0;
            }
            default -> alternatives = word.startsWith("\"") ? 0 : alternatives;
        }
        return parentheses > MOST_PARENTHESES || alternatives > MOST_ALTERNATIVES || terms > MOST_TERMS;
    }
}
