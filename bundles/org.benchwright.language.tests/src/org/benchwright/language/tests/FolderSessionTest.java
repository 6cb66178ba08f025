package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;

import org.benchwright.core.Cancellation;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.ContentsKind;
import org.benchwright.language.editing.ContentsRow;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.editing.Link;
import org.benchwright.language.editing.Style;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A folder that is open for editing: texts that are not saved, changes that are seen from other files, what is shown of a
 * text.
 */
class FolderSessionTest {

    private static Analysis analysis(FolderSession session, Path file) {
        return session.analyse(file, Cancellation.never()).orElseThrow();
    }

    private static List<RemarkCode> codes(FolderSession session, Path file) {
        return session.remarks(Cancellation.never()).get(file).stream().map(Remark::code).toList();
    }

    @Test
    void theDemoFolderHasNoRemarks() {
        FolderSession session = DemoFolder.open();
        Map<Path, List<Remark>> remarks = session.remarks(Cancellation.never());
        assertEquals(session.files(), List.copyOf(remarks.keySet()));
        assertEquals(9, remarks.size());
        assertTrue(remarks.values().stream().allMatch(List::isEmpty), remarks::toString);
    }

    @Test
    void aTextThatIsNotSavedStandsInForTheOneOnTheDiskUntilItIsClosed() {
        FolderSession session = DemoFolder.open();
        String sound = DemoFolder.text(session, DemoFolder.PROCEDURE);
        session.change(DemoFolder.PROCEDURE, sound.replace("expect pwr steady within 2 s of on",
                "expect pwm steady within 2 s of on"));
        List<Remark> remarks = analysis(session, DemoFolder.PROCEDURE).remarks();
        assertEquals(List.of(RemarkCode.UNKNOWN_LAMP), remarks.stream().map(Remark::code).toList());
        assertEquals(sound.indexOf("expect pwr") + "expect ".length(), remarks.get(0).offset());
        session.close(DemoFolder.PROCEDURE);
        assertEquals(List.of(), codes(session, DemoFolder.PROCEDURE));
        assertEquals(sound, DemoFolder.text(session, DemoFolder.PROCEDURE));
    }

    @Test
    void aChangeInAFamilyIsSeenFromItsProceduresThroughTheFamiliesBetween() {
        FolderSession session = DemoFolder.open();
        session.remarks(Cancellation.never());
        String base = DemoFolder.text(session, DemoFolder.BASE);
        session.change(DemoFolder.BASE, base.replace("lamp pwr", "lamp power"));
        assertTrue(codes(session, DemoFolder.PROCEDURE).contains(RemarkCode.UNKNOWN_LAMP));
        assertEquals(List.of(), codes(session, DemoFolder.BASE));
        session.change(DemoFolder.BASE, base);
        assertEquals(List.of(), codes(session, DemoFolder.PROCEDURE));
    }

    @Test
    void filesThatComeChangeAndGoOnTheDiskAreSeenAfterARefresh(@TempDir Path folder) throws IOException {
        Path procedure = folder.resolve("lark.procedure");
        Path family = folder.resolve("lark.family");
        Files.writeString(procedure, Bench.PROCEDURE);
        FolderSession session = FolderSession.open(folder);
        assertTrue(codes(session, procedure).contains(RemarkCode.UNKNOWN_FAMILY));
        Files.writeString(family, Bench.FAMILY);
        assertTrue(session.refresh());
        assertEquals(List.of(), codes(session, procedure));
        assertFalse(session.refresh());
        Files.delete(family);
        assertTrue(session.refresh());
        assertEquals(List.of(procedure), session.files());
        assertTrue(codes(session, procedure).contains(RemarkCode.UNKNOWN_FAMILY));
    }

    @Test
    void aFileThatIsNotThereYetIsKnownWhileItIsOpen(@TempDir Path folder) {
        FolderSession session = FolderSession.open(folder);
        Path family = folder.resolve("new.family");
        session.change(family, Bench.FAMILY);
        assertEquals(Map.of(family, List.of()), session.remarks(Cancellation.never()));
        session.close(family);
        assertEquals(Map.of(), session.remarks(Cancellation.never()));
    }

    @Test
    void aFileOfAnotherFolderIsRefused() {
        FolderSession session = DemoFolder.open();
        assertThrows(IllegalArgumentException.class, () -> session.change(Path.of("elsewhere.family"), ""));
    }

    @Test
    void cancelledWorkSaysSo() {
        FolderSession session = DemoFolder.open();
        assertThrows(CancellationException.class, () -> session.analyse(DemoFolder.PROCEDURE, () -> true));
        assertThrows(CancellationException.class, () -> session.remarks(() -> true));
    }

    @Test
    void everyCharacterThatIsNotBlankHasOneMeaning() {
        FolderSession session = DemoFolder.open();
        for (Path file : session.files()) {
            String text = DemoFolder.text(session, file);
            int end = 0;
            for (Style style : analysis(session, file).styles()) {
                assertTrue(text.substring(end, style.offset()).isBlank(), file + " " + style);
                end = style.end();
            }
            assertTrue(text.substring(end).isBlank(), file.toString());
        }
    }

