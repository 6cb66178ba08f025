package org.benchwright.report.internal;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.benchwright.report.TestReport;

/** The label that goes on a unit: 62 mm wide (a common tape), 29 mm high. */
public final class LabelPage {

    static final float MILLIMETRE = 72 / 25.4f;
    private static final float WIDTH = 62 * MILLIMETRE;
    private static final float HEIGHT = 29 * MILLIMETRE;
    private static final float SQUARE = 26 * MILLIMETRE;
    private static final float EDGE = 1.5f * MILLIMETRE;

    private LabelPage() {
    }

    /** The label as a PDF/A file. */
    public static byte[] pdf(TestReport report, Instant now) {
        return Archive.pdf(Message.TEST.text() + " " + report.number(), now, List.of(), pdf -> draw(report, pdf));
    }

    private static void draw(TestReport report, PDDocument pdf) throws IOException {
        Paper paper = new Paper(pdf, new PDRectangle(WIDTH, HEIGHT));
        Typeface regular = Typeface.regular(pdf);
        Typeface bold = Typeface.bold(pdf);
        paper.turn();
        PageLayout.draw(paper, Square.of(content(report)), WIDTH - SQUARE - EDGE / 2, EDGE, SQUARE);
        float room = WIDTH - SQUARE - 2.5f * EDGE;
        TestReport.Heading heading = report.heading();
        float y = EDGE;
        y = line(paper, bold, 13, 8, room, y, ReportWords.large(report));
        y = line(paper, bold, 10, 5, room, y, heading.serial());
        y = line(paper, regular, 6.5f, 4, room, y, heading.family());
        y = line(paper, regular, 6.5f, 4, room, y, Message.LABEL_TESTED.text(heading.concluded().orElseThrow().toString().substring(0, 10)));
        y = line(paper, bold, 7.5f, 5, room, y, report.number());
        if (report.replaces().isPresent()) {
            y = line(paper, regular, 5.5f, 4, room, y, Message.LABEL_REPLACES.text(report.replaces().get()));
        }
        line(paper, regular, 5.5f, 3.5f, room, y + 2, Message.LABEL_LIMIT.text());
        paper.finish();
    }

    /** Writes a line as large as there is room for it; what even the smallest type has no room for is cut off, and seen to be. */
    static float line(Paper paper, Typeface face, float size, float smallest, float room, float y, String text) throws IOException {
        float fits = Math.max(smallest, Math.min(size, size * room / Math.max(1, face.width(face.shown(text), size))));
        float baseline = y + size * 1.12f;
        paper.write(face, fits, EDGE, baseline, face.line(text, fits, room));
        return baseline + 1.5f;
    }

    /** Less than on the certificate: enough to find the record and to see whether it is the same. */
    static String content(TestReport report) {
        return String.join("\n", "BENCHWRIGHT-LABEL/1", "number " + report.number(), "serial " + report.heading().serial(),
                "verdict " + report.heading().verdict().orElseThrow() + report.standing().end().map(end -> ", " + end.word()).orElse(""),
                "link " + report.proof().orElseThrow().link().hex());
    }
}
