package org.benchwright.ui.internal.bench;

import java.util.function.Consumer;

import org.benchwright.present.TimelineLine;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.Shown;

/** The window's title: which unit is on the step card, and which of its entries is safely on record. */
public final class WindowTitle {

    private WindowTitle() {
    }

    /**
     * Keeps a title up to date.
     *
     * @param title is told each title, on whichever thread changed it
     */
    public static void keep(Desk desk, Consumer<String> title) {
        desk.add((change, test) -> title.accept(of(Face.of(desk))));
        title.accept(of(Face.of(desk)));
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
