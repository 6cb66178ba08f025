package org.benchwright.report.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.benchwright.core.PrintedText;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.SheetTable;
import org.benchwright.core.SignalWord;
import org.benchwright.report.ProcedurePaper;
import org.junit.jupiter.api.Test;

/** A procedure on paper and as a page: every kind of part, and nothing that a browser would run. */
class ProcedurePaperTest {

    private static final List<Part> ALL = List.of(new PrintedText.Title("C16 acceptance", "revision 3", ""),
            new PrintedText.Heading(1, "1 Power up", "stage.power_up"), new PrintedText.Heading(2, "1.1 lamps", "step.lamps"),
            new PrintedText.Hazard(SignalWord.DANGER, "DANGER", List.of("Terminals are live.", "It can kill.", "So: Fit the cover."), ""),
            new PrintedText.Hazard(SignalWord.NOTICE, "NOTICE", List.of("Static discharge damages the unit."), ""),
            new PrintedText.Instruction("SWITCH ON.", ""), new PrintedText.Sentence("Usually takes 1 min.", ""),
            new PrintedText.Asked("PWR green steady within 2 s of \"on\"", List.of("At the tone: did it show PWR?", "If not: <b>rejected</b>"), ""),
            new PrintedText.Told("W01: Watchdog expired", List.of("Means: a scan was late."), ""),
            new PrintedText.Rows(new SheetTable("lamps", List.of("Lamp", "Colour"), List.of(List.of("PWR", "green"))), ""));

    private static ProcedurePaper paper(List<Part> parts) {
        return new ProcedurePaper(new PrintedText("C16 acceptance", "c16_acceptance, revision 3", parts), SampleReport.PRINTED);
    }

    @Test
    void thisTestHasEveryKindOfPart() {
        assertEquals(Set.of(Part.class.getPermittedSubclasses()), ALL.stream().map(Object::getClass).collect(Collectors.toSet()));
    }

    @Test
    void everyPartIsOnThePaper() throws Exception {
        List<Part> many = new ArrayList<>(ALL);
        for (int i = 0; i < 40; i++) {
            many.addAll(ALL.subList(2, 9));
        }
        byte[] pdf = Printed.kept("procedure.pdf", paper(many).pdf());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = Printed.running(pdf);
            for (String words : List.of("C16 acceptance", "revision 3", "1 Power up", "1.1 lamps", "DANGER", "It can kill.", "SWITCH ON.",
                    "Usually takes 1 min.", "PWR green steady within 2 s of \"on\"", "At the tone: did it show PWR?", "If not: <b>rejected</b>",
                    "W01: Watchdog expired", "Means: a scan was late.", "Lamp Colour", "PWR green")) {
                assertTrue(text.contains(words), () -> words + " is missing in " + text);
            }
            assertTrue(document.getNumberOfPages() > 3 && text.contains("Page 1 of " + document.getNumberOfPages()), text);
            assertEquals(41, text.split("SWITCH ON\\.", -1).length - 1);
        }
    }

    @Test
    void everyPartIsOnThePageAndNothingRuns() {
        String html = paper(ALL).html();
        for (String tags : List.of("<h1>C16 acceptance</h1>", "<h2>1 Power up</h2>", "<h3>1.1 lamps</h3>",
                "<div class=\"panel danger\"><b>DANGER</b><p>Terminals are live.</p><p>It can kill.</p><p>So: Fit the cover.</p></div>",
                "<p class=\"strong\">SWITCH ON.</p>", "<div class=\"task\">PWR green steady within 2 s of &quot;on&quot;<small>",
                "<small>If not: &lt;b&gt;rejected&lt;/b&gt;</small>", "<div class=\"told\">W01: Watchdog expired<small>", "<td>PWR</td>")) {
            assertTrue(html.contains(tags), () -> tags + " is missing in " + html);
        }
        assertFalse(html.contains("<script"), html);
        assertTrue(Arrays.stream(SignalWord.values()).allMatch(word -> html.contains("." + word.word() + " b {")), "each signal word has its colour");
    }

    /** Wherever a table begins: its headings are over its first row, and no heading of a section is the last line of a page. */
    @Test
    void noHeadingIsLeftAloneAtTheFootOfAPage() throws Exception {
        for (int lines = 30; lines < 60; lines++) {
            List<Part> parts = new ArrayList<>();
            for (int i = 0; i < lines; i++) {
                parts.add(new PrintedText.Sentence("line", ""));
            }
            parts.add(new PrintedText.Heading(1, "LAMPS", ""));
            parts.add(new PrintedText.Rows(new SheetTable("lamps", List.of("Lamp", "Colour"),
                    List.of(List.of("PWR", "green ".repeat(30)), List.of("OK", "red"))), ""));
            try (PDDocument document = Loader.loadPDF(paper(parts).pdf())) {
                for (int page = 1; page <= document.getNumberOfPages(); page++) {
                    PDFTextStripper stripper = new PDFTextStripper();
                    stripper.setStartPage(page);
                    stripper.setEndPage(page);
                    String text = stripper.getText(document);
                    assertEquals(text.contains("PWR") || text.contains("OK"), text.contains("Colour"), text);
                    assertTrue(!text.contains("LAMPS") || text.contains("PWR"), text);
                }
            }
        }
    }

    @Test
    void aHazardThatIsHigherThanAPageIsPrintedToItsEnd() throws Exception {
        List<String> sentences = new ArrayList<>();
        for (int i = 1; i <= 90; i++) {
            sentences.add("Rule " + i + " of the maker's.");
        }
        byte[] pdf = paper(List.of(new PrintedText.Hazard(SignalWord.DANGER, "DANGER", sentences, ""))).pdf();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertEquals(90 * 2 + document.getNumberOfPages(), inSight(document), "and the signal word over each part");
        }
    }

    @Test
    void aLongTitleStaysOnItsPages() throws Exception {
        String title = ("C16 acceptance on the bench, with everything that the maker's instructions of the third edition"
                + " ask for, and what the owner asks for besides ").repeat(2);
        byte[] pdf = new ProcedurePaper(new PrintedText(title, title, List.of(new PrintedText.Sentence("line", ""))), SampleReport.PRINTED).pdf();
        assertTrue(Printed.running(pdf).contains("\u2026"), "what there is no room for is seen to be missing");
        Printed.assertWithin(51, pdf);
    }

    /** How many of the words "Rule", "maker's." and "DANGER" lie above the line at the foot of their pages. */
    private static long inSight(PDDocument document) throws Exception {
        long[] seen = {0};
        new PDFTextStripper() {
            @Override
            protected void writeString(String words, List<TextPosition> signs) {
                boolean above = signs.get(0).getY() < document.getPage(0).getMediaBox().getHeight() - 46;
                seen[0] += above ? words.split("Rule|maker's\\.|DANGER", -1).length - 1 : 0;
            }
        }.getText(document);
        return seen[0];
    }
}
