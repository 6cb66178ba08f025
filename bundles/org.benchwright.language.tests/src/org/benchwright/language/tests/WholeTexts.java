package org.benchwright.language.tests;

import java.util.List;

import org.benchwright.language.RemarkCode;

/**
 * Small procedures of their own, each broken in one way, with a near miss. The remark is expected in the first line that has
 * {@code //!}.
 */
final class WholeTexts {

    /** A text, the remark that it earns, and a text that does not earn it. */
    record Whole(RemarkCode code, String broken, String nearMiss) {
        int expectedLine() {
            return (int) broken.substring(0, broken.indexOf("//!")).chars().filter(c -> c == '\n').count() + 1;
        }

        @Override
        public String toString() {
            return code.word();
        }
    }

    private static final String SAFE = """
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;
    private static final String STAGE = """
                stage work "Work" { step look "Look." { confirm "It is well." or conclude rejected "It is not." } }
            """;
    private static final String RESTARTING = """
            family wren "Wren" {
                lamp ok green "Health"
                watched by modbus { lamp ok lit when input 1 is on }
                stop restarts by itself
            }
            """;
    private static final String REST = "shared stage rest \"Rest\" for lark (time in s) { step pause \"Pause.\" { wait time } }\n";
    private static final String SOAK = """
                hazard mains danger "Terminals are live." can "kill" so "Fit the cover."
                otherwise conclude undecided "Not carried out."
                stage on "On" { step on "On." with hazard mains { energises supply } }
            """;

    static final List<Whole> ALL = List.of(
            new Whole(RemarkCode.MISSING_MAKE_SAFE, "procedure p \"P\" revision 1 { //!\n applies to lark\n" + STAGE
                    + "conclude accepted }",
                    "procedure p \"P\" revision 1 { applies to lark\n" + STAGE + SAFE),
            new Whole(RemarkCode.NO_STAGE, "procedure p \"P\" revision 1 { //!\n applies to lark\n" + SAFE,
                    "procedure p \"P\" revision 1 { applies to lark\n" + STAGE + SAFE),
            new Whole(RemarkCode.STAGE_WITHOUT_STEPS,
                    "procedure p \"P\" revision 1 { applies to lark\n" + STAGE
                            + "make safe \"Nothing\" { } //!\n conclude accepted }",
                    "procedure p \"P\" revision 1 { applies to lark\n" + STAGE + SAFE),
            new Whole(RemarkCode.CLAIM_WITHOUT_SOAK,
                    "procedure p \"P\" revision 1 { applies to lark\n claims a fault stopping it every 1 h is revealed at 50 % //!\n"
                            + STAGE + SAFE,
                    "procedure p \"P\" revision 1 { applies to lark\n" + STAGE + SAFE),
            new Whole(RemarkCode.SOAK_NEEDS_WATCH,
                    RESTARTING + "procedure p \"P\" revision 1 { applies to wren\n" + SOAK
                            + "soak long \"Long\" lasting 1 h witnessed { //!\n keep ok steady look every 1 h }" + SAFE,
                    RESTARTING + "procedure p \"P\" revision 1 { applies to wren\n" + SOAK
                            + "soak long \"Long\" lasting 1 h witnessed { keep ok steady watch every 1 s, stop after 1 bad look every 1 h }" + SAFE),
            new Whole(RemarkCode.PROVED_BY_ITSELF,
                    "procedure p \"P\" revision 1 { applies to lark\n proves the bench, valid 1 h\n needs the bench proved within 1 h //!\n" + STAGE + SAFE,
                    "procedure p \"P\" revision 1 { applies to lark\n needs the bench proved within 1 h\n" + STAGE + SAFE),
            new Whole(RemarkCode.RETEST_OF_ITSELF,
                    "procedure p \"P\" revision 1 { applies to lark\n retest of p, repeats work //!\n" + STAGE + SAFE,
                    "procedure p \"P\" revision 1 { applies to lark\n retest of lark_acceptance, repeats power_up\n" + STAGE
                            + SAFE),
            new Whole(RemarkCode.RETEST_OF_OTHER_FAMILY,
                    RESTARTING + "procedure p \"P\" revision 1 { applies to wren\n retest of lark_acceptance, repeats power_up //!\n" + STAGE + SAFE,
                    "procedure p \"P\" revision 1 { applies to lark_base\n retest of lark_acceptance, repeats power_up\n"
                            + STAGE + SAFE),
            new Whole(RemarkCode.RETEST_STAGE_MISSING,
                    "procedure p \"P\" revision 1 { applies to lark\n retest of lark_acceptance, repeats power_up //!\n"
                            + STAGE + SAFE,
                    "procedure p \"P\" revision 1 { applies to lark\n retest of lark_acceptance, repeats power_up\n"
                            + STAGE.replace("stage work", "stage power_up") + SAFE),
            new Whole(RemarkCode.UNKNOWN_STEP_OR_STAGE,
                    "procedure p \"P\" revision 1 { applies to lark\n retest of lark_acceptance, repeats supply //!\n"
                            + STAGE + SAFE,
                    "procedure p \"P\" revision 1 { applies to lark\n retest of lark_acceptance, repeats power_up\n" + STAGE
                            + SAFE),
            new Whole(RemarkCode.DURATION_OUT_OF_RANGE, REST
                    + "procedure p \"P\" revision 1 { applies to lark\n carry out rest(time = 0 s) //!\n" + SAFE,
                    REST + "procedure p \"P\" revision 1 { applies to lark\n carry out rest(time = 1 s)\n" + SAFE),
            new Whole(RemarkCode.DUPLICATE_NAME,
                    "procedure lark_acceptance \"Again\" revision 1 { //!\n applies to lark\n" + STAGE + SAFE,
                    "procedure lark \"Named as its family\" revision 1 { applies to lark\n" + STAGE + SAFE));

    private WholeTexts() {
    }
}
