package org.benchwright.report.internal;

import java.util.List;

/**
 * Rows as CSV (RFC 4180) that a spreadsheet shows and does not carry out: a cell that could be taken for a formula gets an apostrophe before
 * it, and every cell is quoted.
 *
 * @param rows the rows, titles first
 */
public record Csv(List<List<String>> rows) {

    private static final String FORMULA = "=+-@\t\r\n|%";

    public Csv {
        rows = List.copyOf(rows);
    }

    /** The file's text. */
    public String text() {
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            text.append(String.join(",", row.stream().map(Csv::cell).toList())).append("\r\n");
        }
        return text.toString();
    }

    private static String cell(String value) {
        // Spreadsheets also look behind blanks, and take signs of full width for the plain ones.
        String begin = value.strip();
        boolean formula = !begin.isEmpty() && (FORMULA.indexOf(begin.charAt(0)) >= 0 || "\uFF1D\uFF0B\uFF0D\uFF20".indexOf(begin.charAt(0)) >= 0)
                || !value.isEmpty() && FORMULA.indexOf(value.charAt(0)) >= 0;
        return "\"" + (formula ? "'" : "") + value.replace("\"", "\"\"") + "\"";
    }
}
