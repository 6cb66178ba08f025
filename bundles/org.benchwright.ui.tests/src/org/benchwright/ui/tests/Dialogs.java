package org.benchwright.ui.tests;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;

/** Answers a dialog that waits for a person: it has the display's thread to itself, so a timer has to come in. */
final class Dialogs {

    private static final int LOOK_AGAIN_MILLIS = 50;
    private static final int PATIENCE_MILLIS = 90_000;

    private Dialogs() {
    }

    /** What opens a dialog. */
    @FunctionalInterface
    interface Opening {
        void run() throws Exception;
    }

    /** Opens a dialog, does something with it as soon as it is filled, and waits until that is done; fails where it fails. */
    static void answered(String title, Opening opening, Consumer<Shell> work) throws Exception {
        CompletableFuture<String> done = when(title, work);
        opening.run();
        Screen.waitFor(title, done::isDone);
        // Without a window manager nobody does, and the window's keys would stay those of a dialog.
        Screen.window().getShell().forceActive();
        Screen.settle();
        done.get();
    }

    /** Does something with the dialog of this title as soon as it is filled; closes it where that fails, or the test would never end. */
    static CompletableFuture<String> when(String title, Consumer<Shell> work) {
        return when(title, true, work);
    }

    /**
     * Does something with the dialog of this title.
     *
     * @param filled whether to wait until its lists are filled
     */
    static CompletableFuture<String> when(String title, boolean filled, Consumer<Shell> work) {
        CompletableFuture<String> done = new CompletableFuture<>();
        look(title, filled, work, done, System.currentTimeMillis() + PATIENCE_MILLIS);
        return done;
    }

    private static void look(String title, boolean filled, Consumer<Shell> work, CompletableFuture<String> done, long end) {
        List<Shell> open = Stream.of(Display.getCurrent().getShells()).filter(shell -> shell.isVisible() && shell.getText().equals(title))
                .toList();
        if (System.currentTimeMillis() > end) {
            done.completeExceptionally(new TimeoutException("not filled: " + title + " " + open));
            open.forEach(Shell::close);
        } else if (open.isEmpty() || filled && !isFilled(open.get(0))) {
            Display.getCurrent().timerExec(LOOK_AGAIN_MILLIS, () -> look(title, filled, work, done, end));
        } else {
            try {
                work.accept(open.get(0));
                done.complete(title);
            } catch (RuntimeException | AssertionError failed) {
                done.completeExceptionally(failed);
                if (!open.get(0).isDisposed()) {
                    open.get(0).close();
                }
            }
        }
    }

    /** A list is filled a little later than it is shown. */
    private static boolean isFilled(Shell dialog) {
        return Screen.all(dialog, Table.class).stream().allMatch(table -> table.getItemCount() > 0);
    }

    /** The rows of the dialog's list. */
    static List<String> rows(Shell dialog) {
        return Stream.of(Screen.all(dialog, Table.class).get(0).getItems()).map(TableItem::getText).toList();
    }

    /** Selects a row of the dialog's list. */
    static void select(Shell dialog, int row) {
        Screen.select(Screen.all(dialog, Table.class).get(0), row);
    }

    /** Presses OK; fails if the dialog stays. */
    static void ok(Shell dialog) {
        Button ok = Screen.all(dialog, Button.class).stream().filter(button -> button.getText().replace("&", "").equals("OK"))
                .findFirst().orElseThrow(() -> new AssertionError("no OK in " + dialog.getText()));
        ok.notifyListeners(SWT.Selection, new Event());
        if (!dialog.isDisposed() && dialog.isVisible()) {
            throw new AssertionError("OK is not taken by " + dialog.getText());
        }
    }
}
