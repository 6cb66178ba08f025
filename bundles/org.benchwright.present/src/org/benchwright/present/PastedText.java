package org.benchwright.present;

import java.util.regex.Pattern;

/** Text of several lines or cells that is pasted where one line is shown. */
public final class PastedText {

    private static final Pattern BREAK = Pattern.compile("\\r\\n|[\\r\\n]");

    private PastedText() {
    }

    /**
     * The text in one line: a semicolon for each line break, a bar for each tab. Breaks behind the last line are left out; an empty line or cell
     * elsewhere keeps its place.
     *
     * @param pasted as it came; the clipboard of a table gives lines with tabs in them
     */
    public static String inOneLine(String pasted) {
        return BREAK.matcher(pasted.stripTrailing()).replaceAll("; ").replace("\t", " | ");
    }
}
