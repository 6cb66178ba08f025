package org.benchwright.language.internal;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.language.CheckedFile;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.util.CancelIndicator;

import com.google.inject.Injector;

/** Reads the files of one folder together and checks those that were asked for. */
public final class FolderCheck {

    private final Injector injector;
    private final XtextResourceSet folder;
    private final List<ParsedFile> asked = new ArrayList<>();

    /** Reads all files. */
    public FolderCheck(Injector injector, List<ReadText> asked, List<ReadText> neighbours) {
        this.injector = injector;
        folder = injector.getInstance(XtextResourceSet.class);
        asked.forEach(text -> this.asked.add(load(text)));
        neighbours.forEach(this::load);
    }

    private ParsedFile load(ReadText text) {
        ParsedFile file = new ParsedFile(injector, text);
        folder.getResources().add(file.resource());
        file.parse();
        return file;
    }

    /** The files that were asked for, checked. */
    public List<CheckedFile> files() {
        return asked.stream().map(file -> new CheckedFile(file.text().path(), file.text().text(), file.content(),
                file.remarks(CancelIndicator.NullImpl))).toList();
    }
}
