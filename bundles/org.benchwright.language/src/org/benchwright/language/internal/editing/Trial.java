package org.benchwright.language.internal.editing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

import org.benchwright.core.Severity;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Place;
import org.benchwright.language.internal.ReadText;
import org.eclipse.xtext.util.CancelIndicator;

import com.google.inject.Injector;

/** Edits made on a copy of a folder, to see what comes of them; one after the other, each on the folder as it is. */
final class Trial {

    private final FolderFiles files;
    private final FolderFiles copy;

    Trial(Injector injector, FolderFiles files) {
        this.files = files;
        copy = new FolderFiles(injector);
        copy.compare(files.approved());
    }

    /** Makes these edits, and no others. */
    Trial with(List<Edit> edits) {
        Map<Path, List<Edit>> byFile = new TreeMap<>();
        edits.forEach(edit -> byFile.computeIfAbsent(edit.place().file(), path -> new ArrayList<>()).add(edit));
        for (Path path : files.paths()) {
            ReadText text = files.text(path).orElseThrow();
            copy.put(byFile.containsKey(path) ? ReadText.of(new SourceText(path, applied(text.text(), byFile.get(path)))) : text);
        }
        return this;
    }

    /** The folder with the edits made. */
    FolderFiles copy() {
        return copy;
    }

    private static String applied(String text, List<Edit> edits) {
        StringBuilder edited = new StringBuilder(text);
        edits.stream().sorted(Comparator.comparing(Edit::place).reversed()).forEach(edit -> {
            Place place = edit.place();
            edited.replace(place.offset(), place.offset() + place.length(), edit.text());
        });
        return edited.toString();
    }

    /** An error that was not there before. Errors are counted by code: their places and words change with the text. */
    Optional<Remark> newError() {
        return files.paths().stream().flatMap(path -> newError(path).stream()).findFirst();
    }

    private Optional<Remark> newError(Path path) {
        List<String> before = new ArrayList<>(errors(files.remarks(path, CancelIndicator.NullImpl)).stream()
                .map(remark -> remark.code().word()).toList());
        return errors(copy.remarks(path, CancelIndicator.NullImpl)).stream().filter(remark -> !before.remove(remark.code().word()))
                .findFirst();
    }

    private static List<Remark> errors(List<Remark> remarks) {
        return remarks.stream().filter(remark -> remark.severity() == Severity.ERROR).toList();
    }

    /** Whether there are fewer remarks of a code on a file than before. */
    boolean removes(Path path, RemarkCode code) {
        return count(copy, path, code) < count(files, path, code);
    }

    private static long count(FolderFiles files, Path path, RemarkCode code) {
        return files.remarks(path, CancelIndicator.NullImpl).stream().filter(remark -> remark.code() == code).count();
    }
}
