package org.benchwright.ui.tests;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.present.Bench;
import org.benchwright.present.EntryKind;
import org.benchwright.present.TestDialogue;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;

/** Units of a small family that stand on soak, each look of which one key answers. */
final class Rack {

    private static final String PROCEDURE = """
            family rook "Rook" {
                serial "K-######"
                lamp running marked "RUN" green "Running"
                modes run "Running", still "Still"
                mode run shows running green steady
                mode still shows running off
                stop stays until "somebody restarts it"
            }
            procedure rook_soak_NAME "Rook on soak" revision 1 {
                applies to rook
                hazard mains danger "The supply's terminals carry mains." can "kill by electric shock" so "Keep the cover on."
                stage work "Work" {
                    step power "Switch on." with hazard mains {
                        energises supply
                        confirm "It runs." or conclude rejected "It does not start."
                    }
                }
                soak endurance "Endurance" lasting 72 h witnessed {
                    keep mode run
                    look every EVERY, tolerance 2 h
                    gap at most 2 h, or conclude undecided "Power was lost."
                    when stopped conclude rejected "It stopped."
                }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    private Rack() {
    }

    /** The file of a procedure that looks that often: {@code 24 h}, {@code 10 min}. */
    static Path procedure(Path folder, String every) throws Exception {
        String name = every.replace(" ", "_");
        return Files.writeString(folder.resolve("rook-" + name + ".procedure"), PROCEDURE.replace("NAME", name).replace("EVERY", every));
    }

    /** A real test of a unit, on soak since now, in that position; without one if that is empty. */
    static OpenTest onSoak(Path procedure, String serial, String position) throws Exception {
        OpenTest test = Technician.open(procedure.toString(), serial, false);
        while (!test.shown().key().equals("endurance.look")) {
            Shown asked = Technician.seen(test);
            Technician.entered(test, asked.card().question().startsWith("Scan") ? serial : answer(asked.kind()));
        }
        if (!position.isEmpty()) {
            test.place(position);
        }
        Optional<String> there = Optional.of(position).filter(at -> !at.isEmpty());
        Screen.waitFor(serial + " in its place", () -> Technician.desk().units().stream()
                .anyMatch(unit -> unit.test().equals(test.id()) && unit.nextLook().isPresent() && unit.position().equals(there)));
        Technician.seen(test);
        return test;
    }

    private static String answer(EntryKind kind) {
        return kind == EntryKind.UNDERSTAND ? "u" : kind == EntryKind.DO ? "done" : "y";
    }

    /** Another unit comes onto soak, by somebody at a terminal. */
    static String elsewhere(Path procedure, String serial, String position) throws Exception {
        Reading.Ready ready = (Reading.Ready) new ProcedureReader(LanguageServices.create()).read(procedure);
        try (Bench terminal = Bench.open(Technician.desk().ledger(), Bench.Clocks.system())) {
            TestDialogue dialogue = terminal.begin(ready.plan(), ready.text(), new Bench.Work(serial, "TM", "terminal", "another face", false));
            while (!dialogue.key().equals("endurance.look")) {
                dialogue.answer(answer(dialogue.kind()), Path.of(""));
            }
            dialogue.place(position);
            return dialogue.test();
        }
    }
}
