package org.benchwright.language.internal.editing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.language.internal.Imports;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.ReadText;
import org.eclipse.emf.common.util.EList;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.resource.XtextResourceSet;

import com.google.inject.Injector;

/** The files of the folders from which a folder imports, as they are on the disk, in the order in which a first reading finds them. */
final class ImportedFiles {

    private final Injector injector;
    private final XtextResourceSet all;
    private final Map<Path, DiskFolder> folders = new HashMap<>();
    private final Map<Path, ParsedFile> files = new HashMap<>();

    /** @param all where files see each other; those of the folder itself stand first in it */
    ImportedFiles(Injector injector, XtextResourceSet all) {
        this.injector = injector;
        this.all = all;
    }

    Optional<ParsedFile> file(Path path) {
        return Optional.ofNullable(files.get(path));
    }

    Optional<ParsedFile> file(Resource resource) {
        return files.values().stream().filter(file -> file.resource() == resource).findFirst();
    }

    /**
     * Looks at the disk again.
     *
     * @param own the files of the folder itself, parsed
     * @return true if anything was different
     */
    boolean look(Collection<ParsedFile> own) {
        List<ParsedFile> found = new ArrayList<>(own);
        Set<Path> seen = new HashSet<>();
        own.forEach(file -> seen.add(file.text().folder()));
        boolean different = false;
        for (int i = 0; i < found.size(); i++) {
            for (URI target : Imports.targets(found.get(i).resource())) {
                Path there = Path.of(Imports.folder(target).toFileString());
                if (seen.add(there)) {
                    different |= read(there, found);
                }
            }
        }
        return drop(found) | order(found, own.size()) | different;
    }

    private boolean read(Path there, List<ParsedFile> found) {
        DiskFolder.Look look = folders.computeIfAbsent(there, DiskFolder::new).look();
        boolean different = false;
        for (ReadText text : look.changed()) {
            different |= put(text);
        }
        look.present().forEach(path -> found.add(files.get(path)));
        return different;
    }

    private boolean put(ReadText text) {
        ParsedFile known = files.get(text.path());
        if (known == null) {
            known = new ParsedFile(injector, text);
            all.getResources().add(known.resource());
            files.put(text.path(), known);
        } else if (known.text().equals(text)) {
            return false;
        } else {
            known.change(text);
        }
        known.parse();
        return true;
    }

    /** Files that are gone, or from whose folder nothing is imported any more. */
    private boolean drop(List<ParsedFile> found) {
        Set<Path> still = new HashSet<>();
        found.forEach(file -> still.add(file.text().path()));
        List<ParsedFile> gone = files.values().stream().filter(file -> !still.contains(file.text().path())).toList();
        for (ParsedFile file : gone) {
            all.getResources().remove(file.resource());
            files.remove(file.text().path());
        }
        folders.keySet().removeIf(folder -> files.keySet().stream().noneMatch(path -> folder.equals(path.getParent())));
        return !gone.isEmpty();
    }

    /** What several files declare means the first of them. */
    private boolean order(List<ParsedFile> found, int own) {
        EList<Resource> resources = all.getResources();
        boolean moved = false;
        for (int i = own; i < found.size(); i++) {
            if (resources.get(i) != found.get(i).resource()) {
                resources.move(i, found.get(i).resource());
                moved = true;
            }
        }
        return moved;
    }
}
