package org.benchwright.ui.internal.app;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Collectors;

import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.ui.internal.desk.WaitingStart;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.handlers.IHandlerService;

/**
 * Asks whoever closes the window while units that are open in it are energised, or tests wait in it to be begun. Only people are asked: when the
 * system ends the program there is nobody to answer, and everything is on record anyway.
 */
public final class Leaving {

    private static final String MAKE_SAFE = "org.benchwright.ui.makeSafe";

    private final IWorkbenchWindow window;
    private final Desk desk;

    /** @param window the window that is to be closed */
    public Leaving(IWorkbenchWindow window, Desk desk) {
        this.window = window;
        this.desk = desk;
    }

    /** Whether the window may be closed; where the units are to be made safe first, the step card asks for the first one's reason. */
    public boolean may() {
        return mayLeaveLive() && mayLeaveWaiting();
    }

    /** Nobody should believe that a test will begin of which this window alone knows. */
    private boolean mayLeaveWaiting() {
        List<WaitingStart> waiting = desk.waiting();
        if (waiting.isEmpty()) {
            return true;
        }
        String units = waiting.stream().map(start -> Message.LEAVE_WAITING_UNIT.text(start.serial(),
                start.words(Instant.now(), ZoneId.systemDefault())))
                .collect(Collectors.joining("\n"));
        return MessageDialog.open(MessageDialog.WARNING, window.getShell(), Message.LEAVE_WAITING_TITLE.text(),
                Labels.letters(Message.LEAVE_WAITING.text(units)), 0,
                Message.LEAVE_STAY.text(), Message.LEAVE_ANYWAY.text()) == 1;
    }

    private boolean mayLeaveLive() {
        List<Shown> live = desk.live();
        if (live.isEmpty()) {
            return true;
        }
        String units = live.stream().map(unit -> Message.LEAVE_UNIT.text(unit.serial(), String.join(", ", unit.live())))
                .collect(Collectors.joining("\n"));
        int answer = MessageDialog.open(MessageDialog.WARNING, window.getShell(), Message.LEAVE_TITLE.text(),
                Labels.letters(Message.LEAVE_WHAT.text(units)), 0,
                Message.LEAVE_MAKE_SAFE.text(), Message.LEAVE_ANYWAY.text(), Message.LEAVE_STAY.text());
        if (answer == 0) {
            makeSafe(live.get(0));
        }
        return answer == 1;
    }

    private void makeSafe(Shown unit) {
        desk.select(unit.test());
        // Behind the step card, which shows the selected unit a moment later.
        OnDisplay.later(window.getShell(), () -> {
            try {
                window.getService(IHandlerService.class).executeCommand(MAKE_SAFE, null);
            } catch (CommandException e) {
                ILog.of(Leaving.class).error(String.valueOf(e.getMessage()), e);
            }
        });
    }
}
