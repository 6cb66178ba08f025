package org.benchwright.ui.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A page as lines to be read, without its title and its marks.
 *
 * @param markdown the page
 */
record PageLines(String markdown) {

    private static final Pattern PICTURE = Pattern.compile("^!\\[.*\\]\\([^)]*\\)$");
    private static final Pattern LINK = Pattern.compile("\\[([^\\]]*)\\]\\([^)]*\\)");
    private static final Pattern RULE = Pattern.compile("^\\|( --- \\|)+$");

    /**
     * A line.
     *
     * @param words what it says
     * @param heads whether it is a heading
     */
    record Line(String words, boolean heads) {
    }

    /** Lines that belong together are one, so that the view breaks them; examples and tables stand apart by an indentation. */
    List<Line> lines() {
        List<Line> lines = new ArrayList<>();
        StringBuilder paragraph = new StringBuilder();
        boolean example = false;
        for (String line : markdown.lines().toList()) {
            boolean fence = line.startsWith("```");
            boolean alone = fence || example || line.isBlank() || line.startsWith("#") || line.startsWith("|") || line.startsWith("    ");
            if (alone || line.startsWith("- ")) {
                flush(paragraph, lines);
            }
            if (fence) {
                example = !example;
            } else if (example || line.startsWith("    ")) {
                lines.add(new Line(example ? "    " + line : line, false));
            } else if (line.startsWith("## ") || line.startsWith("### ")) {
                lines.add(new Line(plain(line.replaceFirst("^#+ ", "")), true));
            } else if (line.startsWith("|")) {
                row(line, lines);
            } else if (line.isBlank()) {
                blank(lines);
            } else if (!line.startsWith("# ") && !PICTURE.matcher(line).matches()) {
                paragraph.append(paragraph.isEmpty() ? "" : " ").append(plain(line));
            }
        }
        flush(paragraph, lines);
        return lines;
    }

    private static void row(String line, List<Line> lines) {
        if (!RULE.matcher(line).matches()) {
            String[] cells = line.substring(1).replaceFirst("\\|\\s*$", "").split("(?<!\\\\)\\|");
            List<String> words = new ArrayList<>();
            for (String cell : cells) {
                words.add(plain(cell.strip().replace("\\|", "|")));
            }
            lines.add(new Line("    " + String.join(":  ", words), false));
        }
    }

    private static void blank(List<Line> lines) {
        if (!lines.isEmpty() && !lines.get(lines.size() - 1).words().isEmpty()) {
            lines.add(new Line("", false));
        }
    }

    private static void flush(StringBuilder paragraph, List<Line> lines) {
        if (!paragraph.isEmpty()) {
            lines.add(new Line(paragraph.toString(), false));
            paragraph.setLength(0);
        }
    }

    private static String plain(String line) {
        return LINK.matcher(line).replaceAll("$1").replace("`", "").replace("**", "");
    }
}
