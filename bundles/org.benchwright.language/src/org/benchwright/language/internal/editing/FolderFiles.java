package org.benchwright.language.internal.editing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.internal.ApprovalCheck;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.ParsedFile.Parse;
import org.benchwright.language.internal.ReadText;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.util.CancelIndicator;

import com.google.inject.Injector;

/**
 * The files of a folder, parsed and linked with each other. After a change only that file is parsed again, and those that refer to it,
 * by however many steps; all answers are the same as those of a folder that is read from scratch. Used by one thread at a time.
 */
final class FolderFiles {

    private final Injector injector;
    private final XtextResourceSet folder;
    private final TreeMap<Path, ParsedFile> files = new TreeMap<>();
    private final Map<Resource, ParsedFile> byResource = new IdentityHashMap<>();
    private final Map<Path, FileNames> names = new HashMap<>();
    private final Map<Path, List<Remark>> remarks = new HashMap<>();
    /** Those, and what comparing with what was approved adds to them. */
    private final Map<Path, List<Remark>> compared = new HashMap<>();
    private final Map<Path, Analysis> analyses = new HashMap<>();
    private final Map<ParsedFile, FileView> views = new IdentityHashMap<>();
    private final Set<Path> changed = new HashSet<>();
    private boolean importsDue;
    private final ImportedFiles imported;
    private ApprovedRevisions approved = ApprovedRevisions.none();

    FolderFiles(Injector injector) {
        this.injector = injector;
        folder = injector.getInstance(XtextResourceSet.class);
        imported = new ImportedFiles(injector, folder);
    }

    Collection<Path> paths() {
        return List.copyOf(files.keySet());
    }

    Optional<ReadText> text(Path path) {
        return Optional.ofNullable(files.get(path)).map(ParsedFile::text);
    }

    /** Puts a text in place of what the file held, or adds the file. */
    void put(ReadText text) {
        ParsedFile known = files.get(text.path());
        if (known == null) {
            ParsedFile added = new ParsedFile(injector, text);
            folder.getResources().add(files.headMap(text.path()).size(), added.resource());
            byResource.put(added.resource(), added);
            files.put(text.path(), added);
        } else if (known.text().equals(text)) {
            return;
        } else {
            known.change(text);
        }
        changed.add(text.path());
    }

    /** Takes a file out of the folder. */
    void remove(Path path) {
        ParsedFile gone = files.remove(path);
        if (gone != null) {
            folder.getResources().remove(gone.resource());
            byResource.remove(gone.resource());
            views.remove(gone);
            changed.add(path);
        }
    }

    /** A file of the folder, all files being parsed. */
    Optional<ParsedFile> file(Path path) {
        settle();
        return Optional.ofNullable(files.get(path));
    }

    /** All files, parsed. */
    Collection<ParsedFile> all() {
        settle();
        return files.values();
    }

    /** The file that holds a piece of a tree. */
    Optional<ParsedFile> holding(EObject piece) {
        return Optional.ofNullable(byResource.get(piece.eResource())).or(() -> imported.file(piece.eResource()));
    }

    /** From now on procedures are compared with what was approved. */
    void compare(ApprovedRevisions with) {
        if (approved != with) {
            approved = with;
            compared.clear();
            analyses.clear();
        }
    }

    /** What procedures are compared with. */
    ApprovedRevisions approved() {
        return approved;
    }

    /** The remarks on a file of the folder, or on one that is imported; inspects it if need be. */
    List<Remark> remarks(Path path, CancelIndicator cancelled) {
        settle();
        List<Remark> all = compared.get(path);
        if (all == null) {
            ParsedFile file = any(path).orElse(null);
            List<Remark> known = remarks.get(path);
            if (known == null) {
                known = file == null ? List.of() : file.remarks(cancelled);
                remarks.put(path, known);
            }
            all = file == null ? known : new ApprovalCheck(approved, this::anyText).with(known, file);
            compared.put(path, all);
        }
        return all;
    }

    private Optional<ReadText> anyText(Path path) {
        return any(path).map(ParsedFile::text);
    }

    private Optional<ParsedFile> any(Path path) {
        return Optional.ofNullable(files.get(path)).or(() -> imported.file(path));
    }

    /** All that is shown of a file; put together if what is known no longer holds. */
    Optional<Analysis> analysis(Path path, Function<ParsedFile, Analysis> look) {
        settle();
        Analysis known = analyses.get(path);
        if (known == null && files.containsKey(path)) {
            known = look.apply(files.get(path));
            analyses.put(path, known);
        }
        return Optional.ofNullable(known);
    }

    /** What is shown of a file. */
    FileView view(ParsedFile file) {
        return views.computeIfAbsent(file, FileView::new);
    }

    private void forget(Path path) {
        remarks.remove(path);
        compared.remove(path);
        analyses.remove(path);
    }

    /** Makes the folders of imported files be looked at again before the next answer. */
    void lookAtImports() {
        importsDue = true;
    }

    private void settle() {
        if (changed.isEmpty() && !importsDue) {
            return;
        }
        Set<String> touched = new HashSet<>();
        Set<String> replaced = new HashSet<>();
        Set<Path> afresh = new HashSet<>();
        for (Path path : changed) {
            Optional<FileNames> before = Optional.ofNullable(names.remove(path));
            forget(path);
            ParsedFile file = files.get(path);
            boolean onlySteps = file != null && file.parse() == Parse.STEPS;
            Set<String> offered = onlySteps ? touched : replaced;
            if (!onlySteps) {
                afresh.add(path);
            }
            before.ifPresent(known -> offered.addAll(known.offered()));
            if (file != null) {
                names.put(path, FileNames.of(file.content()));
                offered.addAll(names.get(path).offered());
            }
        }
        // Who refers to something of which only steps have changed still refers to the same thing, but may have to be told other things.
        affected(touched, afresh).forEach(this::forget);
        affected(replaced, afresh).forEach(path -> {
            forget(path);
            files.get(path).outdate();
        });
        files.values().forEach(ParsedFile::parse);
        changed.clear();
        boolean look = importsDue || !afresh.isEmpty();
        importsDue = false;
        if (look && imported.look(files.values())) {
            // What an imported file says may matter to any file of the folder.
            remarks.clear();
            compared.clear();
            analyses.clear();
            files.values().forEach(ParsedFile::outdate);
            files.values().forEach(ParsedFile::parse);
        }
    }

    /** The files that refer to one of the names or declare it too, and those that refer to them, but not those parsed afresh. */
    private Set<Path> affected(Set<String> touched, Set<Path> afresh) {
        Set<Path> found = new HashSet<>();
        List<String> open = new ArrayList<>(touched);
        while (!open.isEmpty()) {
            Set<String> reached = new HashSet<>(open);
            open.clear();
            names.forEach((path, of) -> {
                if (!afresh.contains(path) && !found.contains(path) && of.concerns(reached)) {
                    found.add(path);
                    open.addAll(of.offered());
                }
            });
        }
        return found;
    }
}
