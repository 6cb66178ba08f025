package org.benchwright.language;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

import org.benchwright.core.Severity;

/**
 * Everything that the language can remark on, each with a word that never changes: scripts, quick fixes and approvals
 * refer to it.
 *
 * <p>The text is looked up when it is shown, never when the class is loaded, so that the first locale does not win.
 */
public enum RemarkCode {
    /** The file could not be read. */
    CANNOT_READ(Severity.ERROR),
    /** The file is larger than any procedure. */
    FILE_TOO_LARGE(Severity.ERROR),
    /** The file is not text in UTF-8. */
    NOT_UTF_8(Severity.ERROR),
    /** Something does not fit the grammar. */
    SYNTAX(Severity.ERROR),
    /** Parentheses or outcomes within each other without end. */
    NESTED_TOO_DEEP(Severity.ERROR),
    /** More remarks than anybody reads at once. */
    MORE_REMARKS(Severity.INFO),

    /** No family of that name in the folder. */
    UNKNOWN_FAMILY(Severity.ERROR),
    /** No procedure of that name in the folder. */
    UNKNOWN_PROCEDURE(Severity.ERROR),
    /** No lamp of that name in the family. */
    UNKNOWN_LAMP(Severity.ERROR),
    /** No display of that name in the family. */
    UNKNOWN_DISPLAY(Severity.ERROR),
    /** No mode of that name in the family. */
    UNKNOWN_MODE(Severity.ERROR),
    /** Nothing of that name is kept by the family. */
    UNKNOWN_PROTECTED_ITEM(Severity.ERROR),
    /** Nothing of that name can be loaded into the family. */
    UNKNOWN_LOAD_ITEM(Severity.ERROR),
    /** No fault note of that name in the family. */
    UNKNOWN_FAULT(Severity.ERROR),
    /** No hazard of that name in the procedure. */
    UNKNOWN_HAZARD(Severity.ERROR),
    /** No instrument of that name in the procedure. */
    UNKNOWN_INSTRUMENT(Severity.ERROR),
    /** No mark of that name in the procedure. */
    UNKNOWN_MARK(Severity.ERROR),
    /** No step, stage or soak of that name that one could go to. */
    UNKNOWN_STEP_OR_STAGE(Severity.ERROR),
    /** No value of that name in the grid. */
    UNKNOWN_VALUE(Severity.ERROR),
    /** Nothing of that name. */
    UNKNOWN_NAME(Severity.ERROR),
    /** The same name twice in one list. */
    LISTED_TWICE(Severity.ERROR);

    private static final String BUNDLE = "org.benchwright.language.internal.messages";

    private final Severity severity;

    RemarkCode(Severity severity) {
        this.severity = severity;
    }

    /**
     * How much it matters.
     *
     * @return the severity of every remark with this code
     */
    public Severity severity() {
        return severity;
    }

    /**
     * The word that stands for it in lists and files.
     *
     * @return for example {@code unknown-lamp}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * Its text with the arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     * @return the text in the language of the machine, or in English where there is none
     */
    public String text(String... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), RemarkCode.class.getClassLoader())
                .getString(word());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
