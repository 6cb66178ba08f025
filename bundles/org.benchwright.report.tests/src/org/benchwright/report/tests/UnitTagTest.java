package org.benchwright.report.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Map;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.benchwright.report.UnitTag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;

/** The tag on a unit: what it says, and that hostile words do no harm. */
class UnitTagTest {

    private static final Instant PRINTED = Instant.parse("2026-03-02T08:00:00Z");

    private static String kept(String name, UnitTag tag, float height) throws IOException {
        byte[] pdf = Printed.kept(name, tag.pdf(PRINTED));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertEquals(1, document.getNumberOfPages());
            assertEquals(62, document.getPage(0).getMediaBox().getWidth() * 25.4 / 72, 0.1);
            assertEquals(height, document.getPage(0).getMediaBox().getHeight() * 25.4 / 72, 0.1);
        }
        Printed.assertWithin(0, pdf);
        return Printed.text(pdf);
    }

    @Test
    void aUnitThatWaits() throws IOException {
        String text = kept("tag-waiting.pdf", new UnitTag("waiting", "C16-004711", List.of("Tarn C16 modular controller", "order O-114"),
                List.of()), 29);
        assertTrue(text.startsWith("WAITING"), text);
        assertTrue(text.contains("C16-004711") && text.contains("order O-114"), text);
    }

    @Test
    void aUnitOnSoakSaysWhatMustNotBeDone() throws IOException {
        String text = kept("tag-soak.pdf", new UnitTag("on soak", "C16-004711", List.of("Tarn C16 modular controller", "order O-114", "Quarry pumps",
                "since 2026-03-02 08:00", "T-4K7M2-QXD9R"), List.of("ON SOAK: leave it running. Don't touch, don't switch.",
                "In danger cut off at the marked switch only.", "Ask: technician QN, ext. 17")), 48.5f);
        assertTrue(text.contains("ON SOAK") && text.contains("In danger cut off at the marked switch only.")
                && text.contains("Ask: technician QN"), text);
    }

    /** Where a plate has signs beyond the western ones, a scanner must find that very unit. */
    @ParameterizedTest
    @ValueSource(strings = {"C16-004711", "\u0421-16/\u0416", "W\u00e4gezelle 7", "\u05d9\u05d7\u05d9\u05d3\u05d4-3", "\u4e2d\u6587-9"})
    void theSquareHoldsTheUnitWhateverItsSigns(String unit) throws Exception {
        try (PDDocument document = Loader.loadPDF(new UnitTag("waiting", unit, List.of(), List.of()).pdf(PRINTED))) {
            BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, 300, ImageType.RGB);
            int[] pixels = page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth());
            BinaryBitmap seen = new BinaryBitmap(
                    new HybridBinarizer(new RGBLuminanceSource(page.getWidth(), page.getHeight(), pixels)));
            assertEquals(unit, new QRCodeReader().decode(seen, Map.of(DecodeHintType.TRY_HARDER, true)).getText());
        }
    }

    @Test
    void whatThereIsNoRoomForIsSeenToBeMissing() throws IOException {
        String long64 = "MILLBROOK-C16-2026-000000000000000000000000000000000000000004711";
        String text = kept("tag-long.pdf", new UnitTag("waiting", long64, List.of(),
                List.of("Ask: technician QN, " + "extension 17 ".repeat(20))), 35.5f);
        assertEquals(2, text.chars().filter(sign -> sign == '\u2026').count(), text);
        assertTrue(text.contains("MILLBROOK-C16-2026-0000"), text);
    }

    @Test
    void longAndHostileWordsFit() throws IOException {
        String longest = "W".repeat(64);
        String text = kept("tag-hostile.pdf", new UnitTag("repaired, waiting for its retest", longest,
                List.of("=cmd|' /C calc'!A0", "\u202eabc", "x".repeat(500), "", "d", "one line too many"), List.of("y".repeat(500))), 35.5f);
        assertTrue(text.contains("=cmd|' /C calc'!A0") && text.contains("WWWWW") && text.contains("yyyyy"), text);
        assertFalse(text.contains("one line too many"), text);
    }
}
