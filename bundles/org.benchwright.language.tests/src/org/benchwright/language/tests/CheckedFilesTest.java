package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;

import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.language.Checked;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Files as they come: encodings, line ends, folders, files that see each other. */
class CheckedFilesTest {

    @TempDir
    Path folder;
    private Path family;
    private Path procedure;

    @BeforeEach
    void soundFiles() throws IOException {
        family = Files.writeString(folder.resolve("lark.family"), Bench.FAMILY);
        procedure = Files.writeString(folder.resolve("lark.procedure"), Bench.PROCEDURE);
    }

    private List<String> check(Path... paths) {
        return Bench.LANGUAGE.check(List.of(paths)).remarks().stream().map(r -> r.toString().replace(folder.toString(), ""))
                .toList();
    }

    @Test
    void aFolderStandsForItsFiles() {
        Checked checked = Bench.LANGUAGE.check(List.of(folder));
        assertEquals(List.of(family, procedure), checked.files().stream().map(file -> file.path()).toList());
        assertEquals(List.of(), checked.remarks());
        assertEquals("lark_acceptance", checked.procedures().get(0).getName());
        assertEquals("lark", checked.procedures().get(0).getFamily().getName());
        assertFalse(checked.hasErrors());
    }

    @Test
    void aFileSeesTheOthersOfItsFolderWithoutRemarksOnThem() throws IOException {
        Files.writeString(folder.resolve("broken.family"), "family broken {");
        Checked checked = Bench.LANGUAGE.check(List.of(procedure));
        assertEquals(List.of(procedure), checked.files().stream().map(file -> file.path()).toList());
        assertEquals(List.of(), checked.remarks());
    }

    @Test
    void aFileDoesNotSeeOtherFolders() throws IOException {
        Path other = Files.createDirectory(folder.resolve("other"));
        Path alone = Files.writeString(other.resolve("alone.procedure"), Bench.PROCEDURE);
        List<Remark> remarks = Bench.LANGUAGE.check(List.of(family, alone)).remarks();
        assertEquals(List.of(RemarkCode.UNKNOWN_FAMILY), remarks.stream().map(Remark::code).toList());
    }

    @Test
    void aFileSeesTheFoldersFromWhichItImports() throws IOException {
        Path shared = Files.createDirectories(folder.resolve("shared"));
        Files.writeString(shared.resolve("base.family"), "family base \"Base\" { lamp pwr green \"Power\" }");
        Files.writeString(shared.resolve("stages.procedure"),
                "shared stage rest \"Rest\" for base (time in s) { step wait_a_while \"Wait.\" { wait time } }");
        Path own = Files.writeString(folder.resolve("own.procedure"), """
                import "shared/base.family"
                family wren "Wren" like base { }
                procedure p "P" revision 1 {
                    applies to wren
                    carry out rest(time = 5 s)
                    make safe "M" { step off "o" { isolates supply } }
                    conclude accepted
                }
                """);
        assertEquals(List.of(), Bench.printed(Bench.LANGUAGE.check(List.of(own)).remarks()));
        assertEquals(Duration.ofSeconds(5), ((Action.Wait) ((WorkStage) ready(own).plan().stages().get(0)).steps().get(0)
                .actions().get(0)).time());
        assertTrue(ready(own).text().contains("// base.family"), "what was imported is kept with the record");
        Files.writeString(own, Files.readString(own).replace("import \"shared/base.family\"", ""));
        assertTrue(Bench.LANGUAGE.check(List.of(own)).hasErrors());
    }

    private static Reading.Ready ready(Path file) {
        return assertInstanceOf(Reading.Ready.class, new ProcedureReader(Bench.LANGUAGE).read(file));
    }

    @Test
    void theSameFileTwiceIsCheckedOnce() {
        assertEquals(1, Bench.LANGUAGE.check(List.of(family, folder.resolve(".").resolve("lark.family"))).files().size());
    }

