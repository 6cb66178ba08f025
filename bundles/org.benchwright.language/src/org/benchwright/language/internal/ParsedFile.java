package org.benchwright.language.internal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.ProcedureFactory;
import org.benchwright.model.ProcedureFile;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.parser.antlr.Lexer;
import org.eclipse.xtext.parser.antlr.LexerBindings;
import org.eclipse.xtext.resource.IResourceFactory;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.util.LazyStringInputStream;
import org.eclipse.xtext.validation.CheckMode;
import org.eclipse.xtext.validation.IResourceValidator;
import org.eclipse.xtext.validation.Issue;

import com.google.inject.Injector;
import com.google.inject.Key;
import com.google.inject.name.Names;

/** One file among those of its folder, parsed. Used by one thread at a time. */
public final class ParsedFile {

    /** Nobody reads more remarks on one file at once. */
    private static final int MOST_REMARKS = 200;
    private static final Map<String, RemarkCode> CODES = Arrays.stream(RemarkCode.values())
            .collect(Collectors.toMap(RemarkCode::word, Function.identity()));

    private final Injector injector;
    private final XtextResource resource;
    private ReadText text;
    private OptionalInt tooDeep = OptionalInt.empty();
    private boolean parsed;

    /**
     * A file that is not parsed yet; its resource belongs into the folder's resource set first.
     *
     * @param injector the language
     * @param text     its characters
     */
    public ParsedFile(Injector injector, ReadText text) {
        this.injector = injector;
        this.text = text;
        resource = (XtextResource) injector.getInstance(IResourceFactory.class)
                .createResource(URI.createFileURI(text.path().toString()));
    }

    /** The file's characters. */
    public ReadText text() {
        return text;
    }

    /** What was parsed, for the folder's resource set and for looking things up. */
    public XtextResource resource() {
        return resource;
    }

    /** Takes other characters; they are parsed when {@link #parse} is called. */
    public void change(ReadText other) {
        text = other;
        parsed = false;
    }

    /** Makes {@link #parse} begin from scratch, because something that the file refers to is another one now. */
    public void outdate() {
        parsed = false;
    }

    /** Parses the characters, unless that was done already. */
    public void parse() {
        if (parsed) {
            return;
        }
        tooDeep = NestingScan.tooDeep(injector.getInstance(Key.get(Lexer.class, Names.named(LexerBindings.RUNTIME))), text.text());
        String readable = tooDeep.isPresent() ? "" : text.text();
        try {
            if (resource.isLoaded()) {
                resource.reparse(readable);
            } else {
                resource.load(new LazyStringInputStream(readable, "UTF-8"), Map.of(XtextResource.OPTION_ENCODING, "UTF-8"));
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException("a text in memory can be read", impossible);
        }
        parsed = true;
    }

    /** True if the text was too deep to be parsed, so that the model is empty. */
    public boolean isTooDeep() {
        return tooDeep.isPresent();
    }

    /** What the file says, as far as it could be read. */
    public ProcedureFile content() {
        return !resource.getContents().isEmpty() && resource.getContents().get(0) instanceof ProcedureFile file ? file
                : ProcedureFactory.eINSTANCE.createProcedureFile();
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
        return injector.getInstance(IResourceValidator.class).validate(resource, CheckMode.ALL, cancelled).stream()
                .map(issue -> remark(places, issue)).toList();
    }

    private Remark remark(TextPlaces places, Issue issue) {
        int offset = issue.getOffset() == null ? 0 : Math.max(0, issue.getOffset());
        int length = issue.getLength() == null ? 0 : Math.max(0, issue.getLength());
        RemarkCode code = CODES.getOrDefault(String.valueOf(issue.getCode()), RemarkCode.SYNTAX);
        return new Remark(text.path(), places.line(offset), places.column(offset), offset, length, code, issue.getMessage());
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
