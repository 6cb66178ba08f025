package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

import org.benchwright.present.Bench;
import org.benchwright.present.RecordRow;
import org.benchwright.present.UnitRow;
import org.benchwright.present.Watching;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.audit.PlotCanvas;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IViewPart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A unit stops while nobody is there: window and desktop tell whoever is near, and its record shows how it went. */
@ExtendWith(QuietLog.class)
class WatchWindowTest {

    private static final String SERIAL = "W-790001";

    @TempDir
    private Path folder;

    private static Optional<UnitRow> unit(OpenTest test) {
        return Technician.desk().units().stream().filter(row -> row.test().equals(test.id())).findFirst();
    }

    /** As little as leads to a soak that is watched. */
    static Path procedure(Path folder) throws IOException {
        Files.writeString(folder.resolve("wren.family"), """
                family wren "Wren" {
                    lamp ok marked "OK" green "Health"
                    modes stopped, run
                    mode run shows ok green steady
                    keeps fault_log "Fault log" by memory
                    watched by modbus {
                        mode run when input 3 is on
                        condition supply from input register 30 signed 16, scale 0.1 V
                    }
                    stop stays until "somebody restarts the unit"
                }
                """);
        return Files.writeString(folder.resolve("wren.procedure"), """
                procedure wren_soak "Wren on soak" revision 1 {
                    applies to wren
                    hazard mains danger "Terminals are live." can "kill" so "Fit the cover."
                    otherwise conclude undecided "Not carried out."
                    stage power_up "On" with hazard mains { step on "Switch on." { energises supply } }
                    soak endurance_run "Endurance" lasting 72 h witnessed {
                        keep mode run
                        conditions supply 23.5 .. 24.5 V
                        watch every 500 ms, stop after 2 bad, silent after 60 missed
                        look every 24 h, tolerance 2 h
                        gap at most 2 h, or conclude undecided "Too long unseen."
                        when stopped go to read_log
                    }
                    stage read_log "Fault log" on demand { step log "Log." { enter fault_log conclude rejected "Stopped." } }
                    make safe "Make safe" { step off "Off." { isolates supply } }
                    conclude accepted
                }
                """);
    }

