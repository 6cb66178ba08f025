package org.benchwright.ui.tests;

import java.nio.file.Path;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.eclipse.swt.custom.StyledText;
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
        Screen.waitFor("records", () -> Auditor.records().getItemCount() > 0);
        Screen.selectRecord(Auditor.records().getItem(0).getData());
        Screen.press("Check the ledger");
        Screen.waitFor("the verdict", () -> Screen.all(StyledText.class).anyMatch(t -> t.getText().contains("SOUND")));
        Pictures.take("audit");
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
        Dialogs.answered("Decide on a departure", () -> Screen.press("Decide"), shell -> {
            Dialogs.fields(shell).get(0).setText("nothing was begun");
            Auditor.password(shell, "MJ", "secret");
            Pictures.take(shell, "decide");
            Dialogs.press(shell, "Cancel");
        });
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
            Dialogs.answered("Decide on a nonconformity", () -> Screen.press("Decide"), shell -> {
                Pictures.take(shell, "dark-decide");
                shell.close();
            });
        });
    }

    @Test
    void besideEachOther(@TempDir Path temporary) throws Exception {
        Auditor.measured(temporary, "F-320004", "24,02");
        OpenTest again = Auditor.measured(temporary, "F-320004", "24,45");
        Auditor.measured(temporary, "F-320005", "23,9");
        Auditor.showSheet(again, "F-320004");
        Screen.waitFor("the button", () -> Auditor.enabled("Compare"));
        Dialogs.answered("Compare with an earlier test", () -> Screen.press("Compare"), shell -> {
            Pictures.take(shell, "compare");
            Dialogs.press(shell, "Close");
        });
        Dialogs.answeredEmpty("Impact of an instrument that read wrong", () -> Screen.press("Impact"), shell -> {
            Dialogs.fields(shell).get(0).setText("M-23");
            Dialogs.fields(shell).get(1).setText("0.3 % low");
            Dialogs.press(shell, "Find tests");
            Screen.waitFor("the list", () -> Auditor.rows(Screen.all(shell, Table.class).get(0), "F-320005").size() == 1);
            Dialogs.select(shell, 0);
            Pictures.take(shell, "impact");
            Dialogs.press(shell, "Close");
        });
    }

    /** What comes after a record: its unit came back, and records are drawn for reviews. */
    @Test
    void returnsAndReviews(@TempDir Path temporary) throws Exception {
        Auditor.showSheet(Auditor.test(temporary, "F-320006", true), "F-320006");
        Screen.waitFor("that it can come back", () -> Auditor.enabled("It came back"));
        Dialogs.answered("A unit came back", () -> Screen.press("It came back"), shell -> {
            Dialogs.fields(shell).get(1).setText("stops when warm");
            Pictures.take(shell, "came-back");
            shell.close();
        });
        Dialogs.answered("Plan reviews", () -> Screen.press("Plan reviews ..."), shell -> {
            Dialogs.fields(shell).get(2).setText("the first month");
            Pictures.take(shell, "plan-reviews");
            shell.close();
        });
    }

    /** What the records of this ledger say, which are few. */
    @Test
    void figures(@TempDir Path temporary) throws Exception {
        Auditor.test(temporary, "F-320009", true);
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