    @Test
    void aWordOfTheLanguageThatIsANameMeansAName(@TempDir Path folder) {
        FolderSession session = FolderSession.open(folder);
        Path file = folder.resolve("names.family");
        String text = "family a \"A\" {\n lamp lamp red \"L\"\n modes mode\n mode mode shows lamp lamp steady\n}";
        session.change(file, text);
        List<String> styles = analysis(session, file).styles().stream()
                .map(style -> style.meaning() + " " + text.substring(style.offset(), style.end())).toList();
        assertEquals(List.of("KEYWORD family", "DECLARATION a", "TEXT \"A\"", "PLAIN {", "KEYWORD lamp", "DECLARATION lamp",
                "INDICATION red",
                "TEXT \"L\"", "KEYWORD modes", "DECLARATION mode", "KEYWORD mode", "REFERENCE mode", "KEYWORD shows",
                "KEYWORD lamp",
                "REFERENCE lamp", "INDICATION steady", "PLAIN }"), styles);
    }

    @Test
    void contentsNameStagesStepsAndWhatTheyReadLike() {
        ContentsRow procedure = analysis(DemoFolder.open(), DemoFolder.PROCEDURE).contents().get(0);
        assertEquals("C16 acceptance on the bench, revision 1", procedure.label());
        assertEquals(List.of("Hazards", "Instruments", "Preconditions", "As received", "Prove the supply", "Power up",
                "As found", "Prepare",
                "Start", "Endurance", "As left", "Why it did not start", "Why it stopped", "Make safe"),
                procedure.children().stream().map(ContentsRow::label).toList());
        ContentsRow powerUp = procedure.children().get(5);
        assertEquals(List.of("fit", "lamps"), powerUp.children().stream().map(ContentsRow::name).toList());
        assertTrue(powerUp.children().stream().allMatch(row -> row.kind() == ContentsKind.STEP));
    }

    @Test
    void everyRowOfTheContentsPointsAtItsName() {
        FolderSession session = DemoFolder.open();
        for (Path file : session.files()) {
            String text = DemoFolder.text(session, file);
            List<ContentsRow> rows = new ArrayList<>();
            analysis(session, file).contents().forEach(row -> gather(row, rows));
            assertTrue(rows.size() > 2, file.toString());
            rows.stream().filter(row -> !row.name().isEmpty())
                    .forEach(row -> assertEquals(row.name(), text.substring(row.offset(), row.offset() + row.length())));
        }
    }

    private static void gather(ContentsRow row, List<ContentsRow> rows) {
        rows.add(row);
        row.children().forEach(child -> gather(child, rows));
    }

    @Test
    void stepsAndStagesCanBeFolded() {
        FolderSession session = DemoFolder.open();
        String text = DemoFolder.text(session, DemoFolder.PROCEDURE);
        List<String> folded = analysis(session, DemoFolder.PROCEDURE).folds().stream()
                .map(fold -> text.substring(fold.offset(), fold.offset() + fold.length())).toList();
        assertTrue(folded.stream().anyMatch(passage -> passage.startsWith("step lamps") && passage.endsWith("}")));
        assertTrue(folded.stream().anyMatch(passage -> passage.startsWith("soak endurance") && passage.endsWith("}")));
        assertTrue(folded.stream().allMatch(passage -> passage.contains("\n")));
    }

    @Test
    void everyReferenceOfTheDemoLeadsToItsName() {
        FolderSession session = DemoFolder.open();
        for (Path file : session.files()) {
            String text = DemoFolder.text(session, file);
            List<Link> links = analysis(session, file).links();
            assertFalse(links.isEmpty() && text.contains("applies to"), file::toString);
            links.forEach(link -> {
                String there = DemoFolder.text(session, link.declaration().file());
                int at = link.declaration().offset();
                assertEquals(text.substring(link.offset(), link.offset() + link.length()),
                        there.substring(at, at + link.declaration().length()));
            });
        }
    }

    @Test
    void aFolderOfBrokenTextsIsAnsweredTooAndNothingIsThrown(@TempDir Path folder) {
        FolderSession session = FolderSession.open(folder);
        Path file = folder.resolve("broken.procedure");
        for (String text : List.of("", "{", "procedure", "procedure p", "family \"\" {", "/* no end",
                "procedure p \"P\" { step", "\u0000",
                "(".repeat(100))) {
            session.change(file, text);
            analysis(session, file);
            for (int at = 0; at <= text.length(); at++) {
                session.proposals(file, at);
                session.hover(file, at);
                session.declaration(file, at);
                session.references(file, at);
                session.rename(file, at, "x");
            }
        }
        Map<Path, List<Remark>> all = new TreeMap<>(session.remarks(Cancellation.never()));
        assertEquals(1, all.size());
        assertEquals(List.of(RemarkCode.NESTED_TOO_DEEP), Stream.of(all.get(file)).flatMap(List::stream).map(Remark::code)
                .toList());
    }
}
