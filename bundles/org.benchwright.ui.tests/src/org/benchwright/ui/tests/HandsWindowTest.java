package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.benchwright.present.EntryKind;
import org.benchwright.present.TimelineLine;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The bench with hands full: the foot switch and its key, and taps along with a lamp. */
@ExtendWith(QuietLog.class)
class HandsWindowTest {

    private static void footSwitch(OpenTest test) {
        Technician.key(test, SWT.F7, (char) 0);
    }

    @Test
    void theFootSwitchGivesTheMainAnswerButReadsNoHazardAndEntersNoValue() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-700001", true);
        Answers answers = Answers.of("accepted");
        Technician.answerUntil(test, answers, "hazard.mains");
        Technician.nothingComesOf(test, () -> footSwitch(test));
        while (test.shown().kind() != EntryKind.DO) {
            Technician.answer(test, answers);
        }
        Shown asked = test.shown();
        footSwitch(test);
        Technician.after(test, asked);
        Technician.answerUntil(test, answers, "supply.supply_volts");
        Technician.nothingComesOf(test, () -> footSwitch(test));
        Shown measured = Technician.seen(test);
        Screen.entryFields().get(0).setText("240.1");
        footSwitch(test);
        Technician.after(test, measured);
        assertEquals("24.01 V would be inside. Is 240.1 V what the instrument shows?", test.shown().card().question());
    }

    @Test
    void theKeyOfTheFootSwitchIsChosenInTheWindow() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-700012", true);
        while (test.shown().kind() != EntryKind.DO) {
            Technician.answer(test, Answers.of("accepted"));
        }
        try {
            chooseFootSwitch("f13", false);
            Technician.nothingComesOf(test, () -> footSwitch(test));
            Shown asked = Technician.seen(test);
            Technician.key(test, SWT.F13, (char) 0);
            Technician.after(test, asked);
            chooseFootSwitch("F12", true);
        } finally {
            chooseFootSwitch("", false);
        }
    }

    private static void chooseFootSwitch(String key, boolean refused) throws Exception {
        Dialogs.answered("Foot switch", () -> Screen.command("org.benchwright.ui.footSwitch"), dialog -> {
            Dialogs.fields(dialog).get(0).setText(key);
            assertEquals(refused, !dialog.getDefaultButton().isEnabled(), "make safe keeps its key");
            if (refused) {
                dialog.close();
            } else {
                Dialogs.enter(dialog);
            }
        });
    }

    private static final String FLASHING = """
            family tit "Tit" { lamp flt red "Fault" }
            procedure tit_lamp "The lamp of a tit" revision 1 {
                applies to tit
                stage work "Work" {
                    step open_loop "Watch the lamp." {
                        mark unplugged "Press as you pull the plug."
                        expect flt flashing slow within 4 s of unplugged
                        otherwise conclude rejected "An open loop is not noticed."
                    }
                }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    /** What counts is when the keys were pressed, as the keyboard tells it, however late the window comes to them. */
    @Test
    void aLampIsTappedAlongWithTheSpaceBar(@TempDir Path folder) throws Exception {
        OpenTest test = Technician.open(Files.writeString(folder.resolve("tit.procedure"), FLASHING).toString(), "A8-700001", true);
        Answers answers = Answers.of("a8-accepted");
        while (!test.shown().tapsAlong()) {
            Technician.answer(test, answers);
        }
        Shown asked = Technician.seen(test);
        Text field = Screen.entryFields().get(0);
        // The keyboard's clock runs over between two of them.
        int pressed = Integer.MAX_VALUE - 2000;
        for (int i = 0; i < 5; i++) {
            Event tap = new Event();
            tap.character = ' ';
            tap.keyCode = ' ';
            tap.time = pressed;
            field.notifyListeners(SWT.KeyDown, tap);
            pressed += 1600;
        }
        assertEquals("\u00b7\u00b7\u00b7\u00b7\u00b7", field.getText());
        Screen.key(field, SWT.CR, '\r');
        Technician.after(test, asked);
        assertTrue(words(test).stream().anyMatch(each -> each.contains("tapped 5 times along with the lamp")), words(test).toString());
        assertTrue(words(test).stream().anyMatch(each -> each.endsWith("as expected") && each.contains("flashing slow")), words(test).toString());
    }


    private static List<String> words(OpenTest test) {
        return test.shown().soFar().stream().map(TimelineLine::words).toList();
    }
}
