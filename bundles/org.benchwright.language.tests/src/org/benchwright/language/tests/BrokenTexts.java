package org.benchwright.language.tests;

import static org.benchwright.language.RemarkCode.*;

import java.util.List;

import org.benchwright.language.RemarkCode;

/** The broken texts. */
final class BrokenTexts {

    private static final String MODBUS = Bench.FAMILY.substring(Bench.FAMILY.indexOf("watched by modbus"),
            Bench.FAMILY.indexOf("    stop stays")).strip();


    static final List<BrokenText> ALL = List.of(
            // names that lead nowhere
            broken(UNKNOWN_FAMILY, "applies to lark", "applies to lork", "applies to lark_base"),
            broken(UNKNOWN_FAMILY, "like lark_base", "like lark_bose", ""),
            broken(UNKNOWN_PROCEDURE, "hazard mains danger", "retest of nothing, repeats power_up hazard mains danger",
                    "hazard mains danger", "retest"),
            broken(UNKNOWN_LAMP, "expect pwr steady", "expect pwrr steady", "expect lamp pwr steady"),
            broken(UNKNOWN_DISPLAY, "code \"rn\"", "cod \"rn\"", "display code \"rn\""),
            broken(UNKNOWN_MODE, "keep mode run", "keep mode running", "keep mode faulted"),
            broken(UNKNOWN_PROTECTED_ITEM, "protect owner_program", "protect owners_program",
                    "protect owner_program, fault_log"),
            broken(UNKNOWN_PROTECTED_ITEM, "erase only fault_log", "erase only fault_logs", ""),
            broken(UNKNOWN_LOAD_ITEM, "load only bench_program", "load only owner_program", ""),
            broken(UNKNOWN_FAULT, "reveals W01", "reveals W1", "reveals W01"),
            broken(UNKNOWN_HAZARD, "with hazard charge", "with hazard charges", "with hazard charge, mains"),
            broken(UNKNOWN_INSTRUMENT, "measure residual with meter", "measure residual with mater", ""),
            broken(UNKNOWN_MARK, "within 2 s of on", "within 2 s of off", ""),
            broken(UNKNOWN_STEP_OR_STAGE, "when stopped go to read_log", "when stopped go to readlog",
                    "when stopped go to log"),
            broken(UNKNOWN_STEP_OR_STAGE, "when stopped go to read_log", "when stopped go to drain",
                    "when stopped go to log"),
            broken(UNKNOWN_VALUE, "judge shown - applied", "judge shown - given", "judge (shown - applied)"),
            broken(LISTED_TWICE, "protect owner_program", "protect owner_program, owner_program",
                    "protect owner_program, fault_log"),
            broken(LISTED_TWICE, "green or red \"Health\"", "green or green \"Health\"", ""),

            // names
            broken(DUPLICATE_NAME, "lamp flt marked", "lamp pwr green \"Power again\" lamp flt marked",
                    "lamp flt2 red \"x\" lamp flt marked"),
            broken(DUPLICATE_NAME, "family lark \"", "family lark_base \"Again\" {} family lark \"",
                    "family lark_other \"Other\" {} family lark \""),
            broken(DUPLICATE_NAME, "step fit \"", "step read_log \"Twice\" { wait 1 s } step fit \"",
                    "step mains \"Named as a hazard\" { wait 1 s } step fit \""),
            broken(DUPLICATE_NAME, "mark begun", "mark on", "", "mark on \"Press as you turn"),
            broken(CASE_ONLY_DIFFERENCE, "modes stopped, run, faulted", "modes stopped, run, Run, faulted",
                    "modes stopped, run, faulted, failed"),

            // families
            broken(CYCLIC_LIKE, "family lark_base \"Lark series\" {", "family lark_base \"Lark series\" like lark {", ""),
            broken(CYCLIC_LIKE, "like lark_base", "like lark", ""),
            broken(BAD_SERIAL_MASK, "serial \"LK-####\"", "serial \"\"", "serial \"@*-####\""),
            broken(GROUP_TOO_LARGE, "out 0 .. 7", "out 0 .. 2000000000", "out 0 .. 1023"),
            broken(LIMITS_INVERTED, "out 0 .. 7", "out 7 .. 0", "out 7 .. 7"),
            broken(COUNT_NOT_POSITIVE, "of 2 characters", "of 0 characters", "of 3 characters"),
            broken(COLOUR_NOT_OF_LAMP, "expect pwr steady", "expect pwr red steady", "expect pwr green steady"),
            broken(COLOUR_NOT_SAID, "shows ok green steady", "shows ok steady", "shows ok off"),
            broken(NO_SUCH_LAMP_IN_GROUP, "expect out 3 steady", "expect out 8 steady", "expect out 7 steady"),
            broken(NO_SUCH_LAMP_IN_GROUP, "expect pwr steady", "expect pwr 1 steady", ""),
            broken(DISPLAY_TEXT_TOO_LONG, "code \"01\"", "code \"012\"", "code \"0\""),
            broken(MODE_NEVER_SHOWN, "keep mode run", "keep mode stopped", "keep mode faulted"),

            // amounts
            broken(UNKNOWN_UNIT, "limits at most 5 V", "limits at most 5 volts", "limits at most 5000mV"),
            broken(UNKNOWN_UNIT, "takes 3 min", "takes 3 minutes", "takes 3min"),
            broken(WRONG_DIMENSION, "takes 3 min", "takes 3 V", "takes 180 s"),
            broken(WRONG_DIMENSION, "limits at most 5 V", "limits at most 5 A", "limits at most 5000 mV"),
            broken(WRONG_DIMENSION, "revealed at 90 %", "revealed at 90 h", ""),
            broken(WRONG_DIMENSION, "judge shown - applied, limits -0.016 .. +0.016 mA",
                    "judge shown - applied, limits -1 .. +1 V",
                    "judge shown - applied + 0 uA, limits -16 .. +16 uA"),
            broken(DURATION_OUT_OF_RANGE, "wait 5 min", "wait 0 min", "wait 0.001 s"),
            broken(DURATION_OUT_OF_RANGE, "valid 12 h", "valid 999999999999999999 d", "valid 366 d"),
            broken(OFFSET_UNIT_IN_TOLERANCE, "limits 18 .. 28 degC", "limits around 23 degC, tolerance -5 degC .. +5 degC",
                    "limits around 23 degC, tolerance -5 .. +5 K"),
            broken(OFFSET_UNIT_IN_TOLERANCE, "limits 18 .. 28 degC", "limits around 23 degC, tolerance -5 % .. +5 %", ""),
            broken(LIMITS_INVERTED, "limits 23.5 .. 24.5 V", "limits 24.5 .. 23.5 V", "limits 23500 mV .. 24.5 V"),
            broken(TOLERANCE_EXCLUDES_NOMINAL, "tolerance -15 % .. +20 %", "tolerance +15 % .. +20 %",
                    "tolerance 0 % .. +20 %"),

            broken(NOMINAL_ZERO, "supply 24 V dc", "supply 0 V dc", "supply 48 V dc"),

            // expectations
            broken(EXPECTATION_WITHOUT_TIME, "expect mode run within 30 s of begun", "expect mode run", ""),
            broken(MARK_NOT_SAID, "within 30 s of begun", "within 30 s", ""),
            broken(MARK_NOT_SAID, "from 10 s of on, lasting 5 s", "from 10 s, lasting 5 s", ""),
            broken(MARK_NOT_BEFORE, "within 30 s of begun", "within 30 s of on", ""),
            broken(MARK_NOT_BEFORE, "mark on \"Press as you close the switch.\"\n            expect pwr steady within 2 s of on",
                    "expect pwr steady within 2 s of on\n            mark on \"Press as you close the switch.\"", ""),
            broken(DEADLINE_TOO_SHORT_FOR_HAND, "within 2 s of on", "within 0.9 s of on", "within 1 s of on"),
            broken(DEADLINE_LONGER_THAN_STAGE, "lasting 5 s", "lasting 10 min", "lasting 9 min"),

            broken(EXPECTATIONS_CONTRADICT, "expect flt off from 10 s of on",
                    "expect mode faulted within 10 s of on\n            expect flt off from 10 s of on",
                    "expect mode faulted within 9 s of on\n            expect flt off from 10 s of on", "expect flt off"),

            // measurements
            broken(LIMITS_NOT_SAID, "with meter, limits at most 5 V", "with meter", "with meter, limits at least 5 V",
                    "measure residual"),
            broken(LIMITS_NOT_SAID, "reading, limits 18 .. 28 degC", "reading", ""),
            broken(LIMITS_WITHOUT_READING, "reading, limits 18 .. 28 degC", ", limits 18 .. 28 degC", "",
                    "precondition ambient"),
            broken(INSTRUMENT_NOT_SAID, "measure residual with meter", "measure residual", ""),
            broken(INSTRUMENT_ONLY_GIVES, "measure residual with meter, limits at most 5 V",
                    "measure residual with calibrator, limits at most 5 mA", ""),
            broken(INSTRUMENT_ONLY_READS, "wait 5 min", "apply 5 V with meter", "apply 5 mA with calibrator"),
            broken(INSTRUMENT_ONLY_READS, "20 mA with calibrator", "20 V with meter", ""),
            broken(COVERAGE_NOT_POSITIVE, "0.05 V, coverage 2", "0.05 V, coverage 0", "0.05 V, coverage 1.96"),
            broken(UNCERTAINTY_NEGATIVE, "at most 0.05 V", "at most -0.05 V", "at most 0 V"),
            broken(UNCERTAINTY_NOT_SAID, "up to 60 V, uncertainty at most 0.05 V, coverage 2", "up to 60 V",
                    "up to 60 V, uncertainty at most 50 mV", "measure supply_volts"),
            broken(LIMITS_BEYOND_INSTRUMENT, "up to 60 V", "up to 24 V", "up to 24500 mV", "measure supply_volts"),
            broken(LIMITS_BEYOND_INSTRUMENT, "up to 60 V", "from 1 .. 24.4 V", "from 0 .. 60 V", "measure supply_volts"),
            broken(LIMITS_BEYOND_INSTRUMENT, "wait 5 min", "apply 25 mA with calibrator", "apply 24 mA with calibrator"),
            broken(GUARD_BANDS_MEET, "at most 0.05 V", "at most 0.51 V", "at most 0.499 V", "measure supply_volts"),
            broken(GUARD_BANDS_MEET, "at most 0.05 V", "at most 0.5 V", "at most 0.4999 V", "measure supply_volts"),
            broken(NEVER_UNDECIDED, "decide guarded both ways\n                or conclude undecided",
                    "decide guarded\n                or conclude undecided", "", "when undecided"),
            broken(UNDECIDED_WITHOUT_OUTCOME, "or go to read_log", "or conclude rejected \"Off.\"",
                    "or conclude undecided \"Off.\"",
                    "judge shown"),
            broken(COUNT_NOT_POSITIVE, "measure again at most 1", "measure again at most 0", "measure again at most 2"),
            broken(UNIT_NOT_SAID, "judge shown - applied", "judge shown - channel", "judge shown - 4 mA"),
            broken(UNIT_NOT_SAID, "4, 12, 20 mA with calibrator", "4, 12, 20 with calibrator", ""),
            broken(RANGE_NOT_REACHED, "channel 1 .. 8", "channel 1.5 .. 8", "channel 1.5 .. 8.50", "for each channel"),
            broken(GRID_TOO_LARGE, "channel 1 .. 8", "channel 1 .. 334", "channel 1 .. 333", "for each channel"),
            broken(LIMITS_INVERTED, "channel 1 .. 8", "channel 8 .. 1", "channel 8 .. 8"),

            // outcomes
            broken(NO_OUTCOME, "otherwise conclude undecided \"Could not be carried out.\"", "", "", "precondition strap"),
            broken(NO_OUTCOME, "otherwise conclude undecided \"Could not be carried out.\"", "", "",
                    "confirm \"The cover is on.\""),
            broken(NO_OUTCOME, "otherwise conclude undecided \"Could not be carried out.\"", "", "", "fits unit"),
            broken(NO_OUTCOME, "otherwise conclude undecided \"Could not be carried out.\"", "", "", "begin again"),
            broken(COUNT_NOT_POSITIVE, "go to matched, at most 2", "go to matched, at most 0", "go to matched, at most 1"),
            broken(COUNT_NOT_POSITIVE, "or begin again at most 1", "or begin again at most 0", ""),
            broken(COUNT_NOT_POSITIVE, "revision 3", "revision 0", "revision 1"),
            broken(CONCLUSION_WITHOUT_REASON, "otherwise conclude rejected \"Self-check failed.\"",
                    "otherwise conclude rejected", ""),

            broken(FAILURE_ACCEPTED, "otherwise conclude rejected \"Self-check failed.\"", "otherwise conclude accepted",
                    ""),
            broken(PRECONDITION_NOT_CONCLUDED, "otherwise conclude undecided \"Could not be carried out.\"",
                    "otherwise go to read_log",
                    "otherwise conclude rejected \"Could not be carried out.\""),
            broken(CONCLUDED_IN_MAKE_SAFE, "wait 5 min", "conclude rejected \"Opened.\"", ""),
            broken(MAKE_SAFE_NEEDS_RELEASE, "or release by supervisor \"Nobody touches it.\"",
                    "or conclude rejected \"Still charged.\"",
                    "or go to off, at most 1, or release by supervisor \"Nobody touches it.\"", "measure residual"),
            broken(NEVER_UNDECIDED, "decide guarded both ways\n                or go to read_log",
                    "decide guarded\n                or go to read_log when undecided conclude undecided \"Close.\"", "",
                    "or go to read_log when undecided"),

            // soaks
            broken(SOAK_KEEPS_NOTHING, "keep mode run", "", "keep ok green steady, mode run", "soak endurance"),
            broken(SOAK_UNOBSERVED, "watch every 10 s, stop after 2 bad, silent after 3 missed\n        look every 24 h, tolerance 2 h, unless watched", "", "look every 24 h", "soak endurance"),
            broken(SOAK_WHILE_OFF, "release by second person", "isolates supply release by second person", "",
                    "soak endurance"),
            broken(LOOK_LONGER_THAN_SOAK, "look every 24 h", "look every 73 h", "look every 72 h"),
            broken(LOOK_LONGER_THAN_SOAK, "gap at most 2 h", "gap at most 73 h", "gap at most 72 h"),
            broken(SOAK_RELEASED, "when stopped go to read_log", "when stopped release by supervisor \"Go on.\"",
                    "when stopped go to read_log, at most 1, or conclude rejected \"Stopped.\""),
            broken(STOP_NOT_DECLARED, "stop stays until \"somebody restarts the unit\"", "", "stop restarts by itself",
                    "soak endurance"),
            broken(LEVEL_OUT_OF_RANGE, "revealed at 90 %", "revealed at 100 %", "revealed at 89 %"),
            broken(CLAIM_UNSUPPORTED, "every 31 h is", "every 32 h is", "every 31.2 h is"),
            broken(CLAIM_UNSUPPORTED, "lasting 72 h", "lasting 71 h", "lasting 72 h", "claims"),
            broken(WATCH_INCOMPLETE, "watch every 10 s, stop after 2 bad, silent", "watch every 10 s, silent", ""),

            // what a watch reads
            broken(UNKNOWN_MODE, "mode run when", "mode ran when", ""),
            broken(UNKNOWN_LAMP, "lamp flt lit", "lamp fault lit", ""),
            broken(POINT_ADDRESS, "coil 5 is", "coil 65536 is", "coil 65535 is"),
            broken(POINT_ADDRESS, "input register 30 signed 16", "input register 65535 signed 32",
                    "input register 65534 signed 32"),
            broken(POINT_BITS, "signed 16, scale", "signed 24, scale", "signed 64, scale"),
            broken(POINT_BITS, "signed 16, scale", "float 16, scale", "float 32, scale"),
            broken(POINT_VALUE, "unsigned 16 is 2", "unsigned 16 is 65536", "unsigned 16 is 65535"),
            broken(POINT_VALUE, "unsigned 16 is 2", "unsigned 16 is on", ""),
            broken(POINT_VALUE, "unsigned 16 is 2", "signed 16 is -32769", "signed 16 is -32768"),
            broken(POINT_VALUE, "coil 5 is on", "coil 5 is 1", "coil 5 is off"),
            broken(POINT_NODE, MODBUS, node("Unit.Mode"), node("ns=2;s=Unit.Mode"), "node"),
            broken(POINT_NODE, MODBUS, node("ns=65536;s=Mode"), node("ns=65535;s=Mode"), "node"),
            broken(POINT_NODE, MODBUS, node("ns=2;i=4294967296"), node("ns=2;i=4294967295"), "node"),
            broken(POINT_NODE, MODBUS, node("i=-1"), node("i=0"), "node"),
            broken(POINT_NODE, MODBUS, node("g=09087e75"), node("g=09087e75-8e5e-499b-954f-f2a9603db28a"), "node"),
            broken(POINT_NODE, MODBUS, node("b=M/Rb!"), node("b=M/RbKBsRVkePCePcx24oRA=="), "node"),
            broken(POINT_NODE, MODBUS, node("ns=2;s="), node("s= "), "node"),
            broken(POINT_OTHER_PROTOCOL, "coil 5 is on", "node \"ns=2;s=Flt\" is on", ""),
            broken(POINTS_OVERLAP, "input register 30 signed 16, scale 0.1 V",
                    "input register 30 signed 16, scale 0.1 V condition ambient from input register 29 signed 32, scale 1 degC",
                    "input register 30 signed 16, scale 0.1 V condition ambient from input register 31 signed 32, scale 1 degC", "condition ambient"),
            broken(POINT_TWICE, "condition supply from",
                    "condition supply from input register 40 signed 16, scale 0.1 V condition supply from",
                    "condition ambient from input register 40 signed 16, scale 0.1 degC condition supply from"),
            broken(POINT_ORDER, "input register 30 signed 16", "input register 30 signed 16 low first",
                    "input register 30 signed 32 low first"),
            broken(POINT_ORDER, "input register 30 signed 16", "input register 30 signed 16 low first swapped",
                    "input register 30 signed 16 swapped"),
            broken(POINT_AMBIGUOUS, "mode run when", "mode stopped when holding register 7 unsigned 16 is 2 mode run when",
                    "mode stopped when holding register 7 unsigned 16 is 1 mode run when", "mode run when"),
            broken(POINT_SCALE, "scale 0.1 V", "scale 0 V", "scale -0.1 V"),
            broken(POINT_SCALE, "input register 30 signed 16, scale", "coil 30, scale", ""),
            broken(WRONG_DIMENSION, "scale 0.1 V", "scale 0.1 V, offset 2 A", "scale 0.1 V, offset 2 mV"),
            broken(WRONG_DIMENSION, "signed 16, scale 0.1 V", "signed 16, scale 0.1 A", "signed 16, scale 100 mV",
                    "conditions ambient"),
            broken(NO_SUCH_LAMP_IN_GROUP, "lamp flt lit", "lamp flt 1 lit", ""),
            broken(WATCH_CANNOT_TELL, "mode run when holding", "mode faulted when holding", "", "watch every"),

            // protected items
            broken(PROTECTED_ITEM_ERASED, "erase only fault_log\n            spare owner_program",
                    "erase only owner_program", "release by supervisor \"The owner agrees.\" enter owner_program erase only owner_program"),
            broken(PROTECTED_ITEM_REPLACED, "load only bench_program\n            leave out permanent_copy",
                    "load only bench_program, permanent_copy",
                    "release by supervisor \"The owner agrees.\" load only bench_program, permanent_copy"),
            broken(PROTECTED_ITEM_NOT_NAMED, "erase only fault_log\n            spare owner_program",
                    "erase only fault_log", ""),
            broken(CHOSEN_AND_SPARED, "spare owner_program", "spare owner_program, fault_log", "", "erase only"),
            broken(ERASED_BEFORE_RECORDED, "enter fault_log as found", "", "", "erase only"),
            broken(ERASED_BEFORE_RECORDED, "enter fault_log as found", "enter owner_program as found", "", "erase only"),

            // completeness
            broken(MISSING_FAMILY, "applies to lark", "", "", "procedure lark_acceptance"),
            broken(MISSING_REVISION, "revision 3", "", "revision 4", "procedure lark_acceptance"),
            broken(STAGE_WITHOUT_STEPS, "stage read_log", "stage later \"Later\" on demand {} stage read_log", ""),
            broken(STEP_WITHOUT_CHECK, "{ isolates supply }", "{ isolates supply } step idle \"Rest.\" {}",
                    "{ isolates supply } step idle \"Rest.\" { wait 1 s }"),
            broken(EMPTY_TEXT, "step fit \"Fit the unit.\"", "step fit \" \"", ""),
            broken(HAZARD_INCOMPLETE, "can \"kill\" so", "so", ""),
            broken(UNUSED_HAZARD, "with hazard charge", "", "", "hazard charge"),
            broken(UNUSED_INSTRUMENT, "20 mA with calibrator", "20 mA", "", "instrument calibrator"),
            broken(UNUSED_MARK, "expect mode run within 30 s of begun", "wait 1 s", "", "mark begun"),

            // ways
            broken(HAZARD_NOT_SHOWN, "takes 3 min with hazard mains", "takes 3 min", "takes 3 min with hazard charge",
                    "energises supply"),
            broken(ENERGISED_AT_END, "{ isolates supply }", "{ wait 1 s }", "", "make safe"),
            broken(ENERGISED_WHILE_FITTING, "step lamps \"Switch on.\"",
                    "step early \"On.\" { energises supply fits unit } step lamps \"Switch on.\"",
                    "step early \"On.\" { energises supply isolates supply removes unit } step lamps \"Switch on.\""),
            broken(NO_CONCLUSION, "conclude rejected \"Stopped by itself.\"", "wait 1 s",
                    "go to drop_out } step drop_out \"End.\" { conclude accepted",
                    "stage read_log"),
            broken(NO_CONCLUSION, "}\n    conclude accepted", "}", "", "procedure lark_acceptance"),
            broken(STAGE_UNREACHABLE, "stage read_log",
                    "stage never \"Never\" on demand { step no \"No.\" { conclude accepted } } stage read_log",
                    "stage always \"Always\" { step yes \"Yes.\" { wait 1 s } } stage read_log"),
            broken(STEP_UNREACHABLE, "conclude rejected \"Stopped by itself.\"",
                    "conclude rejected \"Stopped by itself.\" } step more \"More.\" { wait 1 s", "", "step more"),
            broken(STATEMENT_UNREACHABLE, "conclude rejected \"Stopped by itself.\"",
                    "conclude rejected \"Stopped by itself.\" wait 1 s", ""),
            broken(ENDLESS_REPEAT, "go to matched, at most 2, or conclude undecided \"Does not fit.\"", "go to matched",
                    "go to blank", "go to matched"),
            broken(ENDLESS_REPEAT, "conclude rejected \"Stopped by itself.\"", "go to endurance",
                    "go to endurance, at most 1, or conclude rejected \"Stopped again.\""));

    private BrokenTexts() {
    }

    /** A family that is watched by the other protocol, its mode in that node. */
    private static String node(String id) {
        return "watched by opcua { mode run when node \"" + id + "\" is 2 }";
    }

    private static BrokenText broken(RemarkCode code, String sound, String broken, String nearMiss) {
        return new BrokenText(code, sound, broken, nearMiss, broken);
    }

    private static BrokenText broken(RemarkCode code, String sound, String broken, String nearMiss, String place) {
        return new BrokenText(code, sound, broken, nearMiss, place);
    }
}
