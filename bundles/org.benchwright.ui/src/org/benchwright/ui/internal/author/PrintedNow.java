package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.PrintedText;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.Compiled;
import org.benchwright.language.editing.Passage;
import org.benchwright.present.AsPrinted;

/**
 * What can be shown of a file's procedures now.
 *
 * @param procedures those that can be shown, in the order of the text
 * @param errors     what has to be mended first; what is shown of its procedures is how they read before
 */
record PrintedNow(List<Procedure> procedures, List<Remark> errors) {

    static final PrintedNow NOTHING = new PrintedNow(List.of(), List.of());

    PrintedNow {
        procedures = List.copyOf(procedures);
        errors = List.copyOf(errors);
    }

    /**
     * A procedure as it is printed.
     *
     * @param name     its name in the language
     * @param text     what is read
     * @param passages where its parts stand
     */
    record Procedure(String name, PrintedText text, Map<String, Passage> passages) {
        Procedure {
            passages = Map.copyOf(passages);
        }
    }

    /** What can be shown next, of procedures as they are compiled now. */
    PrintedNow next(List<Compiled> compiled) {
        List<Procedure> now = new ArrayList<>();
        List<Remark> inTheWay = new ArrayList<>();
        for (Compiled each : compiled) {
            inTheWay.addAll(each.errors());
            each.plan().map(plan -> new Procedure(each.name(), AsPrinted.of(plan), each.passages())).or(() -> known(each.name()))
                    .ifPresent(now::add);
        }
        return new PrintedNow(now, inTheWay.stream().distinct().sorted().toList());
    }

    /** The same procedures, with errors because of which none can be made out any more. */
    PrintedNow unreadable(List<Remark> found) {
        return new PrintedNow(procedures, found);
    }

    private Optional<Procedure> known(String name) {
        return procedures.stream().filter(procedure -> procedure.name().equals(name)).findFirst();
    }

    /** All that is read, one procedure behind the other. */
    List<Part> parts() {
        return procedures.stream().flatMap(procedure -> procedure.text().parts().stream()).toList();
    }

    /** Where what a part is about stands in the text, by its key. */
    Map<String, Passage> passages() {
        Map<String, Passage> all = new HashMap<>();
        procedures.forEach(procedure -> procedure.passages().forEach(all::putIfAbsent));
        return all;
    }

    /** What a place in the text belongs to: the smallest that holds it. */
    Optional<String> at(Path file, int offset) {
        return passages().entrySet().stream().filter(entry -> entry.getValue().holds(file, offset))
                .min(Comparator.comparing(entry -> entry.getValue().whole().length())).map(Map.Entry::getKey);
    }
}
