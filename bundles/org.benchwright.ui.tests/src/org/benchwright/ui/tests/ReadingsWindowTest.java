package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.benchwright.present.TimelineLine;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Readings entered into the step card: blind ones, and the cells of a grid, typed and pasted from a table. */
@ExtendWith(QuietLog.class)
class ReadingsWindowTest {

    private static final String STARLING = """
            family starling "Starling" { lamp pwr green "Power" }
            procedure starling_readings "What a starling shows" revision 1 {
                applies to starling
                instrument meter "Multimeter" reads V dc up to 60 V, uncertainty at most 0.05 V, coverage 2
                instrument calibrator "Calibrator" gives mA dc from 0 .. 24 mA, uncertainty at most 0.002 mA, coverage 2
                stage work "Work" {
                    step seen "Measure." { measure first_volts with meter, limits 23.5 .. 24.5 V or conclude rejected "Out." }
                    step unseen "Measure again." { measure volts with meter, blind, limits 23.5 .. 24.5 V or conclude rejected "Out." }
                    step channels "Read all." {
                        for each channel 1 .. 2
                        for each applied 4, 12, 20 mA with calibrator
                        measure shown in mA
                        judge shown - applied, limits -0.1 .. +0.1 mA, decide guarded
                            or conclude rejected "A channel is off."
                    }
                    step whole "Look." { confirm "It is whole." or conclude rejected "It is broken." }
                }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    @TempDir
    private Path folder;

    private OpenTest open(String serial) throws Exception {
        return Technician.open(Files.writeString(folder.resolve("starling.procedure"), STARLING).toString(), serial, true);
    }

    private static String soFar() {
        return Screen.all(StyledText.class).map(StyledText::getText).filter(text -> text.contains("Opened for ") || text.contains("first volts") || text.contains("shown again"))
                .findFirst().orElse("");
    }

    private static void paste(String text) {
        Text field = Screen.entryFields().get(0);
        Screen.copy(text);
        field.setFocus();
        field.paste();
        Screen.waitFor("what was pasted", () -> !field.getText().isEmpty());
    }

    private static List<String> words(OpenTest test) {
        return test.shown().soFar().stream().map(TimelineLine::words).toList();
    }

    @Test
    void aBlindReadingIsEnteredWithoutEarlierOnesInSight() throws Exception {
        OpenTest test = open("ST-730001");
        Screen.page().showView(Ids.SO_FAR_VIEW);
        enterInstruments(test, "seen.first_volts");
        Technician.entered(test, "24.17");
        assertEquals("unseen.volts", test.shown().key());
        Screen.waitFor("the story", () -> soFar().contains("(shown again once volts is on record)"));
        assertFalse(soFar().contains("24.17"), soFar());
        assertFalse((test.shown().card() + " " + test.shown().last()).contains("24.17"), "neither on the card: " + test.shown());
        Technician.entered(test, "24.21");
        Screen.waitFor("both readings", () -> soFar().contains("24.17 V") && soFar().contains("24.21 V") && !soFar().contains("shown again"));
        assertTrue(test.shown().last().news().toString().contains("24.21 V accepted"), test.shown().last().toString());
    }

    /** Instruments are named where they are first needed. */
    private static void enterInstruments(OpenTest test, String until) {
        while (!test.shown().key().equals(until)) {
            assertTrue(test.shown().key().startsWith("instrument."), test.shown().key());
            Technician.entered(test, test.shown().key().endsWith("meter") ? "M-61, 0.02 V, k 2, due 2099-03-01" : "K-61, 0.002 mA, k 2, due 2099-03-01");
        }
    }

    @Test
    void enterGoesDownAColumnOfAGridACopiedColumnFillsItAndTheWorstCellIsShown() throws Exception {
        OpenTest test = open("ST-730002");
        enterInstruments(test, "seen.first_volts");
        Technician.entered(test, "24.17");
        Technician.entered(test, "24.21");
        enterInstruments(test, "channels.shown");
        Shown first = test.shown();
        assertTrue(first.card().question().contains("applied 4 mA"), first.card().question());
        Shown second = Technician.entered(test, "4.01");
        assertTrue(second.card().question().contains("applied 12 mA"), second.card().question());
        assertTrue(second.card().question().contains("So far: channel 1, applied 4 mA: 0.01 mA accepted"), second.card().question());
        paste("12.02\r\n20.03\r\n4.05\r\n11.95\r\n");
        assertEquals("12.02; 20.03; 4.05; 11.95", Screen.entryFields().get(0).getText(), "a column in a field of one line");
        Screen.key(Screen.entryFields().get(0), SWT.CR, '\r');
        Shown last = Technician.after(test, second);
        assertEquals("channels.shown", last.key());
        assertTrue(last.card().question().contains("channel 2, applied 20 mA"), last.card().question());
        assertTrue(last.card().question().contains("worst of 5 cells"), last.card().question());
        assertTrue(last.card().question().contains("channel 2, applied 4 mA: 0.05 mA") || last.card().question().contains("channel 2, applied 12 mA: -0.05 mA"),
                last.card().question());
        paste("20.00\tnine");
        Screen.key(Screen.entryFields().get(0), SWT.CR, '\r');
        Technician.after(test, last);
        assertEquals("whole.confirm", test.shown().key());
        assertTrue(test.shown().last().news().toString().contains("1 of 2 pasted values is entered"), test.shown().last().toString());
        assertTrue(words(test).containsAll(List.of("shown 1: 4.01 mA", "shown 2: 12.02 mA", "shown 3: 20.03 mA", "shown 4: 4.05 mA", "shown 5: 11.95 mA", "shown 6: 20.00 mA")),
                words(test).toString());
    }
}
