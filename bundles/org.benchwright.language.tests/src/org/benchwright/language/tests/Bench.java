package org.benchwright.language.tests;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.language.Checked;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.Remark;
import org.benchwright.language.SourceText;

/** A sound family and a sound procedure that use nearly everything, and the one language that the tests share. */
final class Bench {

    static final LanguageServices LANGUAGE = LanguageServices.create();

    static final Path FOLDER = Path.of("bench").toAbsolutePath();
    static final Path FAMILY_FILE = FOLDER.resolve("lark.family");
    static final Path PROCEDURE_FILE = FOLDER.resolve("lark.procedure");

    static final String FAMILY = """
            family lark_base "Lark series" {
                supply 24 V dc, tolerance -15 % .. +20 %
                lamp pwr marked "PWR" green "Power"
                lamp flt marked "FLT" red "Fault"
                lamp ok marked "OK" green or red "Health"
                display code of 2 characters "Status code"
                modes stopped, run, faulted
                mode run shows ok green steady, code "rn"
                mode faulted shows flt steady
                watched by modbus {
                    mode run when holding register 7 unsigned 16 is 2
                    lamp flt lit when coil 5 is on
                    condition supply from input register 30 signed 16, scale 0.1 V
                }
                stop stays until "somebody restarts the unit"
            }

            family lark "Lark controller" like lark_base {
                serial "LK-####"
                lamps out 0 .. 7 green "Output"
                keeps owner_program "Owner's program" by cell
                keeps fault_log "Fault log" by supply
                loadable bench_program "Bench program"
                loadable permanent_copy "Copy in permanent memory" replaces owner_program
                fault W01 "Watchdog expired" shows flt steady, mode faulted {
                    means "A scan did not finish in time."
                    often "Oscillator weak when warm."
                    next "Soak again warm."
                }
            }
            """;

    static final String PROCEDURE = """
            procedure lark_acceptance "Lark acceptance" revision 3 {
                applies to lark
                purpose "Decide whether it works."
                claims a fault stopping it every 31 h is revealed at 90 %

                hazard mains danger "Terminals are live." can "kill" so "Fit the cover."
                hazard charge warning "Charge stays." can "shock" so "Wait and measure."
                protect owner_program
                instrument meter "Multimeter" reads V dc up to 60 V, uncertainty at most 0.05 V, coverage 2
                instrument calibrator "Calibrator" gives mA up to 24 mA, uncertainty at most 0.002 mA, coverage 2
                precondition strap "Strap tested." valid 12 h, enter text "Tester number"
                precondition ambient "Room temperature" reading, limits 18 .. 28 degC
                otherwise conclude undecided "Could not be carried out."

                stage power_up "Power up" lasting at most 10 min {
                    step supply "Measure the supply." takes 3 min with hazard mains {
                        energises supply
                        measure supply_volts with meter, limits 23.5 .. 24.5 V, decide guarded both ways
                            or conclude undecided "The bench supply is at fault."
                        when undecided measure again at most 1, decide by mean, or conclude undecided "Too close to call."
                        isolates supply
                    }
                    step fit "Fit the unit." {
                        fits unit
                        confirm "The cover is on."
                    }
                    step lamps "Switch on." with hazard mains {
                        energises supply
                        mark on "Press as you close the switch."
                        expect pwr steady within 2 s of on
                        expect ok red steady, then green steady, within 10 s of on
                        expect flt off from 10 s of on, lasting 5 s
                        expect out 3 steady or code "01" within 10 s of on
                        reveals W01
                        otherwise conclude rejected "Self-check failed."
                    }
                    step as_found "Take down the fault log." {
                        enter fault_log as found
                        attach photo "Type plate"
                    }
                    step matched "Compare." {
                        confirm same "Type on the plate" and "Type configured"
                        otherwise go to matched, at most 2, or conclude undecided "Does not fit."
                    }
                    step blank "Erase the fault log." {
                        erase only fault_log
                        spare owner_program
                    }
                    step transfer "Load the bench program." {
                        load only bench_program
                        leave out permanent_copy
                    }
                    step accuracy "Apply each current." {
                        for each channel 1 .. 8
                        for each applied 4, 12, 20 mA with calibrator, up then down
                        measure shown in mA, settle 2 s
                        judge shown - applied, limits -0.016 .. +0.016 mA, decide guarded both ways
                            or go to read_log
                    }
                    step start "Turn the unit to run." {
                        release by second person "All terminals are bare."
                        mark begun "Press as you turn the switch."
                        expect mode run within 30 s of begun
                        otherwise go to read_log
                    }
                }

                soak endurance "Endurance" lasting 72 h witnessed with hazard mains {
                    keep mode run
                    conditions ambient 18 .. 28 degC, supply 23.5 .. 24.5 V
                    watch every 10 s, stop after 2 bad, silent after 3 missed
                    look every 24 h, tolerance 2 h, unless watched
                    gap at most 2 h, or begin again at most 1
                    when stopped outside conditions begin again at most 1
                    when stopped go to read_log
                }

                stage read_log "Fault log" on demand {
                    step log "Enter every line." {
                        enter fault_log
                        conclude rejected "Stopped by itself."
                    }
                }

                make safe "Make safe" {
                    step off "Switch off." { isolates supply }
                    step drain "Prove it dead." with hazard charge {
                        wait 5 min
                        measure residual with meter, limits at most 5 V
                            or release by supervisor "Nobody touches it."
                    }
                }
                conclude accepted
            }
            """;

    private Bench() {
    }

    /** Checks both files in place of the sound ones. */
    static Checked check(String family, String procedure) {
        return LANGUAGE.checkTexts(List.of(new SourceText(FAMILY_FILE, family), new SourceText(PROCEDURE_FILE, procedure)));
    }

    /** Checks both files and another beside them. */
    static Checked check(String family, String procedure, String fileName, String another) {
        List<SourceText> texts = new ArrayList<>();
        texts.add(new SourceText(FAMILY_FILE, family));
        texts.add(new SourceText(PROCEDURE_FILE, procedure));
        texts.add(new SourceText(FOLDER.resolve(fileName), another));
        return LANGUAGE.checkTexts(texts);
    }

    /** Remarks as they are printed, without the folder. */
    static List<String> printed(List<Remark> remarks) {
        return remarks.stream().map(remark -> remark.toString().replace(FOLDER + "/", "").replace(FOLDER + "\\", ""))
                .toList();
    }
}
