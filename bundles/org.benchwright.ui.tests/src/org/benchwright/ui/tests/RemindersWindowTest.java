package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.present.UnitRow;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.bench.LooksLine;
import org.benchwright.ui.internal.bench.Notice;
import org.benchwright.ui.internal.bench.Reminders;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.look.Palette;
import org.benchwright.ui.internal.look.Theme;
import org.benchwright.workshop.tests.MovedTime;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Looks that are coming, due and missed are told whatever is in front, and nobody who types is disturbed. */
@ExtendWith(QuietLog.class)
class RemindersWindowTest {

    @TempDir
    private Path folder;

    private static Stream<Shell> notices() {
        return Stream.of(Display.getCurrent().getShells()).filter(shell -> shell.getData(Notice.DATUM) != null && shell.isVisible());
    }

    private static String notice() {
        return notices().flatMap(shell -> Screen.all(shell, Label.class).stream()).map(Label::getText).collect(Collectors.joining("\n"));
    }

    private static Canvas line() {
        return Screen.one(Canvas.class, canvas -> canvas.getData(LooksLine.DATUM) != null);
    }

    @AfterEach
    void noNotices() {
        notices().toList().forEach(Shell::dispose);
    }

    @Test
    void aLookThatIsComingIsToldWhereverOneIsAndTheEntryKeepsTheFocus() throws Exception {
        OpenTest typedInto = Technician.open(Technician.C16, "C16-331001", true);
        Technician.seen(typedInto);
        Path procedure = Rack.procedure(folder, "10 min");
        OpenTest first = Rack.onSoak(procedure, "K-331001", "R 31");
        Technician.look(typedInto);
        Text field = Screen.entryFields().get(0);
        field.setFocus();
        field.setText("half an ans");
        Control focus = Display.getCurrent().getFocusControl();
        String second = Rack.elsewhere(procedure, "K-331002", "R 32");
        Screen.waitFor("the notice", () -> notice().contains("R 32  K-331002: look at it at "));
        assertSame(focus, Display.getCurrent().getFocusControl(), "whoever types goes on typing");
        assertTrue(field.isDisposed() || field.getText().equals("half an ans"));
        Screen.perspective(Ids.AUDIT);
        assertTrue(line().isVisible());
        assertTrue(line().getData(LooksLine.DATUM).toString().contains("look"), line().getData(LooksLine.DATUM).toString());
        line().notifyListeners(SWT.MouseDown, new Event());
        Screen.waitFor("the round", () -> Screen.page().getActivePart() != null && Screen.page().getActivePart().getSite().getId().equals(Ids.ROUNDS_VIEW));
        Screen.page().hideView(Screen.page().findView(Ids.ROUNDS_VIEW));
        // Nobody is to be reminded of them in the tests that follow.
        Technician.desk().units().stream().filter(unit -> unit.test().equals(second) || unit.test().equals(first.id()))
                .forEach(unit -> Technician.desk().here(unit, "QN", "bench 1").thenAccept(test -> test.makeSafe("the test of reminders is over")));
        Screen.waitFor("no looks", () -> line().getData(LooksLine.DATUM).equals(""));
    }

    /** Whatever the letters, and however many looks there are. */
    @Test
    void theLineHasRoomForAllThatItMayTell() {
        GC gc = new GC(line());
        try {
            gc.setFont(line().getFont());
            Point needed = gc.textExtent("88 LOOKS MISSED   88 LOOKS DUE   88 looks soon   Ctrl+4: Rounds");
            Point size = line().computeSize(SWT.DEFAULT, SWT.DEFAULT);
            assertTrue(size.x >= needed.x && size.y >= needed.y, needed + " in " + size);
        } finally {
            gc.dispose();
        }
    }

    @Test
    void aLookThatIsDueOrMissedIsToldOnceEachAndSoundsUnlessThatIsSwitchedOff() throws Exception {
        MovedTime time = new MovedTime();
        Instant due = time.instant().plus(Duration.ofHours(1));
        AtomicReference<List<UnitRow>> units = new AtomicReference<>(List.of(row("K-331003", due)));
        Reminders reminders = new Reminders(units::get, time);
        Shell window = new Shell(Display.getCurrent());
        try {
            reminders.begin(window);
            Screen.settle();
            assertEquals("", notice(), "an hour is long");
            time.advance(Duration.ofMinutes(50));
            Screen.waitFor("coming", () -> notice().contains("A 3  K-331003: look at it at "));
            notices().toList().forEach(Shell::dispose);
            time.advance(Duration.ofMinutes(10));
            Screen.waitFor("due", () -> notice().contains("A 3  K-331003: LOOK NOW, due since "));
            assertEquals(Theme.palette().urgent(), notices().findFirst().orElseThrow().getBackground(), "in the urgent colour");
            Theme.use(PlatformUI.getWorkbench(), true);
            try {
                Screen.waitFor("that of the dark look", () -> notices().anyMatch(shell -> shell.getBackground().equals(Palette.DARK.urgent())));
            } finally {
                Theme.use(PlatformUI.getWorkbench(), false);
            }
            notices().toList().forEach(Shell::dispose);
            time.advance(Duration.ofHours(2).plusSeconds(1));
            Screen.waitFor("missed", () -> notice().contains("A 3  K-331003: LOOK MISSED, was due at "));
            units.set(List.of(row("K-331003", time.instant().plus(Duration.ofHours(24)))));
            Screen.waitFor("looked at", () -> notice().isEmpty());
        } finally {
            window.dispose();
        }
        assertTrue(Reminders.sounds());
        Screen.command("org.benchwright.ui.looksSound");
        assertFalse(Reminders.sounds());
        Screen.command("org.benchwright.ui.looksSound");
        assertTrue(Reminders.sounds());
    }

    private static UnitRow row(String serial, Instant due) {
        return new UnitRow("T-" + serial, serial, "Rook", "p", "Endurance", Optional.of(Duration.ofHours(3)), Optional.of(due), false, "on soak", false, "",
                false, Optional.of("A 3"), "QN", Optional.empty(), Optional.of(due.plus(Duration.ofHours(2))), "mode run");
    }
}
