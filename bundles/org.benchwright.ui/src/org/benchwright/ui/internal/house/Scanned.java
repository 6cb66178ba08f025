package org.benchwright.ui.internal.house;

import java.util.Optional;

import org.benchwright.core.ScannedText;
import org.benchwright.present.UnitStory;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.bench.RoundsView;
import org.benchwright.ui.internal.desk.Desk;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.WorkbenchException;

/**
 * Goes to a unit that was scanned: on a round to its row, to its open test, else to its receipt; one that is not in the house is offered to be
 * received.
 */
public final class Scanned {

    private Scanned() {
    }

    /** Goes there. */
    public static void show(IWorkbenchWindow window, String scanned) {
        if (ScannedText.clean(scanned).isEmpty()) {
            return;
        }
        if (window.getActivePage().getActivePart() instanceof RoundsView round && round.scanned(scanned)) {
            return;
        }
        Shell shell = window.getShell();
        window.getService(House.class).ask(receiving -> receiving.look(scanned)).whenComplete((found, failure) -> OnDisplay.later(shell, () -> {
            if (failure != null) {
                Failures.tell(shell, failure);
            } else {
                go(window, found);
            }
        }));
    }

    private static void go(IWorkbenchWindow window, UnitStory found) {
        try {
            IWorkbenchPage page = window.getWorkbench().showPerspective(Ids.BENCH, window);
            Optional<String> test = found.openTest();
            if (test.isPresent()) {
                window.getService(Desk.class).select(test.get());
                page.showView(Ids.CARD_VIEW);
                return;
            }
            ((ReceivedView) page.showView(Ids.RECEIVED_VIEW)).select(found);
            if (found.inHouse().isEmpty()) {
                new ReceiveDialog(window.getShell(), window.getService(House.class), window.getService(Settings.class), found.unit()).open();
            }
        } catch (WorkbenchException e) {
            throw new IllegalStateException("the perspective of the bench can't be shown", e);
        }
    }
}
