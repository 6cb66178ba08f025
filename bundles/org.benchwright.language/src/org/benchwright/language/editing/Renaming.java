package org.benchwright.language.editing;

import java.util.List;

/** What came of the wish to rename something. */
public sealed interface Renaming {

    /**
     * It can be renamed.
     *
     * @param edits the declaration and all references, in all files of the folder, by place
     */
    record Possible(List<Edit> edits) implements Renaming {
        public Possible {
            edits = List.copyOf(edits);
        }
    }

    /**
     * It can't be renamed so.
     *
     * @param why in words for people
     */
    record Refused(String why) implements Renaming {
    }
}
