package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;

import org.benchwright.language.Checked;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Broken texts earn their remark at the right place, near misses do not. That every code has an example is for RemarkPagesTest. */
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
}
