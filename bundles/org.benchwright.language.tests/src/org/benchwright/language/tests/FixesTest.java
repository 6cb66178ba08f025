package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Severity;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Fix;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.ide.ProcedureIdeSetup;
import org.benchwright.language.internal.fix.Candidates;
import org.eclipse.xtext.scoping.IScopeProvider;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every kind of fix mends the example of its remark's page: the remark is gone, no error is new, and there is nothing left
 * to do twice.
 */
class FixesTest {

    @TempDir
    static Path folder;

    private static FolderSession session;

    @BeforeAll
    static void open() {
        session = FolderSession.open(folder);
        session.compare(RemarkPage.APPROVED);
    }

    static Stream<RemarkCode> codes() {
        return new Candidates(new ProcedureIdeSetup().createInjectorAndDoEMFRegistration()
                .getInstance(IScopeProvider.class), RemarkPage.APPROVED).codes().stream().sorted();
    }

    /** Where there is none, the page of decisions says why. */
    @Test
    void everyCodeHasAFixOrAReasonWhyNot() throws IOException {
        Set<RemarkCode> without = EnumSet.allOf(RemarkCode.class);
        codes().toList().forEach(without::remove);
        String page = Files.readString(Path.of("../../docs/decisions/0043-what-the-editor-mends.md"));
        assertEquals(without.stream().map(RemarkCode::word).sorted().toList(),
                Pattern.compile("`([a-z0-9-]+)`").matcher(page).results().map(found -> found.group(1)).sorted().toList());
    }

    @ParameterizedTest
    @MethodSource("codes")
    void aFixRemovesItsRemark(RemarkCode code) throws IOException {
        show(RemarkPage.of(code).bad());
        Remark remark = remarks().stream().filter(each -> each.code() == code).findFirst().orElseThrow();
        List<Fix> fixes = session.fixes(remark);
        assertFalse(fixes.isEmpty(), () -> "no fix for " + remark);
        for (Fix fix : fixes) {
            show(RemarkPage.of(code).bad());
            apply(fix);
            assertEquals(List.of(), remarks().stream().filter(each -> each.code() == code).toList(), fix::label);
            assertEquals(List.of(), remarks().stream().filter(each -> each.severity() == Severity.ERROR)
                    .toList(), fix::label);
            assertEquals(List.of(), session.fixes(remark), "the remark is gone, and its fixes with it");
        }
    }

    @Test
    void aRemarkOnAnOlderTextHasNoFixes() throws IOException {
        show(RemarkPage.of(RemarkCode.UNKNOWN_LAMP).bad());
        Remark remark = remarks().get(0);
        show(RemarkPage.of(RemarkCode.UNKNOWN_LAMP).good());
        assertEquals(List.of(), session.fixes(remark));
    }

    @Test
    void theNearestNameIsOfferedFirst() throws IOException {
        show(RemarkPage.of(RemarkCode.UNKNOWN_LAMP).bad());
        assertEquals("Write 'pwr'", session.fixes(remarks().get(0)).get(0).label());
    }

    /** There is no mark yet: one is made. */
    @Test
    void aDeadlineWithoutAnyMarkGetsOne() throws IOException {
        show(RemarkPage.of(RemarkCode.MARK_NOT_SAID).bad());
        Path file = remarks().get(0).file();
        session.change(file, session.text(file).orElseThrow().replace("mark now \"Press.\"", ""));
        assertEquals(List.of(RemarkCode.MARK_NOT_SAID), remarks().stream().map(Remark::code)
                .toList(), "one remark, and no other");
        apply(session.fixes(remarks().get(0)).get(0));
        assertEquals(List.of(), remarks());
        assertTrue(session.text(file).orElseThrow().contains("within 5 s of begun"));
    }

    @Test
    void aStopIsDeclaredInTheFamilysOwnFile() throws IOException {
        Path family = folder.resolve("egret.family");
        show(List.of(new SourceText(family, "family egret \"Egret\" {\n    lamp ok green \"Health\"\n    fault W1 \"Watchdog\" shows ok off\n}\n"),
                new SourceText(folder.resolve("soaked.procedure"), RemarkPage.of(RemarkCode.STOP_NOT_DECLARED).bad().get(1)
                        .text()
                        .replaceAll("(?m)^family heron.*\n", "").replace("heron", "egret"))));
        List<Fix> fixes = session.fixes(remarks().stream().filter(each -> each.code() == RemarkCode.STOP_NOT_DECLARED)
                .findFirst().orElseThrow());
        assertEquals(List.of("Add 'stop stays until \"somebody restarts the unit\"'"), fixes.stream().map(Fix::label)
                .toList(),
                "where it restarts by itself, looks alone are no evidence");
        apply(fixes.get(0));
        assertTrue(session.text(family).orElseThrow().contains("\"Health\"\n    stop stays until"), session.text(family)
                .orElseThrow());
        assertEquals(List.of(), remarks());
    }

