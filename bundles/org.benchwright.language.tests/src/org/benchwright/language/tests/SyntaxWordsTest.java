package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.stream.Stream;

import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What is said about a text that does not fit the grammar, at which place, in whose words. */
class SyntaxWordsTest {

    private static final String NEXT = "expected: what comes next in a procedure (applies to, purpose, claims, retest of, proves, needs; hazard, protect, instrument, "
            + "precondition; otherwise; stage, soak, carry out; make safe; conclude), a comma before one more clause of what stands before it, or the closing brace.";

    static Stream<Arguments> texts() {
        return Stream.of(
                Arguments.of("family {", "1:8", "'{' does not fit here; expected: a name."),
                Arguments.of("family a {", "1:10", "'{' does not fit here; expected: a text in double quotes."),
                Arguments.of("family a \"A\" {\n  lamp x green Power\n}", "2:16",
                        "'Power' does not fit here; expected: a text in double quotes."),
                Arguments.of("family a \"A\" {\n  lamp x purple \"P\"\n}", "2:10",
                        "'purple' does not fit here; expected: red, yellow, green, blue or white."),
                Arguments.of("family a \"A\" {\n  shows\n}", "2:3",
                        "'shows' does not fit here; expected: a declaration of the family, or its closing brace."),
                Arguments.of("family a \"A", "1:10", "A text begins here that has no closing double quote in its line."),
                Arguments.of("/* never\nclosed", "1:1", "A comment begins here that is never closed with */."),
                Arguments.of("stage x \"X\" {}", "1:1", "'stage' does not fit here; expected: family or procedure."),
                Arguments.of("family a \"A\" { supply 24 dc }", "1:26",
                        "'dc' does not fit here; expected: a unit of measure."),
                Arguments.of("family a \"A\" { supply V dc }", "1:23", "'V' does not fit here; expected: a number."),
                Arguments.of("procedure p \"P\" { hazard h deadly \"x\" }", "1:28",
                        "'deadly' does not fit here; expected: danger, warning, caution or notice."),
                Arguments.of("procedure p \"P\" { conclude maybe }", "1:28",
                        "'maybe' does not fit here; expected: accepted, rejected or undecided."),
                Arguments.of("procedure p \"P\" { precondition sheet \"It is there.\" enter text \"Its number\" }", "1:53",
                        "'enter' does not fit here; " + NEXT),
                Arguments.of("procedure p \"P\" { proves the bench, valid 12 h claims a fault stopping it every 1 h is revealed at 90 % }", "1:48",
                        "'claims' does not fit here; " + NEXT),
                Arguments.of("procedure p \"P\" { soak s \"S\" lasting 4 h { look every 2 h tolerance 15 min } }", "1:59",
                        "'tolerance' does not fit here; expected: what comes next in a soak (keep, conditions, watch, look, gap, when stopped, otherwise), "
                                + "a comma before one more clause of what stands before it, or the closing brace."),
                Arguments.of("procedure p \"P\" { otherwise stop }", "1:29",
                        "'stop' does not fit here; expected: conclude, go to or release by."),
                Arguments.of("procedure p \"P\" { stage s \"S\" { step t \"T\" { look } } }", "1:46",
                        "'look' does not fit here; expected: a statement of the step, otherwise, or a closing brace."),
                Arguments.of("procedure p \"P\" { stage s \"S\" { step t \"T\" { expect x blinking } } }", "1:53",
                        "'blinking' does not fit here; expected: what is shown: a lamp with its state, a display with its text, or mode and its name."),
                Arguments.of("family a \"A\" {", "1:14",
                        "The text ends too early; expected: a declaration of the family, or its closing brace."),
                Arguments.of("procedure p \"P\" revision 99999999999 {}", "1:26", "A count is at most 2147483647."),
                Arguments.of("procedure p \"P\" { stage s \"S\" { step t \"T\" { wait " + "9".repeat(41)
                        + " s } } }", "1:51",
                        "A number has at most 40 digits."),
                Arguments.of("family a \"A\" { \u20ac }", "1:16",
                        "'\u20ac' does not fit here; expected: a declaration of the family, or its closing brace."));
    }

    @ParameterizedTest
    @MethodSource("texts")
    void theFirstRemarkSaysWhatIsExpected(String text, String place, String words) {
        List<Remark> remarks = Bench.LANGUAGE.checkTexts(List.of(new SourceText(Bench.FAMILY_FILE, text))).remarks();
        Remark first = remarks.get(0);
        assertEquals(RemarkCode.SYNTAX, first.code());
        assertEquals(place + " " + words, first.line() + ":" + first.column() + " " + first.words());
        remarks.forEach(remark -> assertFalse(remark.words()
                .matches(".*(RULE_|mismatched|viable|EOF|extraneous).*"), remark::words));
    }
}
