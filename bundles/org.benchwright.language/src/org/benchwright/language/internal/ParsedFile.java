package org.benchwright.language.internal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.inspect.Inspections;
import org.benchwright.language.internal.inspect.Noted;
import org.benchwright.language.internal.parse.NestingScan;
import org.benchwright.language.internal.parse.PerStep;
import org.benchwright.language.internal.parse.ProcedureResource;
import org.benchwright.language.internal.parse.StepEdits;
import org.benchwright.model.ProcedureFactory;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.Step;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.diagnostics.AbstractDiagnostic;
import org.eclipse.xtext.parser.antlr.Lexer;
import org.eclipse.xtext.parser.antlr.LexerBindings;
import org.eclipse.xtext.resource.IResourceFactory;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.util.LazyStringInputStream;

import com.google.inject.Injector;
import com.google.inject.Key;
import com.google.inject.name.Names;

/** One file among those of its folder, parsed. Used by one thread at a time. */
public final class ParsedFile {

    /** Nobody reads more remarks on one file at once. */
    private static final int MOST_REMARKS = 200;
    private static final Pattern LONE_CR = Pattern.compile("\r(?!\n)");
    private static final Map<String, RemarkCode> CODES = Arrays.stream(RemarkCode.values())
            .collect(Collectors.toMap(RemarkCode::word, Function.identity()));

    private final Injector injector;
    private final ProcedureResource resource;
    private final StepEdits edits;
    private final List<PerStep<?>> perStep = new ArrayList<>();
    private final PerStep<List<Noted>> noted = perStep();
    private ReadText text;
    private String readable;
    private OptionalInt tooDeep = OptionalInt.empty();
    private String parsedText = "";
    private boolean parsed;
    private boolean outdated = true;

    /** What {@link #parse} had to do. */
    public enum Parse {
        /** Nothing has changed. */
        NOTHING,
        /** Some steps have changed; everything else is the same objects as before. */
        STEPS,
        /** Everything is another object than before. */
        WHOLE
    }

    /**
     * A file that is not parsed yet; its resource belongs into the folder's resource set first.
     *
     * @param injector the language
     * @param text     its characters
     */
    public ParsedFile(Injector injector, ReadText text) {
        this.injector = injector;
        take(text);
        resource = (ProcedureResource) injector.getInstance(IResourceFactory.class)
                .createResource(URI.createFileURI(text.path().toString()));
        edits = new StepEdits(injector, resource);
    }

    /** A place for something that is found out about each step; what no longer holds disappears from it. */
    public <T> PerStep<T> perStep() {
        PerStep<T> added = new PerStep<>();
        perStep.add(added);
        return added;
    }

    /** The file's characters. */
    public ReadText text() {
        return text;
    }

    /** The characters as they are parsed, place for place those of the file: a lone CR ends a line, and so a comment, like any other end. */
    public String readable() {
        return readable;
    }

    /** What was parsed, for the folder's resource set and for looking things up. */
    public XtextResource resource() {
        return resource;
    }

    /** Takes other characters; they are parsed when {@link #parse} is called. */
    public void change(ReadText other) {
        take(other);
        parsed = false;
    }

    private void take(ReadText other) {
        text = other;
        readable = LONE_CR.matcher(other.text()).replaceAll("\n");
    }

    /** Makes {@link #parse} begin from scratch, because something that the file refers to is another one now. */
    public void outdate() {
        parsed = false;
        outdated = true;
    }

    /** Parses the characters, unless that was done already. */
    public Parse parse() {
        if (parsed) {
            return Parse.NOTHING;
        }
        Parse done = !outdated && !isTooDeep() && changeSteps() ? Parse.STEPS : parseWhole();
        parsed = true;
        outdated = false;
        parsedText = readable;
        return done;
    }

    private boolean changeSteps() {
        Optional<Set<Step>> changed = edits.change(parsedText, readable);
        changed.ifPresent(steps -> perStep.forEach(known -> known.forget(steps)));
        return changed.isPresent();
    }

    private Parse parseWhole() {
        tooDeep = NestingScan.tooDeep(injector.getInstance(Key.get(Lexer.class, Names.named(LexerBindings.RUNTIME))), readable);
        String parsable = tooDeep.isPresent() ? "" : readable;
        try {
            if (resource.isLoaded()) {
                resource.reparse(parsable);
            } else {
                resource.load(new LazyStringInputStream(parsable, "UTF-8"), Map.of(XtextResource.OPTION_ENCODING, "UTF-8"));
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException("a text in memory can be read", impossible);
        }
        edits.readWhole();
        perStep.forEach(PerStep::forgetAll);
        return Parse.WHOLE;
    }

    /** True if the text was too deep to be parsed, so that the model is empty. */
    public boolean isTooDeep() {
        return tooDeep.isPresent();
    }

    /** What the file says, as far as it could be read. */
    public ProcedureFile content() {
        return Imports.content(resource).orElseGet(ProcedureFactory.eINSTANCE::createProcedureFile);
    }

    /**
     * Inspects the file; the other files of its folder have to be parsed by then.
     *
     * @return the remarks, by place; where cancelled, the framework's own exception tells it
     */
    public List<Remark> remarks(CancelIndicator cancelled) {
        List<Remark> remarks = text.remarks().isEmpty() ? inspected(cancelled) : text.remarks();
        return shortened(remarks.stream().distinct().sorted().toList());
    }

    private List<Remark> inspected(CancelIndicator cancelled) {
        TextPlaces places = new TextPlaces(text.text());
        if (tooDeep.isPresent()) {
            int deep = tooDeep.getAsInt();
            return List.of(new Remark(text.path(), places.line(deep), places.column(deep), deep, 1, RemarkCode.NESTED_TOO_DEEP,
                    RemarkCode.NESTED_TOO_DEEP.text()));
        }
        resource.resolveLazyCrossReferences(cancelled);
        Stream<Remark> wrong = resource.getErrors().stream().map(each -> remark(places, each));
        // Where parts could not be read, what is missing would only be the parser's doing.
        Stream<Remark> odd = resource.getParseResult().hasSyntaxErrors() ? Stream.empty()
                : injector.getInstance(Inspections.class).inspect(content(), noted, cancelled).stream()
                        .map(each -> remark(places, each.offset(), each.length(), each.code(), each.words()));
        return Stream.concat(wrong, odd).toList();
    }

    private Remark remark(TextPlaces places, Resource.Diagnostic wrong) {
        if (!(wrong instanceof AbstractDiagnostic placed)) {
            return remark(places, 0, 0, RemarkCode.SYNTAX, wrong.getMessage());
        }
        RemarkCode code = CODES.getOrDefault(String.valueOf(placed.getCode()), RemarkCode.SYNTAX);
        return remark(places, Math.max(0, placed.getOffset()), Math.max(0, placed.getLength()), code, wrong.getMessage());
    }

    private Remark remark(TextPlaces places, int offset, int length, RemarkCode code, String words) {
        return new Remark(text.path(), places.line(offset), places.column(offset), offset, length, code, words);
    }

    private List<Remark> shortened(List<Remark> remarks) {
        if (remarks.size() <= MOST_REMARKS) {
            return remarks;
        }
        List<Remark> shown = new ArrayList<>(remarks.subList(0, MOST_REMARKS));
        Remark last = shown.get(MOST_REMARKS - 1);
        String words = RemarkCode.MORE_REMARKS.text(Integer.toString(remarks.size() - MOST_REMARKS));
        shown.add(new Remark(text.path(), last.line(), last.column(), last.offset(), 0, RemarkCode.MORE_REMARKS, words));
        return shown;
    }
}
