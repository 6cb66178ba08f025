package org.benchwright.ui.internal.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.eclipse.core.runtime.ILog;
import org.eclipse.swt.widgets.Shell;

/** Makes a file once the window can be worked with: the units on the bench are read, and what is shown of them is drawn. */
final class ReadyTeller {

    private final Shell shell;
    private final Desk desk;
    private final Path file;
    private final DeskListener listener = (change, test) -> look();
    private boolean told;

    ReadyTeller(Shell shell, Desk desk, Path file) {
        this.shell = shell;
        this.desk = desk;
        this.file = file;
    }

    void start() {
        desk.add(listener);
        look();
    }

    private void look() {
        if (desk.looked()) {
            // Behind the views, which were told of it before.
            OnDisplay.later(shell, () -> {
                if (!told) {
                    told = true;
                    desk.remove(listener);
                    shell.update();
                    write();
                }
            });
        }
    }

    private void write() {
        try {
            Files.writeString(file, String.valueOf(ProcessHandle.current().pid()));
        } catch (IOException e) {
            ILog.of(ReadyTeller.class).error(String.valueOf(e.getMessage()), e);
        }
    }
}
