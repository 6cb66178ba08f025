package org.benchwright.language.internal.parse;

import java.util.ArrayList;
import java.util.List;

import org.antlr.runtime.ANTLRStringStream;
import org.antlr.runtime.CommonToken;
import org.antlr.runtime.Token;
import org.eclipse.xtext.parser.antlr.Lexer;

/**
 * Finds the steps of a text by their words alone, whatever is wrong inside them: behind a brace the word {@code step}, a name, a text, and all
 * up to the brace that closes what the first brace behind them opens. In a text without mistakes these are its steps, all of them but one that
 * follows a declaration.
 */
final class StepSpans {

    /** Guard, time and hazards stand between a step's text and its brace; nobody names more hazards than this has room for. */
    private static final int MOST_HEADER_WORDS = 100;

    private final List<CommonToken> words = new ArrayList<>();

    private StepSpans(Lexer lexer, String text) {
        lexer.setCharStream(new ANTLRStringStream(text));
        for (Token token = lexer.nextToken(); token.getType() != Token.EOF; token = lexer.nextToken()) {
            if (isWord(token.getText())) {
                words.add((CommonToken) token);
            }
        }
    }

    /**
     * Where a step stands.
     *
     * @param offset of its first word
     * @param end    behind its last brace
     */
    record Span(int offset, int end) {
    }

    /** The steps of a whole text, in order; they never overlap. */
    static List<Span> of(Lexer lexer, String text) {
        StepSpans found = new StepSpans(lexer, text);
        List<Span> spans = new ArrayList<>();
        for (int at = 1; at < found.words.size(); at++) {
            int last = found.isBrace(at - 1) ? found.lastWord(at) : -1;
            if (last > at) {
                spans.add(found.span(at, last));
                at = last;
            }
        }
        return spans;
    }

    /** Whether a text is one step from its first word to its last. */
    static boolean isOne(Lexer lexer, String text) {
        StepSpans found = new StepSpans(lexer, text);
        return !found.words.isEmpty() && found.lastWord(0) == found.words.size() - 1;
    }

    private static boolean isWord(String token) {
        return !token.isBlank() && !token.startsWith("//") && !token.startsWith("/*");
    }

    private Span span(int first, int last) {
        return new Span(words.get(first).getStartIndex(), words.get(last).getStopIndex() + 1);
    }

    private boolean isBrace(int at) {
        return is(at, "{") || is(at, "}");
    }

    private boolean is(int at, String word) {
        return at < words.size() && words.get(at).getText().equals(word);
    }

    /** The number of the word that ends the step that begins at a word; -1 if none does. */
    private int lastWord(int first) {
        boolean begins = is(first, "step") && first + 2 < words.size() && isName(first + 1) && isText(first + 2);
        if (!begins) {
            return -1;
        }
        int at = first + 3;
        while (at < words.size() && at < first + MOST_HEADER_WORDS && !isBrace(at)) {
            at++;
        }
        return is(at, "{") ? closing(at) : -1;
    }

    private int closing(int opening) {
        int depth = 0;
        for (int at = opening; at < words.size(); at++) {
            depth += is(at, "{") ? 1 : is(at, "}") ? -1 : 0;
            if (depth == 0) {
                return at;
            }
        }
        return -1;
    }

    private boolean isName(int at) {
        char first = words.get(at).getText().charAt(0);
        return Character.isLetter(first) || first == '_' || first == '\u00b0';
    }

    private boolean isText(int at) {
        return words.get(at).getText().startsWith("\"");
    }
}
