package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.ui.internal.app.Leaving;
import org.benchwright.ui.internal.desk.OpenTest;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The window is to be closed while a unit is energised: the person is asked. */
@ExtendWith(QuietLog.class)
class LeavingWindowTest {

    private static OpenTest live(String serial) throws Exception {
        OpenTest test = Technician.open(Technician.C16, serial, true);
        Technician.answerUntil(test, Answers.of("accepted"), "supply.supply_volts");
        assertEquals(List.of("supply"), test.shown().live());
        return test;
    }

    /** Quits, and presses a button of the question that comes. */
    private static void quit(String button, String unit, Dialogs.Opening quitting) throws Exception {
        Dialogs.answered("Energised", quitting, dialog -> {
            assertTrue(Dialogs.words(dialog).contains("Unit " + unit + " is LIVE: supply."), Dialogs.words(dialog));
            Dialogs.press(dialog, button);
        });
        Screen.settle();
        assertTrue(PlatformUI.isWorkbenchRunning() && Screen.window().getShell().isVisible(), "the window stays");
    }

    private static void byItsKey() throws Exception {
        Engineer.press("M1+Q");
    }

    @Test
    void whoStaysFindsEverythingAsItWas() throws Exception {
        OpenTest test = live("C16-510001");
        long version = test.shown().version();
        quit("Stay", "C16-510001", LeavingWindowTest::byItsKey);
        quit("Stay", "C16-510001", () -> Screen.window().getShell().close());
        assertEquals(version, test.shown().version());
    }

    @Test
    void whoMakesSafeFirstIsAskedWhyOnTheStepCard() throws Exception {
        OpenTest test = live("C16-000512");
        Technician.open(Technician.C16, "C16-000513", true);
        // The first by its serial number is made safe first; what other tests have left live, and may be making safe, comes behind it.
        OpenTest first = Technician.desk().held(Technician.desk().live().get(0).test()).orElseThrow();
        assertEquals(test.id(), first.id());
        quit("Make safe first", "C16-000512", LeavingWindowTest::byItsKey);
        Screen.waitFor("the reason", () -> Screen.all(Label.class).anyMatch(label -> label.getText().startsWith("reason, then Enter")));
        assertEquals(first.id(), Technician.desk().selected());
        Screen.enter("going home");
        Screen.waitFor("make safe", () -> first.shown().card().place().startsWith("Make safe"));
        assertTrue(test.shown().ending().isEmpty());
    }

    @Test
    void whoClosesItAnywayMay() throws Exception {
        live("C16-510004");
        List<Boolean> may = new ArrayList<>();
        // Asked as the window's frame and Quit ask, but the window is needed for the next test.
        quit("Close anyway", "C16-510004", () -> may.add(new Leaving(Screen.window(), Technician.desk()).may()));
        assertEquals(List.of(true), may);
    }
}
