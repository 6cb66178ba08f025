package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchwright.ui.Ids;
import org.eclipse.ui.IViewPart;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** F1 opens the page of the manual for the view that is active, and the Help menu what there is. */
@ExtendWith(QuietLog.class)
class ManualWindowTest {

    @AfterEach
    void closeThePage() {
        IViewPart page = Screen.page().findView(Ids.PAGE_VIEW);
        if (page != null) {
            Screen.page().hideView(page);
        }
    }

    @ParameterizedTest
    @CsvSource({Ids.BENCH + ", " + Ids.CARD_VIEW + ", The technician: receive", Ids.BENCH + ", " + Ids.INSTRUMENTS_VIEW + ", Who owns the bench",
        Ids.AUDIT + ", " + Ids.DEPARTURES_VIEW + ", The auditor: decide", Ids.AUDIT + ", " + Ids.CHECK_VIEW + ", What tampering",
        Ids.AUTHOR + ", " + Ids.PROOF_VIEW + ", What a procedure proves"})
    void thePageForWhatIsInFrontIsShown(String perspective, String view, String beginning) throws Exception {
        Screen.perspective(perspective);
        Screen.page().activate(Screen.page().showView(view));
        Engineer.press("F1");
        Screen.waitFor("the page", () -> !Screen.story(beginning).isEmpty());
        String shown = Screen.story(beginning);
        assertFalse(shown.contains("```") || shown.contains("](") || shown.contains("<!--"), shown);
        assertTrue(Screen.page().isPartVisible(Screen.page().findView(view)), "the page hides nothing that it is about");
    }

    @Test
    void theContentsAreInTheMenu() throws Exception {
        Screen.perspective(Ids.BENCH);
        Screen.command("org.benchwright.ui.manual");
        Screen.waitFor("the contents", () -> Screen.story("Documentation\n").contains("the technician"));
    }
}
