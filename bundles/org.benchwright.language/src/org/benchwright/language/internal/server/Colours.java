package org.benchwright.language.internal.server;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

import org.benchwright.language.editing.Meaning;
import org.benchwright.language.editing.Style;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SemanticTokenModifiers;
import org.eclipse.lsp4j.SemanticTokenTypes;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensLegend;

/** What passages mean, in the protocol's words. */
final class Colours {

    private static final List<String> TYPES = List.of(SemanticTokenTypes.Keyword, SemanticTokenTypes.Variable, SemanticTokenTypes.String,
            SemanticTokenTypes.Number, SemanticTokenTypes.EnumMember, SemanticTokenTypes.Comment, SemanticTokenTypes.Decorator);
    private static final Map<Meaning, String> WORDS = new EnumMap<>(Map.of(Meaning.KEYWORD, SemanticTokenTypes.Keyword,
            Meaning.DECLARATION, SemanticTokenTypes.Variable, Meaning.REFERENCE, SemanticTokenTypes.Variable,
            Meaning.TEXT, SemanticTokenTypes.String, Meaning.AMOUNT, SemanticTokenTypes.Number, Meaning.INDICATION, SemanticTokenTypes.EnumMember,
            Meaning.VERDICT, SemanticTokenTypes.EnumMember, Meaning.SIGNAL, SemanticTokenTypes.Decorator,
            Meaning.COMMENT, SemanticTokenTypes.Comment));

    private Colours() {
    }

    static SemanticTokensLegend legend() {
        return new SemanticTokensLegend(TYPES, List.of(SemanticTokenModifiers.Declaration));
    }

    /** Five numbers for each passage: lines and characters from the one before, length, type, modifiers. A passage stays in its line. */
    static SemanticTokens of(List<Style> styles, String text, Lines lines) {
        List<Integer> data = new ArrayList<>();
        Position last = new Position(0, 0);
        for (Style style : styles) {
            String word = WORDS.get(style.meaning());
            String passage = text.substring(style.offset(), style.offset() + style.length());
            for (int from = 0; word != null && from < passage.length();) {
                int end = lineEnd(passage, from);
                Position at = lines.at(style.offset() + from);
                if (end > from) {
                    boolean sameLine = at.getLine() == last.getLine();
                    data.addAll(List.of(at.getLine() - last.getLine(), at.getCharacter() - (sameLine ? last.getCharacter() : 0), end - from,
                            TYPES.indexOf(word), style.meaning() == Meaning.DECLARATION ? 1 : 0));
                    last = at;
                }
                from = end + 1;
            }
        }
        return new SemanticTokens(data);
    }

    private static int lineEnd(String passage, int from) {
        int end = from;
        while (end < passage.length() && passage.charAt(end) != '\n' && passage.charAt(end) != '\r') {
            end++;
        }
        return end;
    }
}
