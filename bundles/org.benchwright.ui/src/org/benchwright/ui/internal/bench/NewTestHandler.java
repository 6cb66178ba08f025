package org.benchwright.ui.internal.bench;

import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.app.Editors;
import org.benchwright.ui.internal.app.ProcedureFiles;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.window.Window;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;

/** Opens a new test. */
public final class NewTestHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        open(Cards.window(event));
        return null;
    }

    /** Asks what to test, and shows the step card once the test is open. */
    public void open(IWorkbenchWindow window) {
        open(window, "");
    }

    /** As {@link #open(IWorkbenchWindow)}, with a unit that is known already. */
    public void open(IWorkbenchWindow window, String unit) {
        Desk desk = window.getService(Desk.class);
        Settings settings = window.getService(Settings.class);
        NewTestDialog dialog = new NewTestDialog(window.getShell(), desk, settings, unit, written(window.getActivePage()));
        if (dialog.open() == Window.OK) {
            Cards.shown(window).setFocus();
        }
    }

    /** Whoever writes a procedure wants to try that one. */
    private static Optional<Path> written(IWorkbenchPage page) {
        return Ids.AUTHOR.equals(page.getPerspective().getId()) ? Editors.file(page.getActiveEditor()).filter(ProcedureFiles::isProcedure)
                : Optional.empty();
    }
}
