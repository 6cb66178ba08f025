package org.benchwright.language.tests;

import static org.benchwright.language.RemarkCode.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.Checked;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Where somebody who doubts the language would try it: each text earns exactly these remarks, and one without errors has a
 * plan that the engine begins.
 */
class CornersTest {

    private static final String SHARED = """
            shared stage rail_check "Rail" for lark_base (rail in V, time in s) {
                instrument gauge "Gauge" reads V up to 60 V
                step settle "Let it settle." { wait time }
                step rail "Measure the rail." { measure rail_volts with gauge, limits around rail, tolerance -5 % .. +5 % }
            }
            """;
    private static final String BETWEEN = """
            shared stage between "Between" for lark_base (bottom in V, top in V, rate in Hz, chance in %) {
                instrument gauge "Gauge" reads V up to 60 V, uncertainty at most 0.01 V, coverage 2
                step look "Look." {
                    mark seen "Press."
                    expect flt flashing rate within 5 s of seen
                    measure low_volts with gauge, limits bottom .. top
                    measure high_volts with gauge, limits 1 .. 2 V, decide guarded, risk at most chance
                    derive apart as high_volts - low_volts, limits bottom .. top
                }
            }
            """;
    private static final String LIMITS = "limits 23.5 .. 24.5 V";
    private static final String ROOM = "reading, limits 18 .. 28 degC";
    private static final String EXPECTED = "expect flt off from 10 s of on, lasting 5 s";

    /** A text beside the sound ones, or none, and what is remarked on. */
    private record Corner(String says, String family, String procedure, String beside, Set<RemarkCode> codes) {
        /** One more change of the procedure. */
        private Corner with(String from, String to, RemarkCode... earned) {
            assertTrue(procedure.contains(from), from);
            return new Corner(says + " ... " + to, family, procedure.replace(from, to), beside, CornersTest.codes(earned));
        }

        @Override
        public String toString() {
            return says.replaceAll("\\s+", " ");
        }
    }

    private static Corner text(String from, String to, RemarkCode... codes) {
        assertTrue(Bench.PROCEDURE.contains(from), from);
        return new Corner(to, Bench.FAMILY, Bench.PROCEDURE.replace(from, to), "", codes(codes));
    }

    private static Corner statement(String statement, RemarkCode... codes) {
        return text("reveals W01", extra(statement), codes);
    }

    /** A step of its own behind the one that switches on, and one more. */
    private static String extra(String statement) {
        return "reveals W01 } step extra \"Extra.\" { " + statement
                + " otherwise conclude undecided \"No.\" } step after \"After.\" { confirm \"It is so.\"";
    }

    private static Corner family(String from, String to, RemarkCode... codes) {
        assertTrue(Bench.FAMILY.contains(from), from);
        return new Corner(to, Bench.FAMILY.replace(from, to), Bench.PROCEDURE, "", codes(codes));
    }

    /** In a family whose units may have a fan tray. */
    private static Corner withOption(String from, String to, RemarkCode... codes) {
        return new Corner(to, Bench.FAMILY.replace("loadable bench_program",
                "option fan \"Fan tray\" loadable bench_program"),
                text(from, to).procedure(), "", codes(codes));
    }

    /** Two temperatures are measured before. */
    private static Corner temperatures(String statement, RemarkCode... codes) {
        return new Corner(statement, Bench.FAMILY,
                statement("measure cold with thermo, limits 0 .. 50 degC measure warm with thermo, limits 0 .. 50 degC "
                + statement).procedure().replace("instrument meter",
                        "instrument thermo \"Thermometer\" reads degC from -20 .. 100 degC, uncertainty at most 0.5 K, "
                + "coverage 2 instrument meter"), "", codes(codes));
    }

    private static Corner thermometer(String reads, RemarkCode... codes) {
        String instrument = "instrument meter \"Multimeter\"";
        return new Corner(reads, Bench.FAMILY, Bench.PROCEDURE.replace(instrument, "instrument thermo \"Thermometer\" "
                + reads + " " + instrument)
                .replace(ROOM, "reading with thermo, limits 18 .. 28 degC"), "", codes(codes));
    }

    private static Corner carryOut(String carryOut, String shared, RemarkCode... codes) {
        return new Corner(carryOut, Bench.FAMILY,
                Bench.PROCEDURE.replace("    soak endurance", "    " + carryOut + "\n    soak endurance"), shared,
                codes(codes));
    }

