package org.benchwright.report.internal;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.color.PDCalGray;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/**
 * Pages with a pen on them: text, lines and squares at places counted in points from the upper left corner. Black is given in a calibrated
 * colour space, as an archive asks.
 */
final class Paper {

    /** What is darker than this, of 255, is ink. */
    private static final int DARK = 170;

    private final PDDocument document;
    private final PDRectangle size;
    private final List<PDPage> pages = new ArrayList<>();
    private final PDCalGray greys;
    private Optional<PDPageContentStream> pen = Optional.empty();

    Paper(PDDocument document, PDRectangle size) {
        this.document = document;
        this.size = size;
        this.greys = calibrated();
    }

    private static PDCalGray calibrated() {
        PDCalGray grey = new PDCalGray();
        COSArray white = new COSArray();
        for (float part : new float[] {0.9505f, 1f, 1.089f}) {
            white.add(new COSFloat(part));
        }
        ((COSDictionary) ((COSArray) grey.getCOSObject()).getObject(1)).setItem("WhitePoint", white);
        grey.setGamma(2.2f);
        return grey;
    }

    float width() {
        return size.getWidth();
    }

    float height() {
        return size.getHeight();
    }

    int pages() {
        return pages.size();
    }

    /** Goes on on a new page. */
    void turn() throws IOException {
        finish();
        PDPage page = new PDPage(size);
        document.addPage(page);
        pages.add(page);
        pen = Optional.of(new PDPageContentStream(document, page));
        black();
    }

    /** Goes back to a page in order to add something. */
    void back(int page) throws IOException {
        finish();
        pen = Optional.of(new PDPageContentStream(document, pages.get(page), PDPageContentStream.AppendMode.APPEND, true, true));
        black();
    }

    /** Everything is black: the one colour on which printers, screens and archives agree. */
    private void black() throws IOException {
        PDColor black = new PDColor(new float[] {0}, greys);
        pen().setNonStrokingColor(black);
        pen().setStrokingColor(black);
    }

    /** Writes one line whose baseline is at {@code y}. */
    void write(Typeface face, float fontSize, float x, float y, String shown) throws IOException {
        pen().beginText();
        pen().setFont(face.font(), fontSize);
        pen().newLineAtOffset(x, height() - y);
        pen().showText(shown);
        pen().endText();
    }

    /** Draws a level line. */
    void rule(float x, float y, float width, float thickness) throws IOException {
        pen().setLineWidth(thickness);
        pen().moveTo(x, height() - y);
        pen().lineTo(x + width, height() - y);
        pen().stroke();
    }

    /** Fills a rectangle whose upper left corner is at ({@code x}, {@code y}). */
    void fill(float x, float y, float width, float fillHeight) throws IOException {
        pen().addRect(x, height() - y - fillHeight, width, fillHeight);
        pen().fill();
    }

    /** Puts the dark parts of a picture, in black like all else, with its upper left corner at ({@code x}, {@code y}). */
    void picture(BufferedImage picture, float x, float y, float width, float pictureHeight) throws IOException {
        int rowBytes = (picture.getWidth() + Byte.SIZE - 1) / Byte.SIZE;
        byte[] light = new byte[rowBytes * picture.getHeight()];
        for (int row = 0; row < picture.getHeight(); row++) {
            for (int column = 0; column < picture.getWidth(); column++) {
                if ((picture.getRGB(column, row) & 0xff) > DARK) {
                    light[row * rowBytes + column / Byte.SIZE] |= (byte) (0x80 >> column % Byte.SIZE);
                }
            }
        }
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream packing = new DeflaterOutputStream(packed)) {
            packing.write(light);
        }
        PDImageXObject image = new PDImageXObject(document, new ByteArrayInputStream(packed.toByteArray()), COSName.FLATE_DECODE, picture.getWidth(),
                picture.getHeight(), 1, greys);
        image.getCOSObject().removeItem(COSName.COLORSPACE);
        image.getCOSObject().setBoolean(COSName.IMAGE_MASK, true);
        pen().drawImage(image, x, height() - y - pictureHeight, width, pictureHeight);
    }

    /** Draws an empty square whose upper left corner is at ({@code x}, {@code y}). */
    void box(float x, float y, float side) throws IOException {
        pen().setLineWidth(0.7f);
        pen().addRect(x, height() - y - side, side, side);
        pen().stroke();
    }

    private PDPageContentStream pen() {
        return pen.orElseThrow(() -> new IllegalStateException("no page was begun"));
    }

    /** Ends the work on a page. */
    void finish() throws IOException {
        if (pen.isPresent()) {
            pen.get().close();
            pen = Optional.empty();
        }
    }
}
