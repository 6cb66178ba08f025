package org.benchwright.present.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The texts of a soak's course. */
enum CourseWords {
    LOOK, LOOKED, WATCH, INSIDE, OUTSIDE, SILENT, STATE, BETWEEN, FROM, TO, BY, WHAT, HOW, HOURS, HEIGHT, READ, RANGE, LOWER, UPPER, LIMITS, TITLE,
    BASIS, NONE;

    private static final String BUNDLE = "org.benchwright.present.internal.course";

    /** The text with its places filled. */
    String text(Object... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), CourseWords.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
