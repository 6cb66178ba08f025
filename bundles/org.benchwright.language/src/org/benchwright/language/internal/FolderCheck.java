package org.benchwright.language.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.CheckedFile;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.util.CancelIndicator;

import com.google.inject.Injector;

/** Reads the files of one folder together and checks those that were asked for. */
public final class FolderCheck {

    private final Injector injector;
    private final XtextResourceSet folder;
    private final List<ParsedFile> asked = new ArrayList<>();
    private final Map<Path, ReadText> texts = new HashMap<>();

    /**
     * Reads all files.
     *
     * @param injector   the language
     * @param asked      those to check
     * @param neighbours those that they see beside them
     * @param others     finds what is beside a file that is imported
     */
    public FolderCheck(Injector injector, List<ReadText> asked, List<ReadText> neighbours, Function<Path, List<ReadText>> others) {
        this.injector = injector;
        folder = injector.getInstance(XtextResourceSet.class);
        asked.forEach(text -> this.asked.add(load(text)));
        neighbours.forEach(this::load);
        imported(others);
    }

    private ParsedFile load(ReadText text) {
        texts.put(text.path(), text);
        ParsedFile file = new ParsedFile(injector, text);
        folder.getResources().add(file.resource());
        file.parse();
        return file;
    }

    /** Files that are imported, with the files beside them, and what those import. */
    private void imported(Function<Path, List<ReadText>> others) {
        Set<URI> folders = new HashSet<>();
        folder.getResources().forEach(file -> folders.add(Imports.folder(file.getURI())));
        for (int i = 0; i < folder.getResources().size(); i++) {
            for (URI target : Imports.targets(folder.getResources().get(i))) {
                if (folders.add(Imports.folder(target))) {
                    others.apply(Path.of(Imports.folder(target).toFileString())).forEach(this::load);
                }
            }
        }
    }

    /** The files that were asked for, checked, and compared with what was approved. */
    public List<CheckedFile> files(ApprovedRevisions approved) {
        ApprovalCheck approvals = new ApprovalCheck(approved, path -> Optional.ofNullable(texts.get(path)));
        return asked.stream().map(file -> new CheckedFile(file.text().path(), file.text().text(), file.content(),
                approvals.with(file.remarks(CancelIndicator.NullImpl), file))).toList();
    }
}
