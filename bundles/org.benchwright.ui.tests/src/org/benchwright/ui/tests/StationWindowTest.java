package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;

import org.benchwright.present.Bench;
import org.benchwright.present.StationSignIn;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.bench.IdleLock;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.MovedTime;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Who works at the station: signing in and out, and a station that is locked, or locks itself. */
@ExtendWith(QuietLog.class)
class StationWindowTest {

    @Test
    void whoeverSignsInIsToldOfAWrongPasswordAndMayTryAgain() throws Exception {
        // Makes sure that there are people.
        Technician.open(Technician.C16, "C16-700006", false);
        Desk desk = Technician.desk();
        try {
            Dialogs.answered("Sign in", () -> Screen.command("org.benchwright.ui.signIn"), dialog -> {
                        List<Text> fields = Dialogs.fields(dialog);
                        fields.get(0).setText("RB");
                        fields.get(1).setText("not this one");
                        fields.get(2).setText("4711");
                        Dialogs.enter(dialog);
                        Screen.waitFor("the refusal", () -> fields.get(1).isEnabled());
                        assertEquals("", fields.get(1).getText());
                        assertFalse(Dialogs.message(dialog).contains("Opening the key"), Dialogs.message(dialog));
                        assertEquals(Optional.empty(), desk.station().person());
                        fields.get(1).setText(Approved.PASSWORD);
                        Dialogs.enter(dialog);
                        Screen.waitFor("the end", dialog::isDisposed);
                    });
            assertEquals(Optional.of("RB"), desk.station().person());
            assertFalse(desk.station().locked());
        } finally {
            desk.station().signOut();
            desk.stationChanged();
            Screen.settle();
        }
    }

    @Test
    void aLockedStationTakesNothingButMakeSafe() throws Exception {
        OpenTest held = Technician.open(Technician.C16, "C16-700005", false);
        Desk desk = Technician.desk();
        try {
            desk.station().signIn(desk.ledger(), "RB", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
            desk.station().lock();
            desk.stationChanged();
            Screen.settle();
            assertEquals(List.of(), Screen.entryFields());
            Screen.command("org.benchwright.ui.makeSafe");
            Shown before = held.shown();
            Screen.enter("smell of burning");
            Technician.after(held, before);
            assertTrue(held.shown().card().place().startsWith("Make safe"), held.shown().card().place());
        } finally {
            desk.station().signOut();
            desk.stationChanged();
            Screen.settle();
        }
        assertFalse(Screen.entryFields().isEmpty());
    }

    /** Signing out is no way past the lock. */
    @Test
    void whoeverHasSignedInSignsOutUnlessTheStationIsLocked() throws Exception {
        Desk desk = Technician.desk();
        Technician.open(Technician.C16, "C16-700006", false);
        try {
            desk.station().signIn(desk.ledger(), "RB", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
            Screen.command("org.benchwright.ui.lock");
            Screen.command("org.benchwright.ui.signOut");
            assertTrue(desk.station().locked());
            assertEquals(List.of(), Screen.entryFields());
            desk.station().signIn(desk.ledger(), "RB", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
            Screen.command("org.benchwright.ui.signOut");
            assertEquals(Optional.empty(), desk.station().person());
            Screen.waitFor("the entry", () -> !Screen.entryFields().isEmpty());
        } finally {
            desk.station().signOut();
            desk.stationChanged();
            Screen.settle();
        }
    }

    @Test
    void aStationThatNobodyTouchesLocksItselfWhateverTheWindowShows() throws Exception {
        Technician.register();
        Screen.perspective(Ids.AUDIT);
        MovedTime time = new MovedTime();
        StationSignIn station = new StationSignIn(new Bench.Clocks(time, time, time));
        station.signIn(Technician.desk().ledger(), "RB", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
        AtomicInteger told = new AtomicInteger();
        Shell window = new Shell(Display.getCurrent());
        try {
            IdleLock.begin(window, station, told::incrementAndGet);
            time.advance(StationSignIn.IDLE.minusSeconds(1));
            // A hand on a key of any window of the program.
            Screen.key(Screen.window().getShell(), 'a', 'a');
            time.advance(StationSignIn.IDLE.minusSeconds(1));
            assertFalse(station.lockIfIdle());
            time.advance(Duration.ofSeconds(1));
            Screen.waitFor("the lock", station::locked);
            assertEquals(1, told.get());
        } finally {
            window.dispose();
        }
    }
}
