package org.benchwright.ui.tests;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.stream.Stream;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.bench.CardView;
import org.benchwright.ui.internal.look.Clipping;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.WorkbenchException;
import org.eclipse.ui.handlers.IHandlerService;

import static org.junit.jupiter.api.Assertions.fail;

/** The workbench on the screen, for a test that runs in its thread: finds controls, types, waits while events go on. */
final class Screen {

    /** Long: it costs nothing where things go well, and a machine may have others to serve. */
    private static final long PATIENCE_MILLIS = 120_000;
    /** A window draws this often at most, in ms; and what is drawn may have others drawn behind it. */
    private static final int FRAME_MILLIS = 20;
    private static final int FRAMES = 20;

    private Screen() {
    }

    static IWorkbenchWindow window() {
        return PlatformUI.getWorkbench().getWorkbenchWindows()[0];
    }

    static IWorkbenchPage page() {
        return window().getActivePage();
    }

    static void perspective(String id) throws WorkbenchException {
        PlatformUI.getWorkbench().showPerspective(id, window());
        settle();
    }

    /** Lets events go on until the condition holds; fails after a while. */
    static void waitFor(String what, BooleanSupplier condition) {
        long end = System.currentTimeMillis() + PATIENCE_MILLIS;
        Display display = Display.getCurrent();
        while (!condition.getAsBoolean()) {
            if (System.currentTimeMillis() > end) {
                fail("waited too long: " + what);
            }
            if (!display.readAndDispatch()) {
                // The timer ends the sleep.
                display.timerExec(5, () -> { });
                display.sleep();
            }
        }
    }

    /** Lets all waiting events go on. */
    static void settle() {
        while (Display.getCurrent().readAndDispatch()) {
            // one after the other
        }
    }

    /** The visible controls of a class within a part of the screen. */
    static <T extends Control> List<T> all(Composite within, Class<T> type) {
        List<T> found = new ArrayList<>();
        for (Control child : within.getChildren()) {
            if (type.isInstance(child) && child.isVisible()) {
                found.add(type.cast(child));
            }
            if (child instanceof Composite composite) {
                found.addAll(all(composite, type));
            }
        }
        return found;
    }

    static <T extends Control> Stream<T> all(Class<T> type) {
        return all(window().getShell(), type).stream();
    }

    static <T extends Control> T one(Class<T> type, Predicate<T> which) {
        return all(type).filter(which).findFirst().orElseThrow(() -> new AssertionError("not on the screen: " + type.getSimpleName()));
    }

    /** Presses the button whose text begins so, blanks aside. */
    static void press(String text) {
        one(Button.class, button -> button.getText().strip().startsWith(text)).notifyListeners(SWT.Selection, new Event());
        settle();
    }

    /** Ticks the box whose text begins so, or takes the tick away. */
    static void tick(String text, boolean ticked) {
        Button box = one(Button.class, button -> (button.getStyle() & SWT.CHECK) != 0 && button.getText().replace("&", "").startsWith(text));
        box.setSelection(ticked);
        box.notifyListeners(SWT.Selection, new Event());
        settle();
    }

    /** Puts a text where it is pasted from. */
    static void copy(String text) {
        Clipping.copy(Display.getCurrent(), text);
    }

    /** The text that would be pasted. */
    static String copied() {
        Clipboard clipboard = new Clipboard(Display.getCurrent());
        try {
            return String.valueOf(clipboard.getContents(TextTransfer.getInstance()));
        } finally {
            clipboard.dispose();
        }
    }

    /** Runs a command, as its menu would. */
    static void command(String id) throws Exception {
        window().getService(IHandlerService.class).executeCommand(id, null);
        settle();
    }

    /** The text to be read that begins so; empty if there is none. */
    static String story(String beginning) {
        return all(StyledText.class).map(StyledText::getText).filter(text -> text.startsWith(beginning)).findFirst().orElse("");
    }

    /** Selects a row of a table, as a click would. */
    static void select(Table table, int row) {
        table.setSelection(row);
        Event event = new Event();
        event.item = table.getItem(row);
        table.notifyListeners(SWT.Selection, event);
    }

    /** Selects a row of the records. */
    static void selectRecord(Object row) {
        IViewPart view = page().findView(Ids.RECORDS_VIEW);
        page().activate(view);
        view.getSite().getSelectionProvider().setSelection(new StructuredSelection(row));
        settle();
    }

    /** Waits until what is on the screen has been drawn: as many frames as that takes, however long the machine needs for them. */
    static void waitForDrawing() {
        Display display = Display.getCurrent();
        int[] frames = {0};
        waitFor("drawing", () -> {
            if (frames[0] % 2 == 0) {
                frames[0]++;
                display.timerExec(FRAME_MILLIS, () -> frames[0]++);
            }
            return frames[0] >= 2 * FRAMES;
        });
    }

    /** What a part of the screen shows, in as many pixels as it has. */
    static ImageData picture(Rectangle part) {
        Image image = new Image(Display.getCurrent(), part.width, part.height);
        GC gc = new GC(Display.getCurrent());
        try {
            gc.copyArea(image, part.x, part.y);
            return image.getImageData(Display.getCurrent().getPrimaryMonitor().getZoom());
        } finally {
            gc.dispose();
            image.dispose();
        }
    }

    /** The step card without what is asked and entered. */
    static Control card() {
        return one(Canvas.class, canvas -> canvas.getClass().getSimpleName().equals("CardCanvas"));
    }

    /** The step card's entry. */
    private static Composite entry() {
        return one(Composite.class, part -> part.getClass().getSimpleName().equals("EntryBar"));
    }

    /** Which test's which version the step card asks for. */
    static String asksFor() {
        return String.valueOf(entry().getData(CardView.ASKS_FOR));
    }

    /** The fields of the step card's entry. */
    static List<Text> entryFields() {
        return all(entry(), Text.class);
    }

    /** Presses a key in a field. */
    static boolean key(Control control, int keyCode, char character) {
        Event event = new Event();
        event.keyCode = keyCode;
        event.character = character;
        event.doit = true;
        control.notifyListeners(SWT.KeyDown, event);
        return event.doit;
    }

    /** Types an answer into the step card, Enter behind each part. */
    static void enter(String... parts) {
        List<Text> fields = entryFields();
        if (fields.size() != parts.length) {
            fail(fields.size() + " fields for " + List.of(parts));
        }
        for (int i = 0; i < parts.length; i++) {
            fields.get(i).setText(parts[i]);
            key(fields.get(i), SWT.CR, '\r');
        }
        settle();
    }
}
