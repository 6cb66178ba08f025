package org.benchwright.present.internal;

import org.benchwright.core.Texts;

/** The texts of a soak's course. */
enum CourseWords {
    LOOK, LOOKED, WATCH, INSIDE, OUTSIDE, SILENT, STATE, BETWEEN, FROM, TO, BY, WHAT, HOW, HOURS, HEIGHT, READ, RANGE, LOWER, UPPER, LIMITS, TITLE,
    BASIS, NONE;

    private static final Texts TEXTS = Texts.beside(CourseWords.class, "course");

    /** The text with its places filled. */
    String text(Object... arguments) {
        return TEXTS.text(name(), arguments);
    }
}
