package org.benchwright.ui.tests;

import java.lang.reflect.Constructor;
import java.nio.file.Path;
import java.util.stream.Stream;

import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DropTarget;
import org.eclipse.swt.dnd.FileTransfer;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;

import static org.junit.jupiter.api.Assertions.assertTrue;

/** Drops files on a part of the window, from where the system hands them to its drop target on. */
final class Drops {

    private Drops() {
    }

    /** The part of a dialog on which files can be dropped. */
    static Control target(Shell dialog) {
        return Screen.all(dialog, Composite.class).stream().filter(part -> part.getData(DND.DROP_TARGET_KEY) != null).findFirst().orElseThrow();
    }

    static void on(Control control, Path... files) {
        DropTarget target = (DropTarget) control.getData(DND.DROP_TARGET_KEY);
        assertTrue(target != null, "nothing can be dropped on " + control);
        assertTrue(Stream.of(target.getTransfer()).anyMatch(FileTransfer.class::isInstance), "no files can be dropped on " + control);
        try {
            // What the system tells a drop target has no public maker.
            Constructor<?> made = Class.forName("org.eclipse.swt.dnd.DNDEvent", true, DropTarget.class.getClassLoader()).getDeclaredConstructor();
            made.setAccessible(true);
            Event event = (Event) made.newInstance();
            event.widget = target;
            event.detail = DND.DROP_COPY;
            event.data = Stream.of(files).map(Path::toString).toArray(String[]::new);
            target.notifyListeners(DND.Drop, event);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
        Screen.settle();
    }
}
