package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;

import org.benchwright.language.Checked;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Broken texts earn their remark at the right place, near misses do not. That every code has an example is for
 * RemarkPagesTest.
 */
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
        checked.remarks().forEach(remark -> assertFalse(remark.words().isBlank()
                || remark.words().matches(".*\\{\\d.*|.*\\bnull\\b.*"), remark::words));
        checked.remarks().forEach(remark -> assertPlace(remark, checked));
    }

    @ParameterizedTest
    @MethodSource("brokenTexts")
    void aNearMissStaysQuiet(BrokenText broken) {
        Checked checked = broken.checkNearMiss();
        assertQuiet(broken.code(), checked.remarks());
        assertEquals(checked.hasErrors() ? 0 : 1, SoundPlans.of(checked).size());
    }

    /** Line and column are those of the offset; what is marked lies in that line, and is more than nothing. */
    private static void assertPlace(Remark remark, Checked checked) {
        String text = checked.files().stream().filter(file -> file.path().equals(remark.file())).findFirst().orElseThrow()
                .text();
        String before = text.substring(0, remark.offset());
        assertEquals(before.lines().count() + (before.isEmpty() || before.endsWith("\n") ? 1 : 0), remark.line(),
                remark::toString);
        assertEquals(remark.offset() - before.lastIndexOf('\n'), remark.column(), remark::toString);
        assertEquals(1, text.substring(remark.offset(), remark.offset() + remark.length()).lines()
                .count(), remark::toString);
    }

    private static void assertQuiet(RemarkCode code, List<Remark> remarks) {
        assertEquals(List.of(), Bench.printed(remarks.stream()
                .filter(remark -> remark.code() == code || remark.code() == RemarkCode.SYNTAX).toList()));
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
        Checked checked = Bench.check(Bench.FAMILY, Bench.PROCEDURE, "whole.procedure", whole.nearMiss());
        assertQuiet(whole.code(), checked.remarks());
        SoundPlans.of(checked);
    }
}
