package org.benchwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.benchwright.core.SheetTable;

/**
 * Rows as text with commas (RFC 4180) that a spreadsheet shows and does not carry out: a cell that it could take for a formula gets an
 * apostrophe before it. A plain number is none and keeps its sign. Lines end with CR LF; every cell is quoted.
 */
public final class Csv {

    private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]+([.][0-9]+)?([eE][+-]?[0-9]+)?");
    /** Signs that begin a formula, the ones of full width too, since spreadsheets take them for the plain ones. */
    private static final String FORMULA = "=+-@|%\uFF1D\uFF0B\uFF0D\uFF20";

    private Csv() {
    }

    /** The whole table, its headings first. */
    public static String of(SheetTable table) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(table.headings());
        rows.addAll(table.rows());
        return of(rows);
    }

    /** The rows, in their order. */
    public static String of(List<List<String>> rows) {
        return rows.stream().map(Csv::line).collect(Collectors.joining());
    }

    private static String line(List<String> cells) {
        return cells.stream().map(Csv::cell).collect(Collectors.joining(",")) + "\r\n";
    }

    private static String cell(String text) {
        return '"' + (dangerous(text) ? "'" : "") + text.replace("\"", "\"\"") + '"';
    }

    /** Spreadsheets also look behind blanks. */
    private static boolean dangerous(String text) {
        String begin = text.strip();
        return !NUMBER.matcher(text).matches() && (!begin.isEmpty() && FORMULA.indexOf(begin.charAt(0)) >= 0
                || !text.isEmpty() && Character.isISOControl(text.charAt(0)));
    }
}
