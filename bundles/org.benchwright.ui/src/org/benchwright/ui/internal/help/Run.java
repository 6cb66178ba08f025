package org.benchwright.ui.internal.help;

import java.util.Optional;

/**
 * Words that look alike.
 *
 * @param words what they say; blanks, but no line breaks
 * @param face  how they look
 * @param link  where they lead
 */
record Run(String words, Face face, Optional<String> link) {

    /** How words can look within a paragraph. */
    enum Face {
        /** As most do. */
        PLAIN,
        /** Stressed. */
        STRONG,
        /** As typed. */
        CODE
    }

    /** The same look, other words. */
    Run saying(String other) {
        return new Run(other, face, link);
    }

    /** The same words, stressed if they are plain. */
    Run strong() {
        return face == Face.PLAIN ? new Run(words, Face.STRONG, link) : this;
    }
}
