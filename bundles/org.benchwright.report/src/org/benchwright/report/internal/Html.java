package org.benchwright.report.internal;

import java.util.List;

import org.benchwright.core.Plot;
import org.benchwright.report.Charts;
import org.benchwright.report.Look;

/**
 * A document as one HTML file without anything from outside: no script, no link, no font to fetch. Every text is escaped.
 *
 * @param document what to show
 */
public record Html(Document document) {

    /** Whatever found its way into a page, a browser loads nothing for it and runs nothing of it. */
    private static final String NOTHING_ELSE =
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n";

    private static final int FIGURE_WIDTH = 900;
    private static final int FIGURE_HEIGHT = 420;
    private static final String STYLE = """
            body { font: 15px/1.45 sans-serif; max-width: 62em; margin: 2em auto; padding: 0 1em; color: #111; background: #fff; }
            h1 { margin-bottom: 0; } h2 { font-size: 1.1em; margin: 1.6em 0 .3em; }
            .banner { border-left: 6px solid; background: #eee; padding: .6em 1em; margin: 1em 0; }
            .banner strong { font-size: 1.5em; display: block; }
            table { border-collapse: collapse; width: 100%; font-size: .92em; }
            th, td { text-align: left; vertical-align: top; padding: .2em .5em; border-bottom: 1px solid #ccc; overflow-wrap: anywhere; }
            dl { display: grid; grid-template-columns: 12em 1fr; margin: 0; } dt { font-weight: bold; } dd { margin: 0; overflow-wrap: anywhere; }
            small { display: block; margin: .2em 0; } .square { display: flex; gap: 1em; align-items: flex-start; overflow-wrap: anywhere; }
            .square svg { width: 11em; flex: none; }
            h3 { font-size: 1em; margin: 1.4em 0 .2em; } .strong { font-weight: bold; font-size: 1.15em; margin: .4em 0; }
            .panel { border: 2px solid; margin: .5em 0; } .panel p { margin: .3em .7em; }
            .panel b { display: block; padding: .15em .7em; letter-spacing: .06em; color: #111; }
            .danger b { background: #be1622; color: #fff; } .warning b { background: #f08214; } .caution b { background: #f8d01e; }
            .notice b { background: #145496; color: #fff; } .panel b { print-color-adjust: exact; }
            figure { margin: 1em 0; } figure svg { max-width: 100%; height: auto; }
            h2, h3 { break-after: avoid; } figure, tr, .panel { break-inside: avoid; }
            .told { margin: .5em 0; } .task { margin: .5em 0 .5em 1.6em; } .task::before { content: "\\2610"; float: left; margin-left: -1.4em; }
            @media screen and (prefers-color-scheme: dark) {
            body { color: #f0f3f5; background: #1d2226; } .banner { background: #2b3238; } th, td { border-color: #56616a; }
            figure, .square svg { background: #fff; padding: .5em; } }
            """;

    /** The file's text. */
    public String text() {
        StringBuilder html = new StringBuilder();
        html.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        html.append(NOTHING_ELSE);
        html.append("<title>").append(escaped(document.title())).append("</title>\n<style>\n").append(STYLE).append("</style>\n</head>\n<body>\n");
        document.blocks().forEach(block -> append(block, html));
        return html.append("</body>\n</html>\n").toString();
    }

    private static void append(Block block, StringBuilder html) {
        if (block instanceof Block.Title title) {
            html.append("<h1>").append(escaped(title.text())).append("</h1>\n");
            if (!title.below().isEmpty()) {
                html.append("<p>").append(escaped(title.below())).append("</p>\n");
            }
        } else if (block instanceof Block.Banner banner) {
            html.append("<div class=\"banner\"><strong>").append(escaped(banner.text())).append("</strong>").append(escaped(banner.below()))
                    .append("</div>\n");
        } else if (block instanceof Block.Heading heading) {
            html.append("<h2>").append(escaped(heading.text())).append("</h2>\n");
        } else if (block instanceof Block.Text text) {
            html.append("<p>").append(escaped(text.text())).append("</p>\n");
        } else if (block instanceof Block.Small small) {
            html.append("<small>").append(escaped(small.text())).append("</small>\n");
        } else if (block instanceof Block.Facts facts) {
            html.append("<dl>\n");
            facts.pairs().forEach(pair -> html.append("<dt>").append(escaped(pair.name())).append("</dt><dd>").append(escaped(pair.value()))
                    .append("</dd>\n"));
            html.append("</dl>\n");
        } else if (block instanceof Block.Table table) {
            append(table, html);
        } else if (block instanceof Block.Square square) {
            append(square, html);
        } else if (block instanceof Block.Picture picture) {
            html.append(figure(picture.plot()));
        } else {
            appendWork(block, html);
        }
    }

