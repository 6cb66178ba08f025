package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/**
 * The papers that the report's tests have left behind, seen by others: a PDF/A validator that shares no code with what printed them, and a
 * camera's eye for the squares.
 */
class ArchivePapersTest {

    private static final Path PRINTED = Path.of("..", "org.benchwright.report.tests", "target", "printed");
    private static final int DPI = 200;

    @BeforeAll
    static void validator() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    private static List<Path> papers() throws IOException {
        try (Stream<Path> files = Files.list(PRINTED)) {
            return files.filter(file -> file.toString().endsWith(".pdf")).sorted().toList();
        }
    }

    private static List<String> objections(byte[] pdf) throws Exception {
        try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFA_3_U)) {
            PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_3_U, false);
            ValidationResult result = validator.validate(parser);
            List<String> failed = result.getTestAssertions().stream().filter(each -> each.getStatus() != TestAssertion.Status.PASSED)
                    .map(each -> each.getRuleId().getClause() + ": " + each.getMessage()).distinct().toList();
            assertEquals(result.isCompliant(), failed.isEmpty());
            return failed;
        }
    }

    @Test
    void everyPaperIsAnArchiveFile() throws Exception {
        List<Path> papers = papers();
        assertTrue(papers.size() >= 6, papers.toString());
        for (Path paper : papers) {
            assertEquals(List.of(), objections(Files.readAllBytes(paper)), paper.toString());
        }
    }

    @Test
    void theValidatorDoesObjectToWhatIsNoArchiveFile() throws Exception {
        byte[] certificate = Files.readAllBytes(PRINTED.resolve("certificate.pdf"));
        try (PDDocument document = Loader.loadPDF(certificate); ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            document.getDocumentCatalog().setMetadata(null);
            document.save(out);
            assertFalse(objections(out.toByteArray()).isEmpty());
        }
    }

    @Test
    void theSquareOnTheCertificateHoldsWhatIsPrintedBesideIt() throws Exception {
        byte[] pdf = Files.readAllBytes(PRINTED.resolve("certificate.pdf"));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document);
            List<String> square = decoded(document, document.getNumberOfPages() - 1).lines().toList();
            assertEquals("BENCHWRIGHT-CERTIFICATE/1", square.get(0));
            assertEquals(10, square.size());
            for (String line : square.subList(1, square.size())) {
                String value = line.substring(line.indexOf(' ') + 1);
                assertTrue(text.toLowerCase(Locale.ROOT).contains(value.toLowerCase(Locale.ROOT)), line);
            }
        }
    }

    @Test
    void theSquareOnTheLabelNamesTheCertificate() throws Exception {
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(PRINTED.resolve("label.pdf")))) {
            List<String> square = decoded(document, 0).lines().toList();
            assertEquals(List.of("BENCHWRIGHT-LABEL/1", "number T-4K7M2-QXD9R/1", "serial C16-004711", "verdict accepted"), square.subList(0, 4));
        }
    }

    private static String decoded(PDDocument document, int page) throws Exception {
        BufferedImage image = new PDFRenderer(document).renderImageWithDPI(page, DPI);
        int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        BinaryBitmap bitmap = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(image.getWidth(), image.getHeight(), pixels)));
        return new QRCodeReader().decode(bitmap, Map.of(DecodeHintType.TRY_HARDER, Boolean.TRUE)).getText();
    }
}
