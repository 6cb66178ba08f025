package org.benchwright.emptywindow.tests;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchAdvisor;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;

/** A window as large as the real one, with nothing in it; makes a file as soon as it is drawn. */
final class EmptyAdvisor extends WorkbenchAdvisor {

    private static final String READY = "benchwright.ready";

    @Override
    public String getInitialWindowPerspectiveId() {
        return EmptyPerspective.ID;
    }

    @Override
    public WorkbenchWindowAdvisor createWorkbenchWindowAdvisor(IWorkbenchWindowConfigurer configurer) {
        return new WorkbenchWindowAdvisor(configurer) {
            @Override
            public void preWindowOpen() {
                Rectangle screen = Display.getCurrent().getPrimaryMonitor().getClientArea();
                configurer.setInitialSize(new Point(screen.width, screen.height));
                configurer.setShowMenuBar(true);
                configurer.setShowCoolBar(true);
                configurer.setShowStatusLine(false);
                configurer.setShowPerspectiveBar(false);
            }

            @Override
            public void postWindowOpen() {
                Shell shell = configurer.getWindow().getShell();
                shell.getDisplay().asyncExec(() -> tellReady(shell));
            }
        };
    }

    private static void tellReady(Shell shell) {
        shell.update();
        try {
            Files.writeString(Path.of(System.getProperty(READY)), String.valueOf(ProcessHandle.current().pid()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
