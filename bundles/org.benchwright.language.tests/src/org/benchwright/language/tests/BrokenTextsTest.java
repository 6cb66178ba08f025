package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.Checked;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each remark has a broken text that earns it at the right place, and a near miss that does not. */
class BrokenTextsTest {

    @Test
    void theSoundTextsHaveNoRemarks() {
        assertEquals(List.of(), Bench.printed(Bench.check(Bench.FAMILY, Bench.PROCEDURE).remarks()));
    }

    static Stream<BrokenText> brokenTexts() {
        return BrokenTexts.ALL.stream();
    }

    @ParameterizedTest
    @MethodSource("brokenTexts")
    void aBrokenTextIsRemarkedOnWhereItIsBroken(BrokenText broken) {
        Checked checked = broken.checkBroken();
        List<Remark> found = checked.remarks().stream().filter(remark -> remark.code() == broken.code()).toList();
        assertTrue(found.stream().anyMatch(remark -> broken.isExpectedAt(remark)),
                () -> "expected " + broken.code().word() + " in line " + broken.expectedLine() + " but found "
                        + Bench.printed(checked.remarks()));
        found.forEach(remark -> assertTrue(!remark.words().contains("{0}") && !remark.words().isBlank(), remark::words));
    }

    @ParameterizedTest
    @MethodSource("brokenTexts")
    void aNearMissStaysQuiet(BrokenText broken) {
        List<Remark> remarks = broken.checkNearMiss().remarks();
        assertEquals(List.of(), Bench.printed(remarks.stream().filter(remark -> remark.code() == broken.code()).toList()));
        assertEquals(List.of(), Bench.printed(remarks.stream().filter(remark -> remark.code() == RemarkCode.SYNTAX).toList()));
    }

    static Stream<WholeTexts.Whole> wholeTexts() {
        return WholeTexts.ALL.stream();
    }

    @ParameterizedTest
    @MethodSource("wholeTexts")
    void aWholeTextIsRemarkedOnWhereItIsBroken(WholeTexts.Whole whole) {
        List<Remark> remarks = Bench.check(Bench.FAMILY, Bench.PROCEDURE, "whole.procedure", whole.broken()).remarks();
        assertTrue(remarks.stream().anyMatch(remark -> remark.code() == whole.code() && remark.line() == whole.expectedLine()
                && remark.file().endsWith("whole.procedure")), () -> Bench.printed(remarks).toString());
    }

    @ParameterizedTest
    @MethodSource("wholeTexts")
    void aWholeNearMissStaysQuiet(WholeTexts.Whole whole) {
        List<Remark> remarks = Bench.check(Bench.FAMILY, Bench.PROCEDURE, "whole.procedure", whole.nearMiss()).remarks();
        assertEquals(List.of(), Bench.printed(remarks.stream()
                .filter(remark -> remark.code() == whole.code() || remark.code() == RemarkCode.SYNTAX).toList()));
    }

    @Test
    void everyCodeHasABrokenText() {
        Set<RemarkCode> covered = Stream.concat(BrokenTexts.ALL.stream().map(BrokenText::code),
                WholeTexts.ALL.stream().map(WholeTexts.Whole::code)).collect(Collectors.toSet());
        // Files that can't be read are in CheckedFilesTest, hostile ones in HostileTextsTest; two codes are for what never happens.
        Set<RemarkCode> elsewhere = Set.of(RemarkCode.CANNOT_READ, RemarkCode.FILE_TOO_LARGE, RemarkCode.NOT_UTF_8, RemarkCode.SYNTAX,
                RemarkCode.NESTED_TOO_DEEP, RemarkCode.MORE_REMARKS, RemarkCode.INSPECTION_FAILED, RemarkCode.UNKNOWN_NAME);
        assertEquals(List.of(), Stream.of(RemarkCode.values()).filter(code -> !covered.contains(code) && !elsewhere.contains(code)).toList());
    }
}
