package org.benchwright.ui.internal.app;

import java.io.IOException;
import java.net.URL;
import java.nio.file.Path;

import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.author.Authoring;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.house.House;
import org.benchwright.ui.internal.look.SystemStyle;
import org.eclipse.core.runtime.Platform;
import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.osgi.service.datalocation.Location;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.PlatformUI;

/** Opens the window and stays until it is closed. Whatever was entered is durable by then. */
public final class WindowApplication implements IApplication {

    @Override
    public Object start(IApplicationContext context) throws IOException {
        SystemStyle.use();
        Display display = PlatformUI.createDisplay();
        try {
            Settings settings = Settings.of(System.getenv());
            if (!lockLayout(settings)) {
                MessageDialog.openInformation(null, Message.APP_TITLE.text(), Message.APP_SECOND_WINDOW.text());
                return EXIT_OK;
            }
            try (Desk desk = new Desk(settings.ledger(), settings.software()); Authoring authoring = new Authoring(settings.ledger());
                    House house = new House(settings.ledger(), settings.procedures(), settings.station(), settings.software())) {
                int result = PlatformUI.createAndRunWorkbench(display, new BenchWorkbenchAdvisor(desk, authoring, house, settings));
                return result == PlatformUI.RETURN_RESTART ? EXIT_RESTART : EXIT_OK;
            }
        } finally {
            Platform.getInstanceLocation().release();
            display.dispose();
        }
    }

    /** The window's own layout lies beside the ledger; one window at a time may write it. */
    private static boolean lockLayout(Settings settings) throws IOException {
        Location location = Platform.getInstanceLocation();
        if (!location.isSet()) {
            Path folder = settings.ledger().resolveSibling("window");
            return location.set(new URL("file", null, folder.toString().replace('\\', '/') + "/"), true);
        }
        return location.isLocked() ? false : location.lock();
    }

    @Override
    public void stop() {
        if (!PlatformUI.isWorkbenchRunning()) {
            return;
        }
        IWorkbench workbench = PlatformUI.getWorkbench();
        Display display = workbench.getDisplay();
        display.syncExec(() -> {
            if (!display.isDisposed()) {
                workbench.close();
            }
        });
    }
}
