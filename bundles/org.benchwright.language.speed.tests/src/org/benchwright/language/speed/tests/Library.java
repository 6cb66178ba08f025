package org.benchwright.language.speed.tests;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.language.SourceText;

/** Invented families and procedures of any size, without mistakes. */
final class Library {

    static final String FAMILY = """
            family lark "Lark" {
                supply 24 V dc, tolerance -15 % .. +20 %
                lamp pwr green "Power"
                lamp ok green or red "Health"
                display code of 2 characters "Status code"
                modes stopped, run
                mode run shows ok green steady, code "rn"
                keeps fault_log "Fault log" by supply
                stop stays until "somebody restarts the unit"
                fault W01 "Watchdog expired" shows ok red steady
            }
            """;
    private static final String BEGIN = """
            procedure lark_%1$d "Lark acceptance %1$d" revision 1 {
                applies to lark
                purpose "Decide whether it works."
                hazard mains danger "Terminals are live." can "kill" so "Fit the cover."
                instrument meter "Multimeter" reads V dc up to 60 V, uncertainty at most 0.05 V, coverage 2

                stage work "Work" {
            """;
    private static final String STEP = """
                    step s%1$d "Switch on, look and measure." takes 2 min with hazard mains {
                        energises supply
                        mark m%1$d "Press as you close the switch."
                        expect pwr steady within 5 s of m%1$d or go to read_log
                        expect ok red steady, then green steady, within 10 s of m%1$d or conclude rejected "It stays dark."
                        measure v%1$d with meter, limits 23.5 .. 24.5 V or conclude rejected "The rail is off."
                        isolates supply
                    }
            """;
    private static final String END = """
                }

                stage read_log "Fault log" on demand {
                    step log "Enter every line." {
                        enter fault_log
                        conclude rejected "It did not start."
                    }
                }

                make safe "Make safe" {
                    step off "Switch off." { isolates supply }
                }
                conclude accepted
            }
            """;

    private Library() {
    }

    /** One procedure of so many steps, the log's and the safe one included. */
    static String procedure(int number, int steps) {
        StringBuilder text = new StringBuilder(BEGIN.formatted(number));
        for (int step = 0; step < Math.max(1, steps - 2); step++) {
            text.append(STEP.formatted(step));
        }
        return text.append(END).toString();
    }

    /** A family and so many procedures of 100 steps. */
    static List<SourceText> files(Path folder, int count) {
        List<SourceText> texts = new ArrayList<>(List.of(new SourceText(folder.resolve("lark.family"), FAMILY)));
        for (int file = 0; file < count; file++) {
            texts.add(new SourceText(folder.resolve("lark_" + file + ".procedure"), procedure(file, 100)));
        }
        return texts;
    }
}