    @Test
    void aSecondOfOneNameIsToldWhereTheFirstIs() throws IOException {
        Path again = Files.writeString(folder.resolve("again.family"),
                "\nfamily lark \"Again\" {\n    lamp ok red \"Ok\"\n    lamp ok green \"Ok\"\n}\n");
        assertEquals(List.of("/again.family:2:8: error: duplicate-name: There is a 'lark' of this kind already in lark.family, line 18.",
                "/again.family:4:10: error: duplicate-name: There is a 'ok' of this kind already in line 3."), check(again));
    }

    @Test
    void aMissingFileIsARemark() {
        Checked checked = Bench.LANGUAGE.check(List.of(folder.resolve("nothing.procedure")));
        assertEquals(List.of(RemarkCode.CANNOT_READ), checked.remarks().stream().map(Remark::code).toList());
        assertTrue(checked.unreadable());
        assertTrue(checked.hasErrors());
    }

    @Test
    void aLinkThatLeadsNowhereIsAMissingFile() throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("lost.procedure"), Path.of("nowhere"));
        Files.createSymbolicLink(folder.resolve("again"), folder);
        Checked checked = Bench.LANGUAGE.check(List.of(folder));
        assertEquals(List.of(link), checked.remarks().stream().map(Remark::file).toList());
        assertTrue(checked.unreadable());
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void aFileWithoutAnEndIsNotReadToIt() throws IOException {
        Path endless = Files.createSymbolicLink(folder.resolve("endless.procedure"), Path.of("/dev/zero"));
        assertEquals(List.of(RemarkCode.FILE_TOO_LARGE), Bench.LANGUAGE.check(List.of(endless)).remarks().stream()
                .map(Remark::code).toList());
    }

    @Test
    void byteOrderMarkAndCarriageReturnsDoNotMoveTheRemarks() throws IOException {
        String broken = Bench.FAMILY.replace("like lark_base", "like lark_bose");
        List<String> plain = check(Files.writeString(folder.resolve("lark.family"), broken));
        List<String> windows = check(Files.writeString(folder.resolve("lark.family"), "\uFEFF"
                + broken.replace("\n", "\r\n")));
        assertEquals(plain, windows);
        assertTrue(plain.get(0).contains(":18:36: error: unknown-family:"), plain::toString);
    }

    @Test
    void bytesThatAreNoTextAreARemarkWithTheirPlace() throws IOException {
        byte[] bytes = "family a \"A\" {\n }\n// caf\u00e9\n".getBytes(StandardCharsets.ISO_8859_1);
        Path odd = Files.write(folder.resolve("odd.family"), bytes);
        List<Remark> remarks = Bench.LANGUAGE.check(List.of(odd)).remarks();
        assertEquals(List.of(RemarkCode.NOT_UTF_8), remarks.stream().map(Remark::code).toList());
        assertEquals(3, remarks.get(0).line());
        assertEquals(7, remarks.get(0).column());
    }

    @Test
    void aFileBeyondAllMeasureIsNotRead() throws IOException {
        Path huge = Files.writeString(folder.resolve("huge.family"), " ".repeat(2_000_001));
        assertEquals(List.of(RemarkCode.FILE_TOO_LARGE), Bench.LANGUAGE.check(List.of(huge)).remarks().stream()
                .map(Remark::code).toList());
    }

    @Test
    void anEmptyFileIsSound() throws IOException {
        assertEquals(List.of(), check(Files.writeString(folder.resolve("empty.family"), "")));
    }

    @Test
    void theEndingOfAFileThatIsNamedDoesNotMatter() throws IOException {
        assertEquals(1, check(Files.writeString(folder.resolve("notes.txt"), "family {")).size());
    }

    @Test
    void theDemoProceduresHaveNoErrors() {
        Checked demo = Bench.LANGUAGE.check(List.of(Path.of("../../procedures")));
        assertTrue(demo.files().size() >= 8, () -> demo.files().toString());
        assertFalse(demo.hasErrors(), () -> demo.remarks().toString());
    }
}