    static OpenTest onSoak(Path procedure, String serial) throws Exception {
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.CARD_VIEW);
        var opening = Technician.desk().open(new Desk.Request(procedure, serial, "QN", "bench 1", true));
        Screen.waitFor("the test", opening::isDone);
        OpenTest test = opening.get();
        Technician.look(test);
        while (!test.shown().key().equals("endurance_run.look")) {
            answer(test);
        }
        Technician.seen(test);
        return test;
    }

    private static void answer(OpenTest test) {
        Shown asked = test.shown();
        if (asked.key().equals("endurance_run.begin")) {
            assertTrue(asked.card().reminders().stream().anyMatch(line -> line.startsWith("CAUTION: a network connection")), asked.card().toString());
        }
        String[] parts = asked.key().equals("endurance_run.begin") ? new String[] {"yes", "24.0 V"} : new String[] {asked.key().startsWith("hazard") ? "understood" : "yes"};
        Technician.entered(test, parts);
    }

    /** A notification daemon that others wrote; it prints what it is asked to show. */
    static Process daemon(Path printed) throws Exception {
        Process daemon = new ProcessBuilder("dunst", "-print").redirectOutput(printed.toFile()).redirectError(ProcessBuilder.Redirect.DISCARD).start();
        Screen.waitFor("the daemon", WatchWindowTest::listens);
        return daemon;
    }

    private static boolean listens() {
        try {
            Process asked = new ProcessBuilder("dbus-send", "--print-reply", "--dest=org.freedesktop.DBus", "/", "org.freedesktop.DBus.NameHasOwner",
                    "string:org.freedesktop.Notifications").start();
            String answer = new String(asked.getInputStream().readAllBytes());
            return asked.waitFor(60, TimeUnit.SECONDS) && answer.contains("true");
        } catch (IOException | InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void aStopIsToldByListCardAndDesktopAndItsCourseIsOnTheRecordSheet() throws Exception {
        Path printed = folder.resolve("notified");
        Process daemon = daemon(printed);
        try {
            OpenTest test = onSoak(procedure(folder), SERIAL);
            Screen.waitFor("it is not watched yet", () -> unit(test).filter(row -> row.watch().contains("no watch yet") && !row.alarm()).isPresent());
            Screen.waitForDrawing();
            int before = alarmed();
            try (Watching watching = Watching.begin(Technician.desk().ledger(), Bench.Clocks.system(), Map.of(SERIAL, "simulated stops after 2 s"),
                    (kind, urgent, id, serial, words) -> { })) {
                assertEquals(List.of(SERIAL), watching.look());
                Screen.waitFor("the alarm", () -> unit(test).filter(UnitRow::alarm).isPresent());
            }
            String words = unit(test).orElseThrow().watch();
            assertTrue(words.startsWith("STOPPED, nobody has come yet: not in mode run"), words);
            IViewPart units = Screen.page().findView(Ids.UNITS_VIEW);
            Screen.waitFor("the line above the units", () -> described(units).contains(SERIAL + ": STOPPED"));
            Technician.desk().select(test.id());
            Screen.waitFor("the band on the card", () -> alarmed() > before + 3_000);
            Screen.waitFor("what was asked on soak is asked no more", () -> Screen.asksFor().equals(test.id() + " " + test.shown().version() + " stopped"));
            assertEquals(List.of("Enter: take it up here    F12 or !: take it up and make safe now"), keys());
            Screen.waitFor("the desktop", () -> text(printed).contains(SERIAL + ": somebody should come") && text(printed).contains("STOPPED, nobody has come yet"));
            assertTrue(text(printed).contains("urgency: CRITICAL"), text(printed));
            assertEquals(Optional.empty(), Technician.desk().uncalled());

            Screen.enter("QN");
            Screen.waitFor("somebody has come", () -> unit(test).filter(row -> !row.alarm()).isPresent());
            sheet();
        } finally {
            daemon.destroy();
        }
    }

    /** What the step card says of its keys. */
    private static List<String> keys() {
        return Screen.all(Label.class).map(Label::getText).filter(words -> words.startsWith("Enter: ")).toList();
    }

    private static String described(IViewPart part) {
        return ((org.eclipse.ui.IWorkbenchPart2) part).getContentDescription();
    }

    /** How many pixels near the card's top are of the colour of what is urgent. */
    private static int alarmed() {
        Rectangle card = Screen.card().getBounds();
        Point at = Screen.card().toDisplay(0, 0);
        ImageData top = Screen.picture(new Rectangle(at.x, at.y, card.width, Math.min(card.height, 160)));
        RGB urgent = Theme.palette().urgent().getRGB();
        int found = 0;
        for (int y = 0; y < top.height; y++) {
            for (int x = 0; x < top.width; x++) {
                found += top.palette.getRGB(top.getPixel(x, y)).equals(urgent) ? 1 : 0;
            }
        }
        return found;
    }

    private static void sheet() throws Exception {
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.RECORDS_VIEW);
        Screen.press("Read again");
        Text search = Screen.one(Text.class, text -> (text.getStyle() & SWT.SEARCH) != 0);
        search.setText(SERIAL);
        Table records = Screen.one(Table.class, table -> table.getColumnCount() == 5);
        Screen.waitFor("the record", () -> records.getItemCount() == 1 && ((RecordRow) records.getItem(0).getData()).serial().equals(SERIAL));
        Screen.page().showView(Ids.SHEET_VIEW);
        Screen.selectRecord(records.getItem(0).getData());
        Screen.waitFor("the sheet", () -> !Screen.story("Unit " + SERIAL).isEmpty());
        Screen.waitFor("the plots", () -> Screen.all(Canvas.class).map(Canvas::getData).filter(PlotCanvas.class::isInstance).map(PlotCanvas.class::cast)
                .anyMatch(PlotCanvas::drawn));
        assertTrue(Screen.all(Label.class).anyMatch(label -> label.getText().contains("only where the intervals do not overlap")), "what may be read off it");
        search.setText("");
    }
}