    private static void appendWork(Block block, StringBuilder html) {
        if (block instanceof Block.Subheading heading) {
            html.append("<h3>").append(escaped(heading.text())).append("</h3>\n");
        } else if (block instanceof Block.Strong strong) {
            html.append("<p class=\"strong\">").append(escaped(strong.text())).append("</p>\n");
        } else if (block instanceof Block.Panel panel) {
            html.append("<div class=\"panel ").append(panel.signal().word()).append("\"><b>").append(escaped(panel.word())).append("</b>");
            panel.sentences().forEach(sentence -> html.append("<p>").append(escaped(sentence)).append("</p>"));
            html.append("</div>\n");
        } else if (block instanceof Block.Task task) {
            withNotes("task", task.text(), task.notes(), html);
        } else if (block instanceof Block.Told told) {
            withNotes("told", told.text(), told.notes(), html);
        } else {
            throw new IllegalArgumentException("no tags for " + block);
        }
    }

    /** A plot within a page: lines, without the head of a file of its own. */
    private static String figure(Plot plot) {
        String svg = Charts.svg(plot, Look.PRINT, FIGURE_WIDTH, FIGURE_HEIGHT);
        return "<figure>" + svg.substring(svg.indexOf("<svg")) + "</figure>\n";
    }

    private static void withNotes(String kind, String text, List<String> notes, StringBuilder html) {
        html.append("<div class=\"").append(kind).append("\">").append(escaped(text));
        notes.forEach(note -> html.append("<small>").append(escaped(note)).append("</small>"));
        html.append("</div>\n");
    }

    private static void append(Block.Table table, StringBuilder html) {
        // A printer begins every page that the table goes on on with its head.
        html.append("<table>\n<thead>");
        row("th scope=\"col\"", "th", table.titles(), html);
        html.append("</thead>\n<tbody>");
        table.rows().forEach(row -> row("td", "td", row, html));
        html.append("</tbody>\n</table>\n");
    }

    private static void row(String begin, String end, List<String> texts, StringBuilder html) {
        html.append("<tr>");
        texts.forEach(text -> html.append('<').append(begin).append('>').append(escaped(text)).append("</").append(end).append('>'));
        html.append("</tr>\n");
    }

    private static void append(Block.Square block, StringBuilder html) {
        Square square = Square.of(block.content());
        int side = square.modules() + 2 * Square.QUIET;
        html.append("<div class=\"square\"><svg viewBox=\"0 0 ").append(side).append(' ').append(side)
                .append("\" shape-rendering=\"crispEdges\" role=\"img\"><path d=\"");
        for (int y = 0; y < square.modules(); y++) {
            for (int x = 0; x < square.modules(); x++) {
                if (square.dark()[y][x]) {
                    html.append('M').append(x + Square.QUIET).append(' ').append(y + Square.QUIET).append("h1v1h-1z");
                }
            }
        }
        html.append("\"/></svg><div>");
        block.beside().forEach(line -> html.append("<small>").append(escaped(line)).append("</small>"));
        html.append("</div></div>\n");
    }

    /** The text as it stands between tags; control characters become blanks. */
    private static String escaped(String text) {
        StringBuilder escaped = new StringBuilder();
        text.codePoints().forEach(point -> {
            switch (point) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                case '\'' -> escaped.append("&#39;");
                default -> escaped.appendCodePoint(Character.isISOControl(point) ? ' ' : point);
            }
        });
        return escaped.toString();
    }
}