    private static Set<RemarkCode> codes(RemarkCode... codes) {
        return List.of(codes).stream().collect(Collectors.toCollection(() -> EnumSet.noneOf(RemarkCode.class)));
    }

    static Stream<Corner> corners() {
        return Stream.of(
                // units, temperatures and their differences
                text(LIMITS, "limits 23500 mV .. 24.5 V"),
                text(LIMITS, "limits around 24 V, tolerance -2 % .. +2 %"),
                text(LIMITS, "limits 23.5 .. 24.5", SYNTAX),
                text(LIMITS, "limits around 24 V, tolerance -2 .. +2 K", WRONG_DIMENSION),
                text(LIMITS, "limits 0 .. 999999999999999999999999 V", GUARD_BAND_THIN, LIMITS_BEYOND_INSTRUMENT),
                text(ROOM, "reading, limits 291.15 .. 301.15 K"),
                text(ROOM, "reading, limits 64.4 .. 82.4 degF", UNKNOWN_UNIT),
                text(ROOM, "reading, limits around 23 degC, tolerance -5 .. +5 degC", OFFSET_UNIT_IN_TOLERANCE),
                text(ROOM, "reading, limits around 23 degC, tolerance -5 .. +5 K"),
                thermometer("reads degC up to 100 degC, uncertainty at most 0.5 K, coverage 2"),
                thermometer("reads degC from -20 .. 100 degC, uncertainty at most 0.5 degC, coverage 2",
                        OFFSET_UNIT_IN_TOLERANCE),
                thermometer("reads K up to 400 K, uncertainty at most 0.5 K"),
                thermometer("reads degC from -20 .. 100 degC, uncertainty at most 1 %", WRONG_DIMENSION),
                text("wait 5 min", "wait 0.5 min"),
                text("wait 5 min", "wait -5 min", DURATION_OUT_OF_RANGE),
                text("wait 5 min", "wait 1 month", UNKNOWN_UNIT),
                temperatures("derive rise as warm - cold, limits -1 .. +1 K"),
                temperatures("derive rise as warm - cold, limits -1 .. +1 degC", OFFSET_UNIT_IN_TOLERANCE),
                temperatures("derive rise as warm - cold - 1 K, limits at most 5 degC", OFFSET_UNIT_IN_TOLERANCE),
                temperatures("derive rise as warm - cold, limits -1 .. +1 K derive twice as rise + rise, limits at most 5 degC", OFFSET_UNIT_IN_TOLERANCE),
                temperatures("derive sum as warm + cold, limits 0 .. 100 degC", OFFSET_UNIT_IN_TOLERANCE),
                temperatures("derive sum as warm + 5 degC, limits 0 .. 100 degC", OFFSET_UNIT_IN_TOLERANCE),
                temperatures("derive rise as 1 K + (warm - cold), limits -1 .. +2 K"),
                temperatures("derive rise as 1 K + (warm - cold), limits -1 .. +2 degC", OFFSET_UNIT_IN_TOLERANCE),
                temperatures("derive rise as 1 K - (warm - cold), limits -1 .. +2 degC", OFFSET_UNIT_IN_TOLERANCE),
                temperatures("derive cooler as cold + (warm - cold), limits 0 .. 50 degC"),
                temperatures("derive cooler as cold - (warm - cold), limits 0 .. 50 degC"),
                temperatures("derive warmer as warm + 5 K, limits 0 .. 100 degC"),
                temperatures("derive own as own - cold, limits 0 .. 100 K", VALUE_NOT_MEASURED),
                temperatures("for each given 10, 20 degC measure shown in degC judge shown - given, limits -1 .. +1 degC",
                        OFFSET_UNIT_IN_TOLERANCE),
                temperatures("for each given 10, 20 degC measure shown in degC judge shown - given, limits -1 .. +1 K"),
                // lamps that flash
                text(EXPECTED, "expect flt flashing slow within 5 s of on"),
                text(EXPECTED, "expect flt flashing 1 Hz tolerance 20 % within 5 s of on"),
                text(EXPECTED, "expect flt flashing 20 Hz tolerance 0 % within 5 s of on"),
                text(EXPECTED, "expect flt flashing 0 Hz within 5 s of on", FLASH_RATE_OUT_OF_RANGE),
                text(EXPECTED, "expect flt flashing -1 Hz within 5 s of on", FLASH_RATE_OUT_OF_RANGE),
                text(EXPECTED, "expect flt flashing 21 Hz within 5 s of on", FLASH_RATE_OUT_OF_RANGE),
                text(EXPECTED, "expect flt flashing 1 Hz tolerance 100 % within 5 s of on", FLASH_RATE_OUT_OF_RANGE),
                text(EXPECTED, "expect flt flashing 1 Hz tolerance -5 % within 5 s of on", FLASH_RATE_OUT_OF_RANGE),
                text(EXPECTED, "expect flt flashing 1 Hz tolerance 0.2 Hz within 5 s of on", WRONG_DIMENSION),
                // deadlines
                text(EXPECTED, "expect flt off within 5 s", MARK_NOT_SAID),
                text(EXPECTED, "expect flt off from 10 s, lasting 5 s", MARK_NOT_SAID),
                text(EXPECTED, "expect flt off lasting 5 s", MARK_NOT_SAID),
                text(EXPECTED, "expect any of { flt off } within 5 s of on"),
                text(EXPECTED, "expect out 9 steady within 5 s of on", NO_SUCH_LAMP_IN_GROUP),
                text(EXPECTED, "expect flt off from 0 s of on, lasting 1 s"),
                text(EXPECTED, "expect flt off from 0.5 s of on", DEADLINE_TOO_SHORT_FOR_HAND),
                text(EXPECTED, "expect flt off from 2 s of on, lasting 500 ms", DEADLINE_TOO_SHORT_FOR_HAND),
                text(EXPECTED, "expect pwr off within 2 s of on", EXPECTATIONS_CONTRADICT),
                text(EXPECTED, "expect pwr off from 1 s of on, lasting 1 s", EXPECTATIONS_CONTRADICT),
                text(EXPECTED, "expect pwr off from 3 s of on"),
                text(EXPECTED, "expect pwr flashing or flt off within 2 s of on"),
                text(EXPECTED, "expect ok red steady, then off, within 10 s of on", EXPECTATIONS_CONTRADICT),
                text(EXPECTED, "expect ok green steady, then off, within 9 s of on"),
                text(EXPECTED, "expect mode faulted within 10 s of on expect flt off within 10 s of on",
                        EXPECTATIONS_CONTRADICT),
                text(EXPECTED, "expect pwr flashing slow within 5 s of on expect pwr flashing 0.5 Hz within 5 s of on"),
                text(EXPECTED, "expect pwr flashing slow within 5 s of on expect pwr flashing normal within 5 s of on",
                        EXPECTATIONS_CONTRADICT),
                text(EXPECTED, "confirm \"It hums.\" expect pwr off within 2 s of on"),
                text("lasting at most 10 min", "lasting at most 2 min 30 s", SYNTAX),
                text("enter fault_log as found", "wait 20 min enter fault_log as found", STEPS_LONGER_THAN_STAGE),
                text("enter fault_log as found", "wait 7 min enter fault_log as found"),
                // values, instruments, risks
                statement("derive d as supply_volts - 1 A, limits at most 1 V", WRONG_DIMENSION),
                statement("derive d as supply_volts - residual, limits at most 30 V", VALUE_NOT_MEASURED),
                statement("measure u with meter, blind, limits at most 30 V"),
                statement("measure u with meter, blind, mean of 5 readings, limits at most 30 V"),
                statement("measure u with meter, mean of 5 readings, blind, limits at most 30 V", SYNTAX),
                statement("measure blind with meter, limits at most 30 V"),
                statement("measure u with meter, mean of 5 readings, limits at most 30 V"),
                statement("measure u with meter, mean of 1 readings, limits at most 30 V", MEAN_OF_ONE),
                statement("measure u with meter, limits at most 30 V, decide guarded, risk at most 0 %", LEVEL_OUT_OF_RANGE),
                statement("measure u with meter, limits at most 30 V, decide guarded, risk at most 5 V", WRONG_DIMENSION),
                statement("measure u with meter, limits at most 30 V, decide simple, risk at most 5 %", RISK_EXCEEDED),
                statement("apply 10 A with meter", WRONG_DIMENSION, INSTRUMENT_ONLY_READS),
                statement("apply 30 mA with calibrator", LIMITS_BEYOND_INSTRUMENT),
                text("4, 12, 20 mA with calibrator", "4, 12, 24 mA with calibrator"),
                text("4, 12, 20 mA with calibrator", "4, 12, 25 mA with calibrator", LIMITS_BEYOND_INSTRUMENT),
                text("4, 12, 20 mA with calibrator", "4 .. 25 mA with calibrator", LIMITS_BEYOND_INSTRUMENT),
                statement("apply -5 mA with calibrator"),
                statement("apply 5 mA"),
                statement("measure u with meter, limits around 0 V, tolerance -5 % .. +5 %", NOMINAL_ZERO),
                statement("measure u with meter, limits around 0 V, tolerance -5 .. +5 mV"),
                family("supply 24 V dc", "supply 0 V dc", NOMINAL_ZERO),
                family("supply 24 V dc", "supply -48 V dc"),
                family("-15 % .. +20 %", "-3 .. +3 V"),
                family("-15 % .. +20 %", "-3 .. +3 A", WRONG_DIMENSION),
                text("up to 60 V", "up to -60 V", LIMITS_INVERTED),
                thermometer("reads degC up to 20 degC, uncertainty at most 0.5 K", LIMITS_BEYOND_INSTRUMENT),
                text("4, 12, 20 mA with calibrator", "4, 12, 20 mA", UNUSED_INSTRUMENT, INSTRUMENT_NOT_SAID),
                text("measure shown in mA, settle", "measure shown in mA with calibrator, settle", INSTRUMENT_ONLY_GIVES),
                text("measure shown in mA, settle", "measure shown in mA with meter, settle", WRONG_DIMENSION),
                text("limits -0.016 .. +0.016 mA", "limits -0.002 .. +0.002 mA", GUARD_BANDS_MEET),
                text("gives mA up to 24 mA, uncertainty at most 0.002 mA, coverage 2", "gives mA up to 24 mA",
                        UNCERTAINTY_NOT_SAID),
                text("judge shown - applied, limits -0.016 .. +0.016 mA", "judge shown, limits 1 .. 5 V")
                        .with("measure shown in mA", "measure shown in V", INSTRUMENT_NOT_SAID),
                text("judge shown - applied, limits -0.016 .. +0.016 mA, decide guarded both ways", "judge shown, limits 1 .. 5 V")
                        .with("measure shown in mA", "measure shown in V"),
                text("judge shown - applied, limits -0.016 .. +0.016 mA", "judge shown, limits 1 .. 5 V")
                        .with("measure shown in mA", "measure shown in V with meter"),
                thermometer("reads degC from -20 .. 100 degC").with("reveals W01",
                        extra("measure warm with thermo, limits 0 .. 50 degC derive warmer as warm + 1 K, limits 0 .. 60 degC, decide guarded"), UNCERTAINTY_NOT_SAID),
                // marks, lamps and values of one name in one step
                statement("mark u \"Press.\" measure u with meter, limits at most 30 V expect pwr steady within 5 s of u derive d as u + 1 V, limits at most 31 V"),
                statement("measure u with meter, limits at most 30 V mark u \"Press.\" expect pwr steady within 5 s of u derive pwr as u + 1 V, limits at most 31 V"),
                // branches
                statement("if fitted fan go to after", UNKNOWN_OPTION),
                statement("if seen \"It glows.\" go to supply", ENDLESS_REPEAT),
                statement("if not seen \"It glows.\" go to nowhere", UNKNOWN_STEP_OR_STAGE),
                statement("if not seen \"It glows.\" go to after"),
                text("stage read_log", "stage odd \"Odd\" on demand { step looked \"Look.\" { confirm \"So.\" conclude rejected \"Odd.\" } } stage read_log",
                        STAGE_UNREACHABLE),
                text("or go to read_log", "or go to heard } step gone \"Go on.\" { confirm \"So.\" } } stage odd \"Odd\" on demand { step heard \"Hear.\" { confirm \"So.\" "
                        + "conclude rejected \"Odd.\" } } stage more \"More\" { step on_again \"Go on.\" { confirm \"So.\""),
                text("or go to read_log", "or go to heard } step gone \"Go on.\" { confirm \"So.\" } } stage odd \"Odd\" on demand { step seen \"See.\" { confirm \"So.\" } "
                        + "step heard \"Hear.\" { confirm \"So.\" conclude rejected \"Odd.\" } } stage more \"More\" { step on_again \"Go on.\" { confirm \"So.\"", STEP_UNREACHABLE),
                text("stage power_up", "stage early \"Early\" on demand { step ended \"End.\" { confirm \"So.\" conclude rejected \"Odd.\" } } stage power_up")
                        .with("or go to read_log", "or go to early", ENDLESS_REPEAT),
                text("stage power_up", "stage early \"Early\" on demand { step ended \"End.\" { confirm \"So.\" conclude rejected \"Odd.\" } } stage power_up")
                        .with("or go to read_log", "or go to early, at most 1, or go to read_log"),
                // where nothing goes on, and where nobody may walk away
                text("otherwise conclude undecided \"Could not be carried out.\"", "otherwise go to read_log",
                        PRECONDITION_NOT_CONCLUDED),
                text("otherwise conclude undecided \"Could not be carried out.\"",
                        "otherwise release by supervisor \"Go on.\"", PRECONDITION_NOT_CONCLUDED, SOAK_RELEASED),
                text("otherwise conclude undecided \"Could not be carried out.\"", "otherwise conclude accepted",
                        FAILURE_ACCEPTED, CLAIM_WITHOUT_SOAK),
                text("{ isolates supply }", "{ isolates supply removes unit }")
                        .with("otherwise conclude undecided \"Could not be carried out.\"", "otherwise go to read_log",
                        PRECONDITION_NOT_CONCLUDED, MAKE_SAFE_NEEDS_RELEASE),
                text("{ isolates supply }", "{ isolates supply confirm \"It is dark.\" }")
                        .with("otherwise conclude undecided \"Could not be carried out.\"", "otherwise go to read_log",
                        PRECONDITION_NOT_CONCLUDED, MAKE_SAFE_NEEDS_RELEASE),
                text("{ isolates supply }", "{ isolates supply } step away \"Put it away.\" { }")
                        .with("otherwise conclude undecided \"Could not be carried out.\"", "otherwise go to read_log",
                        PRECONDITION_NOT_CONCLUDED, MAKE_SAFE_NEEDS_RELEASE, STEP_WITHOUT_CHECK),
                text("wait 5 min", "wait 5 min conclude rejected \"Opened.\"", CONCLUDED_IN_MAKE_SAFE,
                        STATEMENT_UNREACHABLE),
                statement("if seen \"It glows.\" go to extra, at most 2, or conclude accepted", CLAIM_WITHOUT_SOAK),
                // cards with nothing on them
                statement("release by supervisor \"\"", EMPTY_TEXT),
                statement("enter text \" \"", EMPTY_TEXT),
                statement("confirm \"\"", EMPTY_TEXT),
                statement("attach photo \"\"", EMPTY_TEXT),
                statement("confirm same \"\" and \"Type\"", EMPTY_TEXT),
                statement("if seen \"\" go to after", EMPTY_TEXT),
                text("\"Multimeter\"", "\"\"", EMPTY_TEXT),
                family("\"Fault log\"", "\" \"", EMPTY_TEXT),
                family("\"Bench program\"", "\"\"", EMPTY_TEXT),
                family("\"Output\"", "\"\"", EMPTY_TEXT),
                text("purpose \"Decide whether it works.\"", "purpose \"\"", EMPTY_TEXT),
                text("keep mode run", "keep code \"  \"", WATCH_CANNOT_TELL),
                // hands on the unit, and what it keeps
                statement("fits unit", ENERGISED_WHILE_FITTING),
                statement("erase only fault_log, fault_log", PROTECTED_ITEM_NOT_NAMED, ERASED_BEFORE_RECORDED, LISTED_TWICE),
                text("hazard mains danger", "hazard mains notice", HAZARD_NOT_SHOWN),
                text("takes 3 min with hazard mains", "takes 3 min with hazard mains, mains", LISTED_TWICE),
                text("revision 3 {", "revision 3 with hazard mains {"),
                withOption("step supply \"Measure",
                        "step warn \"Beware.\" only if fitted fan with hazard mains { confirm \"So.\" } step supply \"Measure"),
                withOption("step supply \"Measure the supply.\" takes 3 min with hazard mains",
                        "step warn \"Beware.\" only if fitted fan with hazard mains { confirm \"So.\" } "
                        + "step supply \"Measure the supply.\"", HAZARD_NOT_SHOWN),
                withOption("step supply \"Measure the supply.\" takes 3 min with hazard mains",
                        "step supply \"Measure the supply.\" only if fitted fan with hazard mains"),
                withOption("stage power_up", "stage fans \"Fans\" only if not fitted fan { step turns \"Look.\" only if fitted fan { confirm \"So.\" } } stage power_up", STEP_UNREACHABLE),
                withOption("stage power_up", "stage fans \"Fans\" only if fitted fan { step turns \"Look.\" only if fitted fan { confirm \"So.\" } } stage power_up"),
                withOption("stage power_up", "stage fans \"Fans\" only if seen \"x\" { step turns \"Look.\" only if not seen \"x\" { confirm \"So.\" } } stage power_up"),
                withOption("stage power_up", "stage warned \"Warned\" only if not fitted fan with hazard mains { step warn \"Beware.\" { confirm \"So.\" } } stage power_up"),
                // names and modes of families that are like each other
                family("lamps out", "lamp PWR green \"Another\" lamps out", CASE_ONLY_DIFFERENCE),
                family("lamps out", "lamp pwr blue \"The same\" lamps out"),
                family("fault W01", "mode faulted shows pwr off fault W01"),
                family("mode run shows", "mode run shows pwr steady mode run shows", DUPLICATE_NAME),
                family("mode run shows ok green steady, code \"rn\"",
                        "mode run shows mode stopped mode stopped shows mode run", MODE_NEVER_SHOWN),
                family("mode run shows ok green steady, code \"rn\"",
                        "mode run shows mode stopped mode stopped shows ok green steady"),
                // texts that are not what they look like
                text("\"Terminals are live.\"", "\"Terminals\u001b[2K are live.\"", SYNTAX),
                text("\"Terminals are live.\"", "\"Terminals\u0000 are live.\"", SYNTAX),
                text("\"Terminals are live.\"", "\"Terminals are \u202edael.\"", SYNTAX),
                text("\"Terminals are live.\"", "\"Terminals\tare \u5e26\u7535 \u05d7\u05d9.\""),
                // ends of lines
                text("applies to lark", "applies to lark // the\r// series\r"),
                text("applies to lark", "applies to lark // the series\r    /* all\rof it */"),
                text("applies to lark", "// the series\rapplies to lark"),
                text("conclude accepted", "conclude accepted // done\r"),
                // shared stages
                carryOut("carry out rail_check(rail = 24 V, time = 5 s)", SHARED),
                carryOut("carry out rail_check(rail = 24 A, time = 5 s)", SHARED, WRONG_DIMENSION),
                carryOut("carry out rail_check(rail = 24 V)", SHARED, ARGUMENT_MISSING),
                carryOut("carry out rail_check(rail = 24 V, rail = 5 V, time = 5 s)", SHARED, LISTED_TWICE),
                carryOut("carry out rail_check(rail = 24 V, tim = 5 s)", SHARED, ARGUMENT_MISSING, UNKNOWN_PARAMETER),
                carryOut("carry out rail_check(rail = 24 V, time = 5 s) carry out rail_check(rail = 12 V, time = 5 s)",
                        SHARED, DUPLICATE_NAME),
                carryOut("carry out rail_check(rail = 24 V, time = 5 s) carry out rail_check(rail = 12 V, time = 5 s) as second", SHARED),
                carryOut("carry out between(bottom = 3 V, top = 5 V, rate = 1 Hz, chance = 50 %)", BETWEEN),
                carryOut("carry out between(bottom = 5 V, top = 3 V, rate = 1 Hz, chance = 50 %)", BETWEEN, LIMITS_INVERTED),
                carryOut("carry out between(bottom = 5 V, top = 5001 mV, rate = 1 Hz, chance = 50 %)", BETWEEN),
                carryOut("carry out between(bottom = 5 V, top = 4999 mV, rate = 1 Hz, chance = 50 %)", BETWEEN,
                        LIMITS_INVERTED),
                carryOut("carry out between(bottom = 3 V, top = 5 V, rate = 100 Hz, chance = 50 %)", BETWEEN,
                        FLASH_RATE_OUT_OF_RANGE),
                carryOut("carry out between(bottom = 3 V, top = 5 V, rate = 1 Hz, chance = 500 %)", BETWEEN,
                        LEVEL_OUT_OF_RANGE),
                carryOut("carry out rail_check(rail = 24 V, time = -5 s)", SHARED, DURATION_OUT_OF_RANGE),
                carryOut("carry out nothing", SHARED, UNKNOWN_SHARED_STAGE),
                carryOut("carry out rail_check(rail = 24 V, time = 5 s)", SHARED.replace("lark_base (", "finch (")
                        + "family finch \"Finch\" {}", SHARED_FOR_OTHER_FAMILY),
                carryOut("carry out rail_check(rail = 24 V, time = 5 s)",
                        SHARED.replace("{ wait time }", "{ wait time go to supply }"), UNKNOWN_STEP_OR_STAGE,
                        STEP_UNREACHABLE, STAGE_UNREACHABLE),
                // imports
                text("procedure lark_acceptance", "import \"lark.procedure\" procedure lark_acceptance"),
                text("procedure lark_acceptance", "import \"nothing.family\" procedure lark_acceptance", IMPORT_NOT_FOUND),
                text("procedure lark_acceptance", "import \"lark.txt\" procedure lark_acceptance", IMPORT_NOT_FOUND),
                text("procedure lark_acceptance", "import \"lark.family\" import \"lark.family\" procedure lark_acceptance",
                        LISTED_TWICE),
                // claims and soaks
                text("every 31 h is revealed at 90 %", "every 1860 min is revealed at 90 %"),
                text("every 31 h is revealed at 90 %", "every 31 h is revealed at 0 %", LEVEL_OUT_OF_RANGE),
                text("every 31 h is revealed at 90 %", "every 0 h is revealed at 90 %", DURATION_OUT_OF_RANGE),
                text("every 31 h is revealed at 90 %", "every 31 V is revealed at 90 %", WRONG_DIMENSION),
                text("lasting 72 h witnessed", "lasting 72 h", SOAK_NOT_WITNESSED),
                text("watch every 10 s", "watch every 100 h", LOOK_LONGER_THAN_SOAK),
                text("or conclude undecided \"Does not fit.\"", "or conclude accepted", CLAIM_WITHOUT_SOAK,
                        FAILURE_ACCEPTED),
                text("when stopped go to read_log", "when stopped conclude accepted", CLAIM_WITHOUT_SOAK, FAILURE_ACCEPTED),
                text("gap at most 2 h, or begin again at most 1", "gap at most 2 h, or release by supervisor \"So.\"",
                        SOAK_RELEASED),
                text("gap at most 2 h, or begin again at most 1",
                        "gap at most 2 h, or begin again at most 1, or release by supervisor \"So.\"", SOAK_RELEASED),
                text("gap at most 2 h", "gap at most 72 h"),
                text("gap at most 2 h", "gap at most 73 h", LOOK_LONGER_THAN_SOAK),
                text("keep mode run", "keep mode run, ok green steady"),
                text("keep mode run", "keep mode run, ok red steady", EXPECTATIONS_CONTRADICT),
                text("keep mode run", "keep mode run, mode faulted", EXPECTATIONS_CONTRADICT),
                text("when stopped go to read_log", "when stopped go to endurance, at most 1, or go to read_log"),
                text("stop after 2 bad", "stop after 0 bad", COUNT_NOT_POSITIVE),
                text("silent after 3 missed", "silent after 0 missed", COUNT_NOT_POSITIVE),
                text("when stopped go to read_log",
                        "when stopped go to read_log when stopped conclude rejected \"Stopped.\"", LISTED_TWICE));
    }

    @ParameterizedTest
    @MethodSource("corners")
    void earnsTheseRemarksAndNoOther(Corner corner) {
        Checked checked = corner.beside().isEmpty() ? Bench.check(corner.family(), corner.procedure())
                : Bench.check(corner.family(), corner.procedure(), "shared.procedure", corner.beside());
        assertEquals(corner.codes(), checked.remarks().stream().map(Remark::code)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(RemarkCode.class))),
                () -> checked.remarks().toString());
        assertEquals(checked.hasErrors() ? 0 : 1, SoundPlans.of(checked).size());
    }
}
