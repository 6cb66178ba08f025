package org.benchwright.report.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Papers that a test has printed: kept for the validator outside OSGi, and read back by somebody else's reader. */
final class Printed {

    private static final Path KEPT = Path.of("target", "printed");

    private Printed() {
    }

    /** Leaves a paper for the validator. */
    static byte[] kept(String name, byte[] pdf) throws IOException {
        Files.write(Files.createDirectories(KEPT).resolve(name), pdf);
        return pdf;
    }

    /** Leaves a text beside the papers, for whoever compares it with a golden file. */
    static String kept(String name, String text) throws IOException {
        return Files.readString(Files.writeString(Files.createDirectories(KEPT).resolve(name), text));
    }

    /** All that stands on a paper, line by line from top to bottom. */
    static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            stripper.setLineSeparator("\n");
            return stripper.getText(document);
        }
    }

    /** The same without line ends: where a line was broken is nobody's matter then. */
    static String running(byte[] pdf) throws IOException {
        return text(pdf).replaceAll("\\s+", " ");
    }

    /** Every sign on a paper lies on it, with a margin in points to the right. */
    static void assertWithin(float margin, byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDRectangle page = document.getPage(0).getMediaBox();
            new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition sign) {
                    String where = sign.getUnicode() + " at " + sign.getX() + ", " + sign.getY() + " of " + page;
                    assertTrue(sign.getX() >= 0 && sign.getX() + sign.getWidth() <= page.getWidth() - margin + 0.1f, where);
                    assertTrue(sign.getY() - sign.getHeight() >= 0 && sign.getY() <= page.getHeight(), where);
                }
            }.getText(document);
        }
    }
}
