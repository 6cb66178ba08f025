package org.benchwright.ui.tests;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.benchwright.present.Bench;
import org.benchwright.present.HelpPage;
import org.benchwright.present.Watching;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.bench.Notice;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.help.PageView;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbenchPart2;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Pictures of what a technician works with. */
@ExtendWith(QuietLog.class)
class BenchScreensTest {

    @Test
    void startPage() throws Exception {
        Screen.perspective(Ids.START);
        Pictures.take("start");
    }

    @Test
    void stepCard() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-004711", true);
        Answers answers = Answers.of("dropped-out-of-soak");
        Technician.answerUntil(test, answers, "precondition.earth_bond");
        Pictures.take("precondition");
        Technician.answerUntil(test, answers, "hazard.mains");
        Pictures.take("hazard");
        Technician.answerUntil(test, answers, "supply.supply_volts");
        Pictures.take("measurement");
        Technician.answer(test, answers);
        Pictures.take("decided");
        Technician.answerUntil(test, answers, "lamps.on");
        Pictures.take("mark");
        Technician.answer(test, answers);
        Pictures.take("countdown");
        Technician.answerUntil(test, answers, "lamps.ok");
        Pictures.take("question");
        Technician.answerUntil(test, answers, "blank_log.erase.owner_program");
        Pictures.take("protected");
        Technician.answerUntil(test, answers, "start.started");
        Pictures.take("mode");
        Technician.answerUntil(test, answers, "endurance.look");
        Pictures.take("look");
        Technician.answerUntil(test, answers, "stop_log.fault_log");
        Screen.entryFields().get(0).setText("W01 02:14, second night\nZ99 odd\nS03");
        Screen.settle();
        Pictures.largeAndSmall("fault-log");
        Screen.entryFields().forEach(field -> field.setText(""));
        Technician.answer(test, answers);
        Pictures.take("fault-explained");
        Screen.key(Screen.entryFields().get(0), '1', '!');
        Screen.settle();
        Pictures.take("make-safe");
        Screen.key(Screen.entryFields().get(0), SWT.ESC, SWT.ESC);
        Technician.finish(test, answers);
        Pictures.take("end");
    }

    /** A rack of units on soak: a round, a reminder, and who works there. */
    @Test
    void rack(@TempDir Path temporary) throws Exception {
        Path procedure = Rack.procedure(temporary, "10 min");
        OpenTest last = Rack.onSoak(procedure, "K-004733", "B 1");
        List<OpenTest> rack = List.of(last, Rack.onSoak(procedure, "K-004731", "A 1"), Rack.onSoak(procedure, "K-004732", "A 2"));
        Screen.command("org.benchwright.ui.rounds");
        Table rounds = Screen.one(Table.class, table -> table.getColumnCount() == 4 && table.getColumn(0).getText().equals("Position"));
        rounds.setSelection(0);
        Screen.key(rounds, ' ', ' ');
        Screen.waitFor("on record", () -> Screen.all(Label.class).anyMatch(label -> label.getText().endsWith("as expected, on record")));
        Screen.waitFor("the notice", () -> Stream.of(Display.getCurrent().getShells()).anyMatch(shell -> shell.getData(Notice.DATUM) != null));
        Pictures.take("rounds");
        Dialogs.answered("Sign in", () -> Screen.command("org.benchwright.ui.signIn"), dialog -> {
            Pictures.take(dialog, "sign-in");
            dialog.close();
        });
        Desk desk = Technician.desk();
        desk.station().signIn(desk.ledger(), "RB", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
        try {
            Screen.page().showView(Ids.CARD_VIEW);
            Technician.look(last);
            desk.station().lock();
            desk.stationChanged();
            Pictures.take("locked");
            Screen.command("org.benchwright.ui.rounds");
            Pictures.dark(() -> Pictures.take("dark-rounds"));
        } finally {
            Screen.page().hideView(Screen.page().findView(Ids.ROUNDS_VIEW));
            desk.station().signOut();
            desk.stationChanged();
            rack.forEach(test -> test.makeSafe("the pictures are taken"));
            Screen.waitFor("no looks", () -> desk.units().stream().noneMatch(unit -> unit.serial().startsWith("K-0047") && unit.nextLook().isPresent()));
        }
    }

    /** Several units by one procedure: the first is opened, the others wait for their times. */
    @Test
    void batch() throws Exception {
        Screen.perspective(Ids.BENCH);
        Dialogs.answered("New test", () -> Screen.command("org.benchwright.ui.newTest"), dialog -> {
            List<Text> fields = Dialogs.fields(dialog);
            Combo procedures = Screen.all(dialog, Combo.class).get(0);
            procedures.select(procedures.indexOf(Technician.C16));
            fields.get(0).setText("C16-004741 C16-004742 C16-004743");
            fields.get(1).setText("QN");
            Dialogs.fields(dialog).get(2).setText("5 min");
            Pictures.take(dialog, "new-test-several");
            dialog.close();
        });
    }

    /** A unit that has stopped while nobody was there, found by its watch. */
    @Test
    void watchAlarm(@TempDir Path temporary) throws Exception {
        OpenTest test = WatchWindowTest.onSoak(WatchWindowTest.procedure(temporary), "W-004751");
        Desk desk = Technician.desk();
        Path notified = temporary.resolve("notified");
        // What the desktop shows of it is the desktop's, and would lie over the window for ever.
        Process daemon = WatchWindowTest.daemon(notified);
        try (Watching watching = Watching.begin(desk.ledger(), Bench.Clocks.system(), Map.of(test.shown().serial(), "simulated stops after 2 s"),
                (kind, urgent, id, serial, words) -> { })) {
            watching.look();
            Screen.waitFor("the alarm", () -> desk.units().stream().anyMatch(row -> row.test().equals(test.id()) && row.alarm()));
            Screen.waitFor("the desktop", () -> WatchWindowTest.text(notified).contains("STOPPED, nobody has come yet"));
        } finally {
            daemon.destroy();
            daemon.waitFor();
        }
        desk.select(test.id());
        Screen.waitFor("the card of a unit that has stopped", () -> Screen.asksFor().endsWith(" stopped"));
        Screen.waitFor("the alarm above the list", () -> ((IWorkbenchPart2) Screen.page().findView(Ids.UNITS_VIEW)).getContentDescription().contains("STOPPED"));
        try {
            Pictures.take("watch-alarm");
            Pictures.dark(() -> Pictures.take("dark-watch-alarm"));
        } finally {
            test.takeUp("QN");
            Screen.waitFor("somebody has come", () -> desk.units().stream().noneMatch(row -> row.test().equals(test.id()) && row.alarm()));
        }
    }

    @Test
    void darkStepCard() throws Exception {
        Pictures.dark(() -> {
            OpenTest test = Technician.open(Technician.C16, "C16-004712", true);
            Answers answers = Answers.of("accepted");
            Technician.answerUntil(test, answers, "hazard.charge");
            Pictures.take("dark-hazard");
            Technician.answerUntil(test, answers, "lamps.flt");
            Pictures.take("dark-question");
        });
    }

    @Test
    void manual() throws Exception {
        Screen.perspective(Ids.BENCH);
        PageView.show(Screen.page(), HelpPage.TECHNICIAN);
        Screen.waitFor("the page", () -> !Screen.story("The technician").isEmpty());
        StyledText page = Screen.one(StyledText.class, text -> PageView.SHEET.equals(text.getData()));
        try {
            page.setTopIndex(page.getLineAtOffset(page.getText().indexOf("Receive it")));
            Pictures.take("manual");
            Color light = page.getStyleRangeAtOffset(0).foreground;
            Pictures.dark(() -> {
                Screen.waitFor("the dark look", () -> !light.equals(page.getStyleRangeAtOffset(0).foreground));
                Pictures.take("dark-manual");
            });
        } finally {
            Screen.page().hideView(Screen.page().findView(Ids.PAGE_VIEW));
        }
    }
}
