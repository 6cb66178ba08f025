package org.benchwright.language.internal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.benchwright.language.CheckedFile;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.ProcedureFactory;
import org.benchwright.model.ProcedureFile;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.parser.antlr.Lexer;
import org.eclipse.xtext.parser.antlr.LexerBindings;
import org.eclipse.xtext.resource.IResourceFactory;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.util.LazyStringInputStream;
import org.eclipse.xtext.validation.CheckMode;
import org.eclipse.xtext.validation.IResourceValidator;
import org.eclipse.xtext.validation.Issue;

import com.google.inject.Injector;
import com.google.inject.Key;
import com.google.inject.Provider;
import com.google.inject.name.Names;

/** Reads the files of one folder together and checks those that were asked for. */
public final class FolderCheck {

    /** Nobody reads more remarks on one file at once. */
    private static final int MOST_REMARKS = 200;
    private static final Map<String, RemarkCode> CODES = Arrays.stream(RemarkCode.values())
            .collect(Collectors.toMap(RemarkCode::word, Function.identity()));

    private final IResourceFactory factory;
    private final IResourceValidator validator;
    private final XtextResourceSet folder;
    private final Map<ReadText, XtextResource> resources = new LinkedHashMap<>();
    private final Map<Path, Integer> tooDeep = new HashMap<>();
    private final Provider<Lexer> lexers;

    /** Reads all files. */
    public FolderCheck(Injector injector, List<ReadText> asked, List<ReadText> neighbours) {
        factory = injector.getInstance(IResourceFactory.class);
        validator = injector.getInstance(IResourceValidator.class);
        lexers = injector.getProvider(Key.get(Lexer.class, Names.named(LexerBindings.RUNTIME)));
        folder = injector.getInstance(XtextResourceSet.class);
        asked.forEach(text -> resources.put(text, load(text)));
        neighbours.forEach(this::load);
    }

    /** The files that were asked for, checked. */
    public List<CheckedFile> files() {
        return resources.keySet().stream().map(this::check).toList();
    }

    private XtextResource load(ReadText text) {
        XtextResource resource = (XtextResource) factory.createResource(URI.createFileURI(text.path().toString()));
        folder.getResources().add(resource);
        OptionalInt deep = NestingScan.tooDeep(lexers.get(), text.text());
        deep.ifPresent(place -> tooDeep.put(text.path(), place));
        String readable = deep.isPresent() ? "" : text.text();
        try {
            resource.load(new LazyStringInputStream(readable, "UTF-8"), Map.of(XtextResource.OPTION_ENCODING, "UTF-8"));
        } catch (IOException impossible) {
            throw new UncheckedIOException("a text in memory can be read", impossible);
        }
        return resource;
    }

    private CheckedFile check(ReadText text) {
        List<Remark> remarks = new ArrayList<>(text.remarks());
        XtextResource resource = resources.get(text);
        if (remarks.isEmpty()) {
            remarks.addAll(remarks(text, resource));
        }
        List<Remark> sorted = remarks.stream().distinct().sorted().toList();
        return new CheckedFile(text.path(), text.text(), content(resource), shortened(text, sorted));
    }

    private List<Remark> remarks(ReadText text, XtextResource resource) {
        TextPlaces places = new TextPlaces(text.text());
        Integer deep = tooDeep.get(text.path());
        if (deep != null) {
            return List.of(new Remark(text.path(), places.line(deep), places.column(deep), deep, 1, RemarkCode.NESTED_TOO_DEEP,
                    RemarkCode.NESTED_TOO_DEEP.text()));
        }
        return validator.validate(resource, CheckMode.ALL, CancelIndicator.NullImpl).stream()
                .map(issue -> remark(text.path(), places, issue)).toList();
    }

    private static Remark remark(Path path, TextPlaces places, Issue issue) {
        int offset = issue.getOffset() == null ? 0 : Math.max(0, issue.getOffset());
        int length = issue.getLength() == null ? 0 : Math.max(0, issue.getLength());
        RemarkCode code = CODES.getOrDefault(String.valueOf(issue.getCode()), RemarkCode.SYNTAX);
        return new Remark(path, places.line(offset), places.column(offset), offset, length, code, issue.getMessage());
    }

    private static List<Remark> shortened(ReadText text, List<Remark> remarks) {
        if (remarks.size() <= MOST_REMARKS) {
            return remarks;
        }
        List<Remark> shown = new ArrayList<>(remarks.subList(0, MOST_REMARKS));
        Remark last = shown.get(MOST_REMARKS - 1);
        String words = RemarkCode.MORE_REMARKS.text(Integer.toString(remarks.size() - MOST_REMARKS));
        shown.add(new Remark(text.path(), last.line(), last.column(), last.offset(), 0, RemarkCode.MORE_REMARKS, words));
        return shown;
    }

    private static ProcedureFile content(XtextResource resource) {
        return !resource.getContents().isEmpty() && resource.getContents().get(0) instanceof ProcedureFile file ? file
                : ProcedureFactory.eINSTANCE.createProcedureFile();
    }
}
