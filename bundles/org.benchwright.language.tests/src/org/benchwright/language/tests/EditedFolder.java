package org.benchwright.language.tests;

import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;

/**
 * A folder whose files build on each other and on another folder: families, shared stages, a short and a long procedure, a
 * retest.
 */
final class EditedFolder {

    /** The family that another is like. */
    static final String BASE = Bench.FAMILY.substring(0, Bench.FAMILY.indexOf("family lark \""));
    /** The family that is like it. */
    static final String LARK = Bench.FAMILY.substring(Bench.FAMILY.indexOf("family lark \""));

    private static final String SHARED = """
            shared stage rail "Rail" for lark (low in V, high in V) {
                hazard live danger "Terminals are live." can "kill" so "Fit the cover."
                instrument probe "Probe" reads V dc up to 60 V, uncertainty at most 0.05 V, coverage 2
                step supply_on "Switch on." with hazard live { energises supply }
                step look "Look." {
                    mark seen_on "Press."
                    expect pwr steady within 5 s of seen_on or conclude rejected "Dark."
                    measure rail_volts with probe, limits low .. high or go to look, at most 2, or conclude rejected "Off."
                    derive half as rail_volts - 1 V, limits 20 .. 30 V or conclude rejected "Half."
                }
                step supply_off "Switch off." { isolates supply }
            }
            shared stage note "Note" for lark_base { step take_down "Take it down." { enter text "What is there" } }
            """;
    private static final String RETEST = """
            procedure lark_retest "Lark retest" revision 1 {
                applies to lark
                retest of lark_acceptance, repeats power_up
                hazard mains danger "Terminals are live." can "kill" so "Fit the cover."
                carry out rail(low = 23.5 V, high = 24.5 V) as power_up
                carry out note
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;
    private static final String COMMON = """
            family crow "Crow" { lamp ok green "Health" stop stays until "restarted" }
            shared stage greet "Greet" for crow {
                step hello "Hello." { confirm "It is well." or conclude rejected "It is not." }
                step bye "Good bye." { confirm "It was well." or go to hello, at most 1, or conclude rejected "It was not." }
            }
            """;
    private static final String USES_COMMON = """
            import "../common/crow.procedure"
            procedure crow_acceptance "Crow acceptance" revision 1 {
                applies to crow
                carry out greet
                stage work "Work" {
                    step look "Look." { mark m "Press." expect ok steady within 5 s of m or go to look, at most 1, or conclude rejected "Dark." }
                    /* seen
                       twice */
                    step again "Again." { confirm "Still." or go to look, at most 2, or conclude rejected "Not still." }
                }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    private EditedFolder() {
    }

    static Map<Path, String> texts(Path folder, int steps) {
        return new TreeMap<>(Map.of(folder.resolve("base.family"), BASE, folder.resolve("lark.family"), LARK,
                folder.resolve("lark.procedure"), Bench.PROCEDURE,
                folder.resolve("long.procedure"), longProcedure(steps), folder.resolve("shared.procedure"), SHARED,
                folder.resolve("retest.procedure"), RETEST, folder.resolve("crow.procedure"), USES_COMMON));
    }

    static Map<Path, String> imported(Path folder) {
        return new TreeMap<>(Map.of(folder.resolve("crow.procedure"), COMMON));
    }

    private static String longProcedure(int steps) {
        StringBuilder more = new StringBuilder();
        for (int step = 0; step < steps; step++) {
            more.append("""
                            step s%1$d "Step %1$d" with hazard mains {
                                mark m%1$d "Press."
                                expect pwr steady within 5 s of m%1$d or go to s%2$d, at most 2, or go to read_log
                                measure v%1$d with meter, limits 23.5 .. 24.5 V, decide guarded both ways or go to s%1$d // once
                                derive d%1$d as v%1$d - v%2$d, limits -1 .. +1 V or conclude rejected "Off."
                            }
                    """.formatted(step, Math.max(0, step - 1)));
        }
        return Bench.PROCEDURE.replace("lark_acceptance", "lark_long")
                .replace("        step fit \"Fit", more + "        step fit \"Fit")
                .replace("    stage read_log", "    carry out rail(low = 23 V, high = 25 V)\n    carry out note as first_note\n\n    stage read_log");
    }
}
