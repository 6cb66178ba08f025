package org.benchwright.report.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.benchwright.core.SheetTable;
import org.benchwright.report.Csv;
import org.benchwright.report.HandOver;
import org.benchwright.report.Register;
import org.benchwright.report.TestReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** JSON, CSV and HTML: read back by somebody else's reader where there is one. */
class FilesForMachinesTest {

    @TempDir
    Path folder;

    @Test
    void jsonIsReadBackWithEveryValue() throws Exception {
        TestReport report = SampleReport.decided(folder);
        JsonNode json = new ObjectMapper().readTree(new HandOver(report, SampleReport.PRINTED).json());
        assertEquals("benchwright.report/1", json.get("format").asText());
        assertEquals("T-4K7M2-QXD9R/2", json.get("number").asText());
        assertEquals("T-4K7M2-QXD9R/1", json.get("replaces").asText());
        assertEquals("accepted", json.get("verdict").asText());
        assertEquals("23.90 V", json.get("results").get(0).get("value").asText());
        assertEquals(40, json.get("story").size());
        assertTrue(json.get("story").get(1).get("struck").asBoolean());
        assertEquals(List.of("technician QN", "auditor KM"),
                Stream.of(0, 1).map(i -> json.get("technicians").get(i).asText()).toList());
    }

    @Test
    void aRehearsalHasNoVerdictInJsonEither() throws Exception {
        JsonNode json = new ObjectMapper().readTree(new HandOver(SampleReport.rehearsal(folder, 1), SampleReport.PRINTED).json());
        assertFalse(json.has("verdict"));
        assertEquals("rejected", json.get("wouldBe").asText());
    }

    @Test
    void everyTextSurvivesJson() throws Exception {
        for (String text : List.of("\"", "\\", "\n\r\t\b\u0001", "\ud83d\ude00", "\ud800", "</script>", "\u2028")) {
            TestReport like = SampleReport.accepted(folder);
            TestReport.StoryLine line = new TestReport.StoryLine(1, SampleReport.BEGAN, "QN", text, false);
            TestReport report = new TestReport(like.heading(), List.of(), List.of(text, text), List.of(), List.of(), List.of(), List.of(),
                    List.of(), List.of(line), like.proof(), like.standing(), new TestReport.Shown(List.of(line), List.of()));
            JsonNode json = new ObjectMapper().readTree(new HandOver(report, SampleReport.PRINTED).json());
            assertEquals(text, json.get("story").get(0).get("words").asText());
            assertEquals(text, json.get("soaks").get(1).asText());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+A1", "-A1", "-1+cmd", "+cmd", "=a,b", "@SUM(A1)", " =1", "\t=1", "\r=1", "\n=1", "\uFF1D1", "|x", "%x"})
    void noCellIsTakenForAFormula(String value) {
        String text = Csv.of(List.of(List.of("a", value)));
        assertEquals("\"a\",\"'" + value + "\"\r\n", text);
    }

    @Test
    void plainCellsAndQuotesStayWhatTheyAre() {
        assertEquals("\"23.90 V\",\"say \"\"yes\"\"\",\"\",\"a,b\"\r\n",
                Csv.of(List.of(List.of("23.90 V", "say \"yes\"", "", "a,b"))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"-0.5", "+24", "-1e-3", "0", "12"})
    void aNumberKeepsItsSign(String value) {
        assertEquals("\"head\"\r\n\"" + value + "\"\r\n", Csv.of(new SheetTable("t", List.of("head"), List.of(List.of(value)))));
    }

    @Test
    void theRegisterHasALineForEachTest() throws Exception {
        Register register = new Register(List.of(SampleReport.accepted(folder), SampleReport.open()));
        List<String> lines = register.csv().lines().toList();
        assertEquals(3, lines.size());
        assertTrue(lines.get(1).startsWith("\"T-4K7M2-QXD9R\",\"C16-004711\",\"Tarn C16 modular controller\""), lines.get(1));
        assertTrue(lines.get(1).contains("\"sealed\",\"accepted\",\"Every step conforms.\",\"1\",\"0\",\"no\""), lines.get(1));
        assertEquals(2, new ObjectMapper().readTree(register.json()).size());
        assertEquals(0, new ObjectMapper().readTree(new Register(List.of()).json()).size());
    }

    @Test
    void htmlHasEverythingAndNothingFromOutside() throws Exception {
        String html = new HandOver(SampleReport.decided(folder), SampleReport.PRINTED).html();
        for (String outside : List.of("http:", "https:", "src=", "href=", "<script", "url(")) {
            assertFalse(html.contains(outside), outside);
        }
        assertTrue(html.contains("Look 40 at the lamps"));
        assertTrue(html.contains("<svg") && html.contains("STRUCK: supply volts"));
        assertTrue(html.contains("default-src 'none'") && html.contains("prefers-color-scheme: dark"),
                "a browser is told so, and it is readable in the dark");
        assertEquals(html.split("<tr>", -1).length, html.split("</tr>", -1).length);
    }
}
