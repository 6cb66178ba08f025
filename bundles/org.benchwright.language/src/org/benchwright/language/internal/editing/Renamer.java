package org.benchwright.language.internal.editing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

import org.benchwright.core.Severity;
import org.benchwright.language.Remark;
import org.benchwright.language.SourceText;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Place;
import org.benchwright.language.editing.Renaming;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.ReadText;
import org.eclipse.xtext.util.CancelIndicator;

import com.google.inject.Injector;

/**
 * Renames something in all files of a folder. Whether the new name does is not guessed: the edits are made on a copy of the folder, which
 * must have no new error, and in which the same places must lead to the same declaration.
 */
final class Renamer {

    private final Injector injector;
    private final FolderFiles files;
    private final NameIndex names;

    Renamer(Injector injector, FolderFiles files, NameIndex names) {
        this.injector = injector;
        this.files = files;
        this.names = names;
    }

    Renaming rename(ParsedFile file, int offset, String newName) {
        Optional<Place> declaration = names.at(file, offset).flatMap(use -> names.declaration(use.target()));
        if (declaration.isEmpty()) {
            return new Renaming.Refused(EditingText.RENAME_NOTHING.text());
        } else if (!newName.matches("[\\p{L}_][\\p{L}\\p{Digit}_]*")) {
            return new Renaming.Refused(EditingText.RENAME_NO_NAME.text(newName));
        }
        Set<Place> places = new HashSet<>(names.references(names.at(file, offset).get().target()));
        places.add(declaration.get());
        List<Edit> edits = places.stream().sorted().map(place -> new Edit(place, newName)).toList();
        return refusal(edits, declaration.get(), newName).<Renaming>map(Renaming.Refused::new).orElseGet(() -> new Renaming.Possible(edits));
    }

    private Optional<String> refusal(List<Edit> edits, Place declaration, String newName) {
        FolderFiles copy = edited(edits);
        Optional<Remark> error = files.paths().stream().flatMap(path -> newError(path, copy).stream()).findFirst();
        if (error.isPresent()) {
            return Optional.of(EditingText.RENAME_CLASH.text(newName, error.get().words()));
        }
        NameIndex there = new NameIndex(copy);
        List<Place> expected = edits.stream().map(edit -> moved(edit.place(), edits)).toList();
        Place declared = moved(declaration, edits);
        Set<Place> found = new HashSet<>(copy.file(declared.file()).flatMap(file -> there.at(file, declared.offset()))
                .map(use -> there.references(use.target())).orElse(List.of()));
        found.add(declared);
        return found.equals(new HashSet<>(expected)) ? Optional.empty()
                : Optional.of(EditingText.RENAME_OTHER_MEANING.text(newName));
    }

    private FolderFiles edited(List<Edit> edits) {
        Map<Path, List<Edit>> byFile = new TreeMap<>();
        edits.forEach(edit -> byFile.computeIfAbsent(edit.place().file(), path -> new ArrayList<>()).add(edit));
        FolderFiles copy = new FolderFiles(injector);
        for (Path path : files.paths()) {
            ReadText text = files.text(path).orElseThrow();
            copy.put(byFile.containsKey(path) ? ReadText.of(new SourceText(path, applied(text.text(), byFile.get(path)))) : text);
        }
        return copy;
    }

    private static String applied(String text, List<Edit> edits) {
        StringBuilder edited = new StringBuilder(text);
        for (int i = edits.size() - 1; i >= 0; i--) {
            Place place = edits.get(i).place();
            edited.replace(place.offset(), place.offset() + place.length(), edits.get(i).text());
        }
        return edited.toString();
    }

    /** Errors are counted by code: their places and words change with the name. */
    private Optional<Remark> newError(Path path, FolderFiles copy) {
        List<String> before = new ArrayList<>(errors(files.remarks(path, CancelIndicator.NullImpl)).stream()
                .map(remark -> remark.code().word()).toList());
        return errors(copy.remarks(path, CancelIndicator.NullImpl)).stream().filter(remark -> !before.remove(remark.code().word()))
                .findFirst();
    }

    private static List<Remark> errors(List<Remark> remarks) {
        return remarks.stream().filter(remark -> remark.severity() == Severity.ERROR).toList();
    }

    private static Place moved(Place place, List<Edit> edits) {
        int shift = edits.stream().filter(edit -> edit.place().file().equals(place.file()) && edit.place().offset() < place.offset())
                .mapToInt(edit -> edit.text().length() - edit.place().length()).sum();
        return new Place(place.file(), place.offset() + shift, edits.get(0).text().length());
    }
}
