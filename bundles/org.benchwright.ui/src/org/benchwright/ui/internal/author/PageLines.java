package org.benchwright.ui.internal.author;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A remark's page as lines to be read, without its title and its marks.
 *
 * @param markdown the page
 */
record PageLines(String markdown) {

    private static final Pattern LINK = Pattern.compile("\\[([^\\]]*)\\]\\([^)]*\\)");

    /** Examples stand apart by an indentation; a link is only its words. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        boolean example = false;
        for (String line : markdown.lines().toList()) {
            if (line.startsWith("```")) {
                example = !example;
            } else if (example) {
                lines.add("    " + line);
            } else if (!line.startsWith("# ") && !(line.isEmpty() && lines.isEmpty())) {
                lines.add(LINK.matcher(line).replaceAll("$1").replace("`", ""));
            }
        }
        return lines;
    }
}
