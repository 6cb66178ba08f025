package org.benchwright.language.internal.editing;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.language.Remark;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Place;
import org.benchwright.language.editing.Renaming;
import org.benchwright.language.internal.ParsedFile;

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
        } else if (!files.paths().contains(declaration.get().file())) {
            return new Renaming.Refused(EditingText.RENAME_ELSEWHERE.text(declaration.get().file().toString()));
        }
        Set<Place> places = new HashSet<>(names.references(names.at(file, offset).get().target()));
        places.add(declaration.get());
        List<Edit> edits = places.stream().sorted().map(place -> new Edit(place, newName)).toList();
        return refusal(edits, declaration.get(), newName).<Renaming>map(Renaming.Refused::new).orElseGet(() -> new Renaming.Possible(edits));
    }

    private Optional<String> refusal(List<Edit> edits, Place declaration, String newName) {
        Trial trial = new Trial(injector, files).with(edits);
        FolderFiles copy = trial.copy();
        Optional<Remark> error = trial.newError();
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

    private static Place moved(Place place, List<Edit> edits) {
        int shift = edits.stream().filter(edit -> edit.place().file().equals(place.file()) && edit.place().offset() < place.offset())
                .mapToInt(edit -> edit.text().length() - edit.place().length()).sum();
        return new Place(place.file(), place.offset() + shift, edits.get(0).text().length());
    }
}
