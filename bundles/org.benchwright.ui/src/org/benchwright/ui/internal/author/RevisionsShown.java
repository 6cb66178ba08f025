package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.FilesSeen;
import org.benchwright.present.RevisionRow;
import org.benchwright.ui.internal.Message;

/**
 * What there is to show of revisions.
 *
 * @param file    the procedure that is open; empty where none is
 * @param lines   the text of that file for each of its families as long as it is a draft, then what was signed, the latest first
 * @param texts   how the text of the file stands, the family that it names first; empty where it has errors
 * @param trouble why something could not be read
 * @param seen    what was read, so that it isn't read again before it may have changed
 */
record RevisionsShown(Optional<Path> file, List<Line> lines, List<RevisionRow> texts, Optional<String> trouble, FilesSeen seen) {

    static final RevisionsShown NOTHING = new RevisionsShown(Optional.empty(), List.of(), List.of(), Optional.empty(), FilesSeen.NEVER);

    RevisionsShown {
        lines = List.copyOf(lines);
        texts = List.copyOf(texts);
    }

    /**
     * A line of the list.
     *
     * @param row    the revision
     * @param asFile true if the text of the file that is open is this one
     */
    record Line(RevisionRow row, boolean asFile) {

        /** How it stands. */
        String words() {
            return asFile ? Message.REVISIONS_AS_FILE.text(row.words()) : row.words();
        }

        /** Whether both are about the same revision, however it stands. */
        boolean isOf(Line other) {
            return row.key().equals(other.row.key()) && row.number() == other.row.number() && row.text().equals(other.row.text());
        }
    }
}
