package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.ProgressBar;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Records found, read and checked in the window. */
@ExtendWith(QuietLog.class)
class AuditWindowTest {

    @Test
    void aRecordIsFoundByItsWordsAndReadAsAStory() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-300001", true);
        Technician.finish(test, Answers.of("rejected-at-power-up"));
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.RECORDS_VIEW);
        Screen.press("Read again");
        Text search = Screen.one(Text.class, text -> (text.getStyle() & SWT.SEARCH) != 0);
        search.setText("c16-300001 REJECTED");
        Screen.waitFor("the record", () -> Auditor.records().getItemCount() == 1);
        assertEquals("C16-300001", Auditor.records().getItem(0).getText(1));
        Screen.waitFor("the count", () -> Screen.all(Label.class).anyMatch(label -> label.getText().startsWith("1 of ")));
        assertTrue(Screen.one(Label.class, label -> label.getText().startsWith("1 of ")).getText()
                .contains("serial number, family, procedure, verdict, departures, people, instruments or dates: c16-300001 REJECTED"));
        search.setText("c16-300001 accepted");
        Screen.waitFor("no record", () -> Auditor.records().getItemCount() == 0);
        search.setText("C16-300001");
        Screen.waitFor("the record again", () -> Auditor.records().getItemCount() == 1);

        Screen.page().showView(Ids.FIGURES_VIEW);
        Screen.selectRecord(Auditor.records().getItem(0).getData());
        Screen.waitFor("the sheet", () -> Screen.story("Unit C16-300001").contains("would be rejected"));
        String story = Screen.story("Unit C16-300001");
        assertTrue(story.contains("QN: Mark: on"), story);
        assertTrue(story.contains("red and stays red"), story);
        assertTrue(story.contains("Sealed."), story);
        assertTrue(story.contains("3.02 V accepted: 0.52 V inside of the limits"), "with its margin: " + story);
        assertFalse(story.contains("QN: text:"), "entries bear the procedure's own words: " + story);
    }

    @Test
    void theLedgerIsCheckedAndFoundSound() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-300002", true);
        Technician.finish(test, Answers.of("rejected-at-power-up"));
        Screen.perspective(Ids.AUDIT);
        Screen.press("Check the ledger");
        Screen.waitFor("the verdict", () -> !Screen.story("SOUND").isEmpty());
        // The bench's key, and those of people who signed something in other tests of this window.
        assertTrue(Screen.story("SOUND").lines().anyMatch(line -> line.matches("Signatures: (1 key|\\d+ keys), no fault")), Screen.story("SOUND"));
    }

    @Test
    void aCheckIsStoppedByItsButtonAndCanBeStartedAgain() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-300003", true);
        Technician.answerUntil(test, Answers.of("accepted"), "precondition.earth_bond");
        Screen.perspective(Ids.AUDIT);
        Button check = Screen.one(Button.class, button -> button.getText().startsWith("Check the ledger"));
        Button stop = Screen.one(Button.class, button -> button.getText().startsWith("Stop"));
        assertFalse(stop.isEnabled());
        // A check of so small a ledger could be over before anybody stops it.
        Job.getJobManager().suspend();
        try {
            check.notifyListeners(SWT.Selection, new Event());
            assertFalse(check.isEnabled(), "not twice at once");
            assertTrue(stop.isEnabled());
            assertTrue(Screen.all(ProgressBar.class).findFirst().isPresent());
            stop.notifyListeners(SWT.Selection, new Event());
        } finally {
            Job.getJobManager().resume();
        }
        Screen.waitFor("that it stopped", () -> !Screen.story("Stopped: this says nothing about what was not looked at.").isEmpty());
        assertTrue(check.isEnabled());
        assertFalse(stop.isEnabled());
        assertTrue(Screen.all(ProgressBar.class).findFirst().isEmpty());
        Screen.press("Check the ledger");
        Screen.waitFor("the verdict", () -> !Screen.story("SOUND").isEmpty());
    }
}
