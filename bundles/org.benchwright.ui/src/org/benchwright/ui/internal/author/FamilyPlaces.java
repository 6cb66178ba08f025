package org.benchwright.ui.internal.author;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.Cancellation;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.ContentsKind;
import org.benchwright.language.editing.ContentsRow;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.editing.Place;

/** Where the families of a folder stand. Not for the display's thread. */
final class FamilyPlaces {

    private FamilyPlaces() {
    }

    /**
     * Where a family's note on a code stands; where it has none, the place behind its last note, or the family's name. Empty if the folder has no
     * such family.
     */
    static Optional<Place> of(FolderSession session, String family, String code) {
        return families(session, family).map(found -> in(found.analysis(), found.row(), code)).findFirst();
    }

    /** Which codes a family's notes tell as its file stands; none if the folder has no such family. */
    static Set<String> told(FolderSession session, String family) {
        return families(session, family).flatMap(row -> all(row.row().children())).filter(row -> row.kind() == ContentsKind.FAULT)
                .map(ContentsRow::name)
                .collect(Collectors.toSet());
    }

    /**
     * A family in its text.
     *
     * @param analysis the text
     * @param row      the family's row of the contents
     */
    private record Found(Analysis analysis, ContentsRow row) {
    }

    private static Stream<Found> families(FolderSession session, String family) {
        return session.files().stream().flatMap(file -> session.analyse(file, Cancellation.never()).stream())
                .flatMap(analysis -> all(analysis.contents()).filter(row -> row.kind() == ContentsKind.FAMILY && row.name().equals(family))
                        .map(row -> new Found(analysis, row)));
    }

    private static Place in(Analysis analysis, ContentsRow family, String code) {
        List<ContentsRow> notes = all(family.children()).filter(row -> row.kind() == ContentsKind.FAULT).toList();
        Optional<ContentsRow> same = notes.stream().filter(row -> row.name().equals(code)).findFirst();
        ContentsRow at = same.orElse(family);
        boolean behind = same.isEmpty() && !notes.isEmpty();
        return behind ? new Place(analysis.file(), notes.get(notes.size() - 1).end(), 0) : new Place(analysis.file(), at.offset(), at.length());
    }

    private static Stream<ContentsRow> all(List<ContentsRow> rows) {
        return rows.stream().flatMap(row -> Stream.concat(Stream.of(row), all(row.children())));
    }
}
