package org.benchwright.report;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Plot;
import org.benchwright.core.SheetTable;
import org.benchwright.report.internal.Html;

/**
 * A page for a browser or a printer in one file: sentences, tables and charts. It loads nothing, runs nothing and is readable on paper and
 * in a browser's dark setting.
 *
 * @param title    of the page
 * @param basis    what it rests on
 * @param sections its parts
 */
public record Page(String title, List<String> basis, List<Section> sections) {

    private static final String STYLE = """
            body { font: 16px/1.45 sans-serif; max-width: 60em; margin: 2em auto; padding: 0 1em; color: #101417; background: #fff }
            table { border-collapse: collapse; margin: 1em 0 } th, td { text-align: left; padding: .2em .8em; border-bottom: 1px solid #b2bac0 }
            figure { margin: 1em 0 } svg { max-width: 100%; height: auto } section { break-inside: avoid }
            @media screen and (prefers-color-scheme: dark) { body { color: #f0f3f5; background: #1d2226 } figure { background: #fff; padding: .5em } }
            """;

    /** Freezes the lists. */
    public Page {
        basis = List.copyOf(basis);
        sections = List.copyOf(sections);
    }

    /**
     * A part of a page.
     *
     * @param title     its heading
     * @param sentences what it says
     * @param plot      what it shows, if anything can be shown
     * @param tables    its numbers
     */
    public record Section(String title, List<String> sentences, Optional<Plot> plot, List<SheetTable> tables) {

        /** Freezes the lists. */
        public Section {
            sentences = List.copyOf(sentences);
            tables = List.copyOf(tables);
        }
    }

    /** The text of the HTML file. */
    public String html() {
        StringBuilder html = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"UTF-8\">").append(Html.NOTHING_ELSE);
        html.append("<title>").append(Html.escaped(title)).append("</title><style>\n").append(STYLE).append("</style></head><body>\n<h1>")
                .append(Html.escaped(title)).append("</h1>\n");
        basis.forEach(sentence -> html.append("<p>").append(Html.escaped(sentence)).append("</p>\n"));
        sections.forEach(section -> append(html, section));
        return html.append("</body></html>\n").toString();
    }

    private static void append(StringBuilder html, Section section) {
        html.append("<section><h2>").append(Html.escaped(section.title())).append("</h2>\n");
        section.sentences().forEach(sentence -> html.append("<p>").append(Html.escaped(sentence)).append("</p>\n"));
        section.plot().ifPresent(plot -> html.append(Html.figure(plot)));
        section.tables().stream().filter(table -> !table.rows().isEmpty()).forEach(table -> append(html, table));
        html.append("</section>\n");
    }

    private static void append(StringBuilder html, SheetTable table) {
        html.append("<table><thead><tr>");
        table.headings().forEach(heading -> html.append("<th scope=\"col\">").append(Html.escaped(heading)).append("</th>"));
        html.append("</tr></thead><tbody>\n");
        for (List<String> row : table.rows()) {
            html.append("<tr>");
            row.forEach(cell -> html.append("<td>").append(Html.escaped(cell)).append("</td>"));
            html.append("</tr>\n");
        }
        html.append("</tbody></table>\n");
    }
}
