package org.benchwright.ui.tests;

import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Pictures of what an auditor works with. */
@ExtendWith(QuietLog.class)
class AuditScreensTest {

    @Test
    void audit() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-004713", true);
        Technician.finish(test, Answers.of("rejected-at-power-up"));
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.RECORDS_VIEW);
        Screen.press("Read again");
        Screen.waitFor("records", () -> records().getItemCount() > 0);
        Screen.selectRecord(records().getItem(0).getData());
        Screen.press("Check the ledger");
        Screen.waitFor("the verdict", () -> Screen.all(StyledText.class).anyMatch(t -> t.getText().contains("SOUND")));
        Pictures.take("audit");
    }

    private static Table records() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 5);
    }

    @Test
    void afterTheSeal(@TempDir Path temporary) throws Exception {
        OpenTest amended = Auditor.test(temporary, "F-320001", true);
        Auditor.test(temporary, "F-320002", false);
        Auditor.givenUp(temporary, "F-320003");
        Table departures = Auditor.list(Ids.DEPARTURES_VIEW);
        Screen.waitFor("the departure", () -> Auditor.rows(departures, "F-320003").size() == 1);
        Auditor.select(Ids.DEPARTURES_VIEW, Auditor.rows(departures, "F-320003").get(0));
        Screen.waitFor("its sheet", () -> Auditor.sheet("F-320003").contains("waiting for a decision"));
        Pictures.take("departures");
        CompletableFuture<String> answered = Dialogs.when("Decide on a departure", shell -> {
            Auditor.fields(shell).get(0).setText("nothing was begun");
            Auditor.password(shell, "MJ", "secret");
            Pictures.take(shell, "decide");
            Auditor.press(shell, "Cancel");
        });
        Screen.press("Decide");
        Screen.waitFor("the dialog", answered::isDone);
        answered.get();
        Auditor.showSheet(amended, "F-320001");
        Screen.waitFor("the buttons", () -> Auditor.enabled("Amend"));
        Auditor.amend("F-320001");
        Pictures.take("record-amended");
        Pictures.dark(() -> {
            Pictures.take("dark-record-amended");
            Table broken = Auditor.list(Ids.NONCONFORMITIES_VIEW);
            Screen.waitFor("the nonconformity", () -> Auditor.rows(broken, "F-320002").size() == 1);
            Auditor.select(Ids.NONCONFORMITIES_VIEW, Auditor.rows(broken, "F-320002").get(0));
            Screen.waitFor("its sheet", () -> Auditor.sheet("F-320002").contains("waiting for a decision"));
            Pictures.take("dark-nonconformities");
        });
    }

    @Test
    void besideEachOther(@TempDir Path temporary) throws Exception {
        Auditor.measured(temporary, "F-320004", "24,02");
        OpenTest again = Auditor.measured(temporary, "F-320004", "24,45");
        Auditor.measured(temporary, "F-320005", "23,9");
        Auditor.showSheet(again, "F-320004");
        Screen.waitFor("the button", () -> Auditor.enabled("Compare"));
        shown("Compare", "Compare with an earlier test", true, shell -> { }, "compare");
        shown("Impact", "Impact of an instrument that read wrong", false, shell -> {
            Auditor.fields(shell).get(0).setText("M-23");
            Auditor.fields(shell).get(1).setText("0.3 % low");
            Auditor.press(shell, "Look");
            Screen.waitFor("the list", () -> Auditor.rows(Screen.all(shell, Table.class).get(0), "F-320005").size() == 1);
            Dialogs.select(shell, 0);
        }, "impact");
    }

    private static void shown(String button, String title, boolean filled, Consumer<Shell> filling, String name) throws Exception {
        CompletableFuture<String> answered = Dialogs.when(title, filled, shell -> {
            filling.accept(shell);
            Pictures.take(shell, name);
            Auditor.press(shell, "Close");
        });
        Screen.press(button);
        Screen.waitFor("the dialog", answered::isDone);
        answered.get();
    }

    /** What the records of this ledger say, which are few. */
    @Test
    void figures(@TempDir Path temporary) throws Exception {
        ReturnWindowTest.accepted(temporary, "F-320009");
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.FIGURES_VIEW);
        Screen.press("Read the figures");
        Screen.waitFor("the figures", () -> Screen.story("First-pass yield").contains(" ended with a verdict"));
        Pictures.take("figures");
        Screen.page().showView(Ids.SHEET_VIEW);
    }

    @Test
    void people() throws Exception {
        Technician.register();
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.PEOPLE_VIEW);
        Screen.waitFor("them", () -> Screen.all(Table.class).anyMatch(table -> table.getItemCount() > 2 && table.getItem(0).getText(0).equals("LW")));
        try {
            Pictures.largeAndSmall("people");
            Pictures.dark(() -> Pictures.take("dark-people"));
            Dialogs.answered("Authorise somebody", () -> Screen.press("Authorise"), dialog -> {
                Pictures.take(dialog, "authorise");
                dialog.close();
            });
        } finally {
            Screen.page().showView(Ids.SHEET_VIEW);
        }
    }
}
