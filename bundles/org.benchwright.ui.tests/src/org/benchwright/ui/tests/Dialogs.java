package org.benchwright.ui.tests;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.ui.internal.look.Labels;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;

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
        answered(title, true, opening, work);
    }

    /** As {@link #answered(String, Opening, Consumer)}, with one whose lists are filled by what is done with it. */
    static void answeredEmpty(String title, Opening opening, Consumer<Shell> work) throws Exception {
        answered(title, false, opening, work);
    }

    private static void answered(String title, boolean filled, Opening opening, Consumer<Shell> work) throws Exception {
        CompletableFuture<String> done = when(title, filled, work);
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

    /** The fields that can be written into, in their order. */
    static List<Text> fields(Shell dialog) {
        return Screen.all(dialog, Text.class).stream().filter(Text::getEditable).toList();
    }

    /** What stands at its head: what it is about, or why it refuses. */
    static String message(Shell dialog) {
        return Screen.all(dialog, Text.class).stream().filter(text -> !text.getEditable() && text.isVisible()).map(Text::getText)
                .collect(Collectors.joining("\n"));
    }

    /** What its labels say. */
    static String words(Shell dialog) {
        return Screen.all(dialog, Label.class).stream().map(Labels::said).collect(Collectors.joining("\n"));
    }

    /** The box to be ticked. */
    static Button box(Shell dialog) {
        return Screen.all(dialog, Button.class).stream().filter(button -> (button.getStyle() & SWT.CHECK) != 0).findFirst().orElseThrow();
    }

    /** Presses the button with these words on it. */
    static void press(Shell dialog, String words) {
        Screen.all(dialog, Button.class).stream().filter(button -> (button.getStyle() & SWT.PUSH) != 0 && button.getText().replace("&", "").equals(words))
                .findFirst().orElseThrow(() -> new AssertionError("no " + words + " in " + dialog.getText())).notifyListeners(SWT.Selection, new Event());
    }

    /** Presses the button that Enter presses. */
    static void enter(Shell dialog) {
        dialog.getDefaultButton().notifyListeners(SWT.Selection, new Event());
        Screen.settle();
    }

    /** Presses OK; fails if the dialog stays. */
    static void ok(Shell dialog) {
        press(dialog, "OK");
        if (!dialog.isDisposed() && dialog.isVisible()) {
            throw new AssertionError("OK is not taken by " + dialog.getText());
        }
    }

    /** Opens a dialog, begins something in it and closes it before that is over; what is told in a box then. */
    static String refusedBehind(String title, Opening opening, Consumer<Shell> begin) throws Exception {
        CompletableFuture<String> words = new CompletableFuture<>();
        answered(title, opening, dialog -> {
            begin.accept(dialog);
            dialog.close();
            when(title, false, box -> {
                words.complete(words(box));
                ok(box);
            });
        });
        Screen.waitFor("the box", words::isDone);
        return words.join();
    }
}
