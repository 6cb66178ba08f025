package org.benchwright.report;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.benchwright.core.SheetTable;

/**
 * Tables as text with commas (RFC 4180): lines end with CR LF, cells with commas, quotes or breaks are quoted. A cell that a spreadsheet
 * would carry out as a formula, because it begins with {@code = + - @} or a control character, gets an apostrophe before it; a number keeps
 * its sign.
 */
public final class Csv {

    private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]+([.][0-9]+)?([eE][+-]?[0-9]+)?");

    private Csv() {
    }

    /** The whole table, its headings first. */
    public static String of(SheetTable table) {
        StringBuilder text = new StringBuilder(line(table.headings()));
        table.rows().forEach(row -> text.append(line(row)));
        return text.toString();
    }

    private static String line(List<String> cells) {
        return cells.stream().map(Csv::cell).collect(Collectors.joining(",")) + "\r\n";
    }

    private static String cell(String text) {
        String safe = dangerous(text) ? "'" + text : text;
        boolean quoted = safe.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
        return quoted ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
    }

    private static boolean dangerous(String text) {
        return !text.isEmpty() && ("=+-@".indexOf(text.charAt(0)) >= 0 || Character.isISOControl(text.charAt(0)))
                && !NUMBER.matcher(text).matches();
    }
}
