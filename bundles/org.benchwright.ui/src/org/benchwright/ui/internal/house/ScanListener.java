package org.benchwright.ui.internal.house;

import java.util.Optional;
import java.util.function.Consumer;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Spinner;
import org.eclipse.swt.widgets.Text;

/** Hears a scanner in every view of a window, without a click; where somebody types a text, the scanner types into that. */
public final class ScanListener implements Listener {

    private final Shell window;
    private final Consumer<String> scanned;
    private Scanner scanner = Scanner.idle();

    private ScanListener(Shell window, Consumer<String> scanned) {
        this.window = window;
        this.scanned = scanned;
    }

    /**
     * Listens as long as the window is open.
     *
     * @param scanned is told, on the display's thread, what was scanned
     */
    public static void listen(Shell window, Consumer<String> scanned) {
        ScanListener listener = new ScanListener(window, scanned);
        Display display = window.getDisplay();
        display.addFilter(SWT.KeyDown, listener);
        window.addDisposeListener(event -> display.removeFilter(SWT.KeyDown, listener));
    }

    @Override
    public void handleEvent(Event event) {
        if (elsewhere(event.widget instanceof Control control ? Optional.of(control) : Optional.empty())) {
            scanner = Scanner.idle();
            return;
        }
        long now = event.time & 0xffffffffL;
        if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR || event.keyCode == SWT.LF) {
            Optional<String> text = scanner.entered(now);
            scanner = Scanner.idle();
            if (text.isPresent()) {
                // The button or row that has the focus must not take the scanner's Enter for a finger's.
                event.doit = false;
                event.type = SWT.None;
                scanned.accept(text.get());
            }
        } else if (event.character != 0 && (event.stateMask & (SWT.ALT | SWT.COMMAND)) == 0) {
            scanner = scanner.with(event.character, now);
        }
    }

    private boolean elsewhere(Optional<Control> control) {
        if (control.isEmpty() || control.get().isDisposed() || control.get().getShell() != window) {
            return true;
        }
        Control focus = control.get();
        return focus instanceof Text text && text.getEditable() || focus instanceof StyledText styled && styled.getEditable()
                || focus instanceof Combo || focus instanceof Spinner;
    }
}
