package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.Map;

import org.benchwright.present.TimelineLine;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.bench.WindowTitle;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Whoever reads in the title that an entry is on record can type the next one. */
@ExtendWith(QuietLog.class)
class WindowTitleTest {

    @Test
    void theTitleComesBehindTheCardWhicheverOfThemBeganToListenFirst() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-600021", true);
        Answers answers = Answers.of("accepted");
        Shell window = new Shell(Screen.window().getShell());
        Map<String, String> cards = new LinkedHashMap<>();
        try {
            WindowTitle.keep(Technician.desk(), window, title -> cards.putIfAbsent(title, Screen.asksFor()));
            // The card that is opened now listens behind that title.
            Screen.page().hideView(Screen.page().findView(Ids.CARD_VIEW));
            Screen.page().showView(Ids.CARD_VIEW);
            for (int i = 0; i < 4; i++) {
                Technician.answer(test, answers);
                Shown now = test.shown();
                String title = "C16-600021: entry " + now.soFar().stream().mapToLong(TimelineLine::sequence).max().orElseThrow() + " recorded - Benchwright";
                Screen.waitFor(title + " " + cards, () -> cards.containsKey(title));
                assertEquals(test.id() + " " + now.version(), cards.get(title), title);
            }
        } finally {
            window.dispose();
        }
    }
}
