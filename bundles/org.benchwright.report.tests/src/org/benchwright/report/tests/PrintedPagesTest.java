package org.benchwright.report.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.benchwright.ledger.InclusionProof;
import org.benchwright.report.HandOver;
import org.benchwright.report.NotCertifiableException;
import org.benchwright.report.TestReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What stands on paper, word by word. The files are left in {@code target/printed}, where the tests outside OSGi have an independent
 * validator look at them.
 */
class PrintedPagesTest {

    @TempDir
    Path folder;

    private static String golden(String name) throws IOException {
        try (InputStream file = PrintedPagesTest.class.getResourceAsStream(name)) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private void assertGolden(String name, byte[] pdf) throws IOException {
        assertEquals(golden(name), Printed.kept(name, Printed.text(pdf).replaceAll("[ \\t]+\n", "\n")));
    }

    @Test
    void theCertificateSaysWordByWordWhatItIsMeantTo() throws Exception {
        byte[] pdf = Printed.kept("certificate.pdf", new HandOver(SampleReport.accepted(folder), SampleReport.PRINTED).certificate());
        assertGolden("certificate.txt", pdf);
        String text = Printed.running(pdf);
        assertTrue(text.contains("would have revealed, with 90 % probability, any fault that stops a unit at least once in 31 h on average"), text);
        assertTrue(text.contains("This is not an electrical safety certificate. No accreditation is claimed."), text);
    }

    @Test
    void anAmendmentThatChangesItMakesANewNumberThatNamesTheOld() throws Exception {
        byte[] pdf = Printed.kept("certificate-2.pdf", new HandOver(SampleReport.decided(folder), SampleReport.PRINTED).certificate());
        String text = Printed.running(pdf);
        assertTrue(text.contains("Number T-4K7M2-QXD9R/2"), text);
        assertTrue(text.contains("Takes the place of T-4K7M2-QXD9R/1"), text);
        assertTrue(text.contains("Accepted: the look was late by four minutes"), text);
        assertFalse(text.contains("No decision of an auditor"), text);
    }

    @Test
    void whatWasAmendedStandsBesideTheFirstEntryWhichIsStruck() throws Exception {
        HandOver papers = new HandOver(SampleReport.amended(folder), SampleReport.PRINTED);
        assertGolden("certificate-amended.txt", Printed.kept("certificate-amended.pdf", papers.certificate()));
        assertGolden("label-amended.txt", Printed.kept("label-amended.pdf", papers.label()));
        assertTrue(papers.html().contains("STRUCK: supply volts: 23.90 V"), "the record too");
        assertTrue(papers.json().contains("\"right\": \"supply volts: 24.10 V\""), "and what machines read");
    }

    @ParameterizedTest
    @ValueSource(strings = {"superseded", "recalled", "void"})
    void whatDoesNotHoldAnyMoreSaysSoLargeOnEveryPaper(String word) throws Exception {
        HandOver papers = new HandOver(SampleReport.ended(folder, word), SampleReport.PRINTED);
        String large = word.toUpperCase(Locale.ROOT);
        for (byte[] pdf : List.of(papers.certificate(), papers.record())) {
            String text = Printed.running(pdf);
            assertTrue(text.contains(large + " This paper does not hold any more: " + word
                    + " by auditor LW, 2026-03-09 08:00: mixed up. The verdict had been"
                    + " ACCEPTED."), text);
        }
        String label = Printed.text(Printed.kept("label-" + word + ".pdf", papers.label()));
        assertTrue(label.startsWith(large) && !label.contains("ACCEPTED"), label);
        assertTrue(papers.json().contains("\"ended\": \"" + word + "\""), papers.json());
    }

    @Test
    void whileSomethingWaitsThereIsNoCertificateAndItSaysWhatToDo() throws Exception {
        HandOver papers = new HandOver(SampleReport.waiting(folder), SampleReport.PRINTED);
        NotCertifiableException refused = assertThrows(NotCertifiableException.class, papers::certificate);
        assertEquals("There is no certificate of test T-4K7M2-QXD9R yet. 1 to decide first. An auditor who had no hand in the test decides departure 12: "
                + "look 4 min later than due", refused.getMessage());
        assertThrows(NotCertifiableException.class, papers::label);
        assertTrue(Printed.text(papers.record()).contains("waiting for a decision"), "the record can be had and says so");
    }

    @Test
    void aFullRecordOfManyPagesHasEveryEventAndNumbersItsPages() throws Exception {
        byte[] pdf = Printed.kept("record.pdf", new HandOver(SampleReport.rehearsal(folder, 240), SampleReport.PRINTED).record());
        String text = Printed.text(pdf);
        int pages;
        try (PDDocument document = Loader.loadPDF(pdf)) {
            pages = document.getNumberOfPages();
        }
        assertTrue(pages > 5, pages + " pages");
        for (int i = 1; i <= 240; i++) {
            assertTrue(text.contains(i == 2 ? "STRUCK: supply volts: 2.39 V" : "Look " + i + " at the lamps: as expected"), "line " + i);
        }
        for (int page = 1; page <= pages; page++) {
            assertTrue(text.contains("Page " + page + " of " + pages), "page " + page);
        }
        assertTrue(text.contains("REHEARSAL") && text.contains("Waiting times were skipped. There is no verdict. It would be rejected"), text);
        assertFalse(text.contains("REJECTED"), "a rehearsal has no verdict");
    }

    @Test
    void theCourseOfASoakIsDrawnInTheRecordWithTheWordsThatSayWhatItTells() throws Exception {
        HandOver papers = new HandOver(SampleReport.soaked(folder), SampleReport.PRINTED);
        byte[] pdf = Printed.kept("record-soak.pdf", papers.record());
        String text = Printed.running(pdf);
        assertTrue(text.contains("What came first can be told only where the intervals do not overlap."), text);
        assertTrue(text.contains("40.0000 40.5000 watch mode faulted"), text);
        assertTrue(text.contains("entries 1 to 3") && !text.contains("Look 7 at the lamps"), "what a watch saw over and over is one line");
        int pictures = 0;
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getXObjectNames()) {
                    pictures += page.getResources().isImageXObject(name) ? 1 : 0;
                }
            }
        }
        assertEquals(2, pictures);
        assertArrayEquals(pdf, papers.record());
        assertEquals(2, papers.html().split("<figure><svg", -1).length - 1);
        assertTrue(papers.csv().contains("Look 7 at the lamps") && papers.json().contains("Look 7 at the lamps"), "machines get every event");
    }

    @Test
    void theLabelIsAsWideAsTheTape() throws Exception {
        byte[] pdf = Printed.kept("label.pdf", new HandOver(SampleReport.accepted(folder), SampleReport.PRINTED).label());
        assertGolden("label.txt", pdf);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDRectangle size = document.getPage(0).getMediaBox();
            assertEquals(1, document.getNumberOfPages());
            assertEquals(62, size.getWidth() * 25.4 / 72, 0.01);
            assertEquals(29, size.getHeight() * 25.4 / 72, 0.01);
        }
    }

    @Test
    void hostileAndForeignTextsPrintAsTextAndWhatTheFontLacksIsShownAsLacking() throws Exception {
        TestReport like = SampleReport.accepted(folder);
        TestReport.Heading h = like.heading();
        String longest = "W".repeat(3000) + " \u4e2d\u6587 \ud83d\ude00 \u0000\u001b[31m \ud800 <script>alert(1)</script> be\uFEFFhind \u03a9\u00b5\u0416\u00df";
        TestReport hostile = SampleReport.with(new TestReport.Heading(h.test(), "=cmd|' /C calc'!A0", longest, h.procedure(), 1, h.purpose(),
                h.text(), h.approval(),
                h.station(), h.software(), h.technicians(), h.opened(), h.concluded(), h.predecessor(), false, true, h.verdict(), longest,
                h.arrival(), h.repairs()), List.of(), like.proof(), 3);
        HandOver papers = new HandOver(hostile, SampleReport.PRINTED);
        byte[] certificate = Printed.kept("hostile.pdf", papers.certificate());
        Printed.assertWithin(51, certificate);
        String text = Printed.text(certificate);
        assertTrue(text.contains("\uFFFD") && text.contains("\u03a9\u00b5\u0416\u00df"), "shown as lacking, and the rest as it is");
        assertTrue(text.contains("behind") && !text.contains("\uFEFF"),
                "a mark of byte order is nothing to print, and forbidden in an archive's file");
        Printed.assertWithin(0, Printed.kept("hostile-label.pdf", papers.label()));
        assertFalse(papers.html().contains("<script"), "escaped");
        assertFalse(papers.html().codePoints().anyMatch(point -> point < ' ' && point != '\n'), "no control characters");
        assertTrue(papers.csv().contains("\"'=cmd|' /C calc'!A0\""), papers.csv());
    }

    @Test
    void proofAndValuesAreAttachedAndTheProofHolds() throws Exception {
        TestReport report = SampleReport.accepted(folder);
        byte[] pdf = new HandOver(report, SampleReport.PRINTED).certificate();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            Map<String, PDComplexFileSpecification> files = document.getDocumentCatalog().getNames().getEmbeddedFiles().getNames();
            String proof = new String(files.get("proof.json").getEmbeddedFile().toByteArray(), StandardCharsets.UTF_8);
            assertEquals(report.proof().orElseThrow(), InclusionProof.read(proof));
            String json = new String(files.get("report.json").getEmbeddedFile().toByteArray(), StandardCharsets.UTF_8);
            assertEquals(new HandOver(report, SampleReport.PRINTED).json(), json);
        }
    }

    @Test
    void thereIsNoCertificateBeforeTheEndOrOfARehearsalOrWithoutACheckpoint() throws Exception {
        for (TestReport report : List.of(SampleReport.open(), SampleReport.rehearsal(folder, 3),
                SampleReport.with(SampleReport.heading(false, true, Optional.of("accepted")), List.of(), Optional.empty(), 3))) {
            HandOver papers = new HandOver(report, SampleReport.PRINTED);
            assertThrows(NotCertifiableException.class, papers::certificate);
            assertThrows(NotCertifiableException.class, papers::label);
            assertTrue(papers.record().length > 1000, "the record can be had");
        }
        Printed.kept("open-record.pdf", new HandOver(SampleReport.open(), SampleReport.PRINTED).record());
    }

    @Test
    void theSamePaperIsTheSameBytes() throws Exception {
        HandOver papers = new HandOver(SampleReport.accepted(folder), SampleReport.PRINTED);
        assertArrayEquals(papers.certificate(), papers.certificate());
    }
}