    @Test
    void limitsAreExchangedWithTheirUnits() throws IOException {
        List<SourceText> texts = RemarkPage.of(RemarkCode.LIMITS_INVERTED).bad();
        show(texts);
        Remark remark = remarks().stream().filter(each -> each.code() == RemarkCode.LIMITS_INVERTED).findFirst()
                .orElseThrow();
        String text = session.text(remark.file()).orElseThrow();
        session.change(remark.file(), text.substring(0, remark.offset()) + "24.5 V .. 23500 mV"
                + text.substring(remark.offset() + remark.length()));
        Remark twoUnits = remarks().stream().filter(each -> each.code() == RemarkCode.LIMITS_INVERTED).findFirst()
                .orElseThrow();
        apply(session.fixes(twoUnits).get(0));
        assertTrue(session.text(remark.file()).orElseThrow()
                .contains("23500 mV .. 24.5 V"), () -> session.text(remark.file()).orElseThrow());
    }

    /** Its first step is carried out only now and then, so that a step of its own is needed. */
    @Test
    void theSupplyIsIsolatedInAStepOfItsOwnWhereTheFirstIsNotAlwaysCarriedOut() throws IOException {
        show(RemarkPage.of(RemarkCode.ENERGISED_AT_END).bad());
        Path file = remarks().get(0).file();
        session.change(file, session.text(file).orElseThrow()
                .replace("\"Put the tag on.\"", "\"Put the tag on.\" only if seen \"It is lit.\""));
        List<Fix> fixes = session.fixes(remarks().stream().filter(each -> each.code() == RemarkCode.ENERGISED_AT_END)
                .findFirst().orElseThrow());
        assertEquals(List.of("Isolate the supply in a step of its own"), fixes.stream().map(Fix::label).toList());
        apply(fixes.get(0));
        assertEquals(List.of(), remarks());
    }

    /** A time that is none can't be added up; what can be mended beside it is offered all the same. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "steps-longer-than-stage | step one \"One.\" takes 20 min { confirm \"So.\" } step two \"Two.\" takes 1 fortnight { confirm \"So.\" } | lasting at most 10 min | 20 min",
            "deadline-longer-than-stage | step one \"One.\" { mark m \"Press.\" expect pwr steady from 20 min of m, lasting 1 fortnight } | lasting at most 10 min | 20 min",
            "claim-unsupported | step one \"One.\" { confirm \"So.\" } } soak a \"A\" lasting 1 fortnight { keep pwr steady } soak b \"B\" lasting 10 h { keep pwr steady | | 4"})
    void aTimeOfAnUnknownUnitIsInNoFixesWay(String code, String steps, String lasting, String offered) throws IOException {
        show(List.of(new SourceText(folder.resolve("dove.procedure"), """
                family dove "Dove" { lamp pwr green "Power" stop stays until "restarted" }
                procedure dove_test "Dove test" revision 1 {
                    applies to dove
                    claims a fault stopping it every 30 h is revealed at 90 %
                    otherwise conclude undecided "No."
                    stage work "Work" LASTING { STEPS }
                    make safe "Make safe" { step off "Off." { isolates supply } }
                    conclude accepted
                }
                """.replace("LASTING", lasting == null ? "" : lasting).replace("STEPS", steps))));
        Remark remark = remarks().stream().filter(each -> each.code().word().equals(code)).findFirst()
                .orElseThrow(() -> new AssertionError(remarks().toString()));
        List<Fix> fixes = session.fixes(remark);
        assertTrue(fixes.size() == 1 && fixes.get(0).label().contains(offered), () -> fixes.toString());
    }

    /** What a fix adds, and what it leaves where it takes a line away, is the same whatever ends the lines. */
    @ParameterizedTest
    @EnumSource(names = {"STOP_NOT_DECLARED", "NO_CONCLUSION", "ERASED_BEFORE_RECORDED", "POINT_TWICE",
            "CLAIM_WITHOUT_SOAK", "STATEMENT_UNREACHABLE", "SOAK_UNOBSERVED",
            "MARK_NOT_BEFORE"})
    void linesEndAsThoseOfTheirFile(RemarkCode code) throws IOException {
        assertEquals(fixed(code, "\n").stream().map(text -> text.replace("\n", "\r\n")).toList(), fixed(code, "\r\n"));
    }

    private static List<String> fixed(RemarkCode code, String lineEnd) throws IOException {
        show(RemarkPage.of(code).bad().stream().map(text -> new SourceText(text.path(), text.text().replace("\n", lineEnd)))
                .toList());
        apply(session.fixes(remarks().stream().filter(each -> each.code() == code).findFirst().orElseThrow()).get(0));
        return session.files().stream().map(file -> session.text(file).orElseThrow()).toList();
    }

    private static List<Remark> remarks() {
        return session.remarks(Cancellation.never()).values().stream().flatMap(List::stream).toList();
    }

    private static void show(List<SourceText> texts) throws IOException {
        for (Path file : session.files()) {
            Files.deleteIfExists(file);
            session.close(file);
        }
        for (SourceText text : texts) {
            session.change(folder.resolve(text.path().getFileName()), text.text());
        }
    }

    private static void apply(Fix fix) {
        Map<Path, List<Edit>> byFile = fix.edits().stream().collect(Collectors.groupingBy(edit -> edit.place().file()));
        byFile.forEach((file, edits) -> {
            StringBuilder text = new StringBuilder(session.text(file).orElseThrow());
            edits.stream().sorted(Comparator.comparing(Edit::place).reversed())
                    .forEach(edit -> text.replace(edit.place().offset(),
                    edit.place().offset() + edit.place().length(), edit.text()));
            session.change(file, text.toString());
        });
    }
}
