package org.benchwright.ui.internal.app;

import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.bench.IdleLock;
import org.benchwright.ui.internal.bench.Reminders;
import org.benchwright.ui.internal.bench.WindowTitle;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.StillWindow;
import org.benchwright.ui.internal.house.ScanListener;
import org.benchwright.ui.internal.house.Scanned;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IAction;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.actions.ActionFactory;
import org.eclipse.ui.application.ActionBarAdvisor;
import org.eclipse.ui.application.IActionBarConfigurer;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;

/** The window: a short menu, three places to go to, and the rest for the work. */
final class BenchWindowAdvisor extends WorkbenchWindowAdvisor {

    BenchWindowAdvisor(IWorkbenchWindowConfigurer configurer) {
        super(configurer);
    }

    @Override
    public ActionBarAdvisor createActionBarAdvisor(IActionBarConfigurer configurer) {
        return new ActionBarAdvisor(configurer) {
            @Override
            protected void makeActions(IWorkbenchWindow window) {
                register(action(ActionFactory.QUIT, () -> quit(window)));
                register(action(ActionFactory.ABOUT, () -> about(window)));
                register(ActionFactory.SAVE.create(window));
            }
        };
    }

    @Override
    public void preWindowOpen() {
        IWorkbenchWindowConfigurer window = getWindowConfigurer();
        Rectangle screen = Display.getCurrent().getPrimaryMonitor().getClientArea();
        window.setInitialSize(new Point(screen.width, screen.height));
        window.setShowCoolBar(true);
        window.setShowMenuBar(true);
        window.setShowStatusLine(false);
        window.setShowPerspectiveBar(false);
        window.setTitle(Message.APP_TITLE.text());
    }

    /** The window is closed by its frame. */
    @Override
    public boolean preWindowShellClose() {
        return leaving(getWindowConfigurer().getWindow()).may();
    }

    private static Leaving leaving(IWorkbenchWindow window) {
        return new Leaving(window, window.getService(Desk.class));
    }

    /** What the menu or a key asks of the whole program, done in our way. */
    private static IAction action(ActionFactory of, Runnable does) {
        Action action = new Action() {
            @Override
            public void run() {
                does.run();
            }
        };
        action.setId(of.getId());
        action.setActionDefinitionId(of.getCommandId());
        return action;
    }

    private static void quit(IWorkbenchWindow window) {
        if (leaving(window).may()) {
            window.getWorkbench().close();
        }
    }

    /** What the program is, without what the platform tells of itself. */
    private static void about(IWorkbenchWindow window) {
        new AboutDialog(window.getShell(), window.getService(Settings.class).software()).open();
    }

    @Override
    public void postWindowOpen() {
        Shell shell = getWindowConfigurer().getWindow().getShell();
        if (!shell.getMaximized()) {
            shell.setBounds(shell.getMonitor().getClientArea());
            shell.setMaximized(true);
        }
        Clutter.hide(getWindowConfigurer().getWindow());
        Desk desk = getWindowConfigurer().getWindow().getService(Desk.class);
        ScanListener.listen(shell, scanned -> Scanned.show(getWindowConfigurer().getWindow(), scanned));
        getWindowConfigurer().getWindow().getService(Reminders.class).begin(shell);
        IdleLock.begin(shell, desk.station(), desk::stationChanged);
        WindowTitle.keep(desk, shell, getWindowConfigurer()::setTitle);
        StillWindow still = getWindowConfigurer().getWindow().getService(StillWindow.class);
        still.watch(shell, desk);
        TidyHeap.begin(shell, still);
        Settings.ready().ifPresent(file -> new ReadyTeller(shell, desk, file).start());
    }
}
