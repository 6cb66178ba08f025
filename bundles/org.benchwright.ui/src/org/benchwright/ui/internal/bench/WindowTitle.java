package org.benchwright.ui.internal.bench;

import java.util.function.Consumer;

import org.benchwright.present.TimelineLine;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.benchwright.ui.internal.desk.Shown;
import org.eclipse.swt.widgets.Shell;

/** The window's title: which unit is on the step card, and which of its entries is safely on record. */
public final class WindowTitle {

    private WindowTitle() {
    }

    /**
     * Keeps a title up to date as long as its window is open, behind the views that show the same: whoever reads in the title what is on record can
     * type what is asked next.
     *
     * @param title is told each title, on the display's thread
     */
    public static void keep(Desk desk, Shell window, Consumer<String> title) {
        DeskListener listener = (change, test) -> {
            String now = of(Face.of(desk));
            // Some views listen longer than this, some shorter; each takes one turn of the display to show what has changed.
            OnDisplay.later(window, () -> OnDisplay.later(window, () -> title.accept(now)));
        };
        desk.add(listener);
        window.addDisposeListener(event -> desk.remove(listener));
        listener.changed(DeskListener.Change.SELECTION, desk.selected());
    }

    private static String of(Face face) {
        if (face instanceof Face.Here here) {
            return of(here.shown());
        }
        return face instanceof Face.NotHere not ? Message.TITLE_NOT_HERE.text(not.unit().serial()) : Message.APP_TITLE.text();
    }

    private static String of(Shown shown) {
        long recorded = shown.soFar().stream().mapToLong(TimelineLine::sequence).max().orElse(0);
        return shown.elsewhere() ? Message.TITLE_ELSEWHERE.text(shown.serial())
                : Message.TITLE_UNIT.text(shown.serial(), String.valueOf(recorded));
    }
}
