package org.benchwright.ui.internal.author;

import org.benchwright.language.editing.Analysis;

/** Told what the language found out, on whatever thread found it. */
interface AuthorListener {

    /** A text that is open was looked at. */
    default void analysed(Analysis analysis) {
        // Some only follow the folder.
    }

    /** The whole folder was looked at, or will be. */
    default void checked(FolderState state) {
        // Some only follow a text.
    }

    /** Something was signed about a revision, by whomever. */
    default void revised() {
        // Some only follow texts.
    }
}
