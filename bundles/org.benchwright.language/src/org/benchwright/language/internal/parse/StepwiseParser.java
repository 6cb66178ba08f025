package org.benchwright.language.internal.parse;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.language.internal.parse.StepSpans.Span;
import org.benchwright.language.parser.antlr.ProcedureParser;
import org.benchwright.model.Step;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.IParseResult;

/**
 * Reads a text. Where its only mistakes are inside steps, everything around them is read as if they were sound: a word that somebody has
 * half typed must not make the rest of a procedure disappear.
 */
public class StepwiseParser extends ProcedureParser {

    private static final String SOUND = "step s \"\" { }";

    @Override
    public IParseResult doParse(Reader reader) {
        String text = all(reader);
        IParseResult whole = super.doParse(new StringReader(text));
        return whole.hasSyntaxErrors() ? confined(text).orElse(whole) : whole;
    }

    private static String all(Reader reader) {
        try {
            StringWriter text = new StringWriter();
            reader.transferTo(text);
            return text.toString();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private Optional<IParseResult> confined(String text) {
        List<Span> broken = StepSpans.of(getLexerProvider().get(), text).stream().filter(span -> isBroken(text.substring(span.offset(), span.end())))
                .limit(StepwiseResult.MOST_BROKEN + 1L).toList();
        if (broken.isEmpty() || broken.size() > StepwiseResult.MOST_BROKEN) {
            return Optional.empty();
        }
        StringBuilder sound = new StringBuilder(text);
        for (int i = broken.size() - 1; i >= 0; i--) {
            sound.replace(broken.get(i).offset(), broken.get(i).end(), SOUND);
        }
        IParseResult around = super.doParse(new StringReader(sound.toString()));
        return around.hasSyntaxErrors() ? Optional.empty() : grafted(around, text, broken, sound);
    }

    private boolean isBroken(String step) {
        return parse(getGrammarAccess().getStepRule(), new StringReader(step)).hasSyntaxErrors();
    }

    /** From the last to the first, so that places before are still where they are in both texts. */
    private Optional<IParseResult> grafted(IParseResult around, String text, List<Span> broken, StringBuilder sound) {
        Set<Step> steps = Collections.newSetFromMap(new IdentityHashMap<>());
        int shift = sound.length() - text.length();
        for (int i = broken.size() - 1; i >= 0; i--) {
            Span span = broken.get(i);
            shift -= SOUND.length() - (span.end() - span.offset());
            int at = span.offset() + shift;
            Optional<ICompositeNode> place = StepGraft.around(NodeModelUtils.findLeafNodeAtOffset(around.getRootNode(), at))
                    .filter(node -> node.getOffset() == at);
            Optional<StepGraft> graft = place.flatMap(node -> StepGraft.read(this, node,
                    sound.substring(node.getTotalOffset(), at) + text.substring(span.offset(), span.end())));
            if (graft.isEmpty()) {
                return Optional.empty();
            }
            sound.replace(at, at + SOUND.length(), text.substring(span.offset(), span.end()));
            graft.get().put(sound.toString());
            steps.add(graft.get().step());
        }
        return Optional.of(new StepwiseResult(around.getRootASTElement(), around.getRootNode(), steps));
    }
}
