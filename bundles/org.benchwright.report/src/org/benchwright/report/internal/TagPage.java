package org.benchwright.report.internal;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.benchwright.report.UnitTag;

/** The tag that tells where a unit stands: as wide as the label, and higher where something must not be done to the unit. */
public final class TagPage {

    private static final float WIDTH = 62 * LabelPage.MILLIMETRE;
    private static final float HEIGHT = 29 * LabelPage.MILLIMETRE;
    private static final float CAUTION = 6.5f * LabelPage.MILLIMETRE;
    private static final float SQUARE = 22 * LabelPage.MILLIMETRE;
    private static final float EDGE = 1.5f * LabelPage.MILLIMETRE;
    private static final int MOST_LINES = 5;

    private TagPage() {
    }

    /** The tag as a PDF/A file. */
    public static byte[] pdf(UnitTag tag, Instant now) {
        return Archive.pdf(Message.TAG.text(tag.unit()), now, List.of(), pdf -> draw(tag, pdf));
    }

    private static void draw(UnitTag tag, PDDocument pdf) throws IOException {
        float height = HEIGHT + tag.cautions().size() * CAUTION;
        Paper paper = new Paper(pdf, new PDRectangle(WIDTH, height));
        Typeface regular = Typeface.regular(pdf);
        Typeface bold = Typeface.bold(pdf);
        paper.turn();
        float whole = WIDTH - 2 * EDGE;
        float y = LabelPage.line(paper, bold, 17, 9, whole, EDGE, tag.state().toUpperCase(Locale.ROOT));
        PageLayout.draw(paper, Square.of(tag.unit()), WIDTH - SQUARE - EDGE / 2, y, SQUARE);
        float room = WIDTH - SQUARE - 2.5f * EDGE;
        y = LabelPage.line(paper, bold, 11, 5, room, y, tag.unit());
        for (String line : tag.lines().stream().limit(MOST_LINES).toList()) {
            y = LabelPage.line(paper, regular, 6.5f, 4, room, y, line);
        }
        float below = Math.max(y, HEIGHT);
        for (String caution : tag.cautions()) {
            below = LabelPage.line(paper, bold, 8.5f, 4.5f, whole, below, caution);
        }
        paper.finish();
    }
}
