package org.benchwright.ui.internal.house;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DropTarget;
import org.eclipse.swt.dnd.DropTargetAdapter;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.FileTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.widgets.Control;

/** Files that are dropped on a part of the window. */
public final class FilesDropped {

    private FilesDropped() {
    }

    /** Tells which files were dropped on a control. */
    public static void on(Control control, Consumer<List<Path>> dropped) {
        DropTarget target = new DropTarget(control, DND.DROP_COPY | DND.DROP_DEFAULT);
        target.setTransfer(new Transfer[] {FileTransfer.getInstance()});
        target.addDropListener(new DropTargetAdapter() {
            @Override
            public void dragEnter(DropTargetEvent event) {
                event.detail = DND.DROP_COPY;
            }

            @Override
            public void drop(DropTargetEvent event) {
                if (event.data instanceof String[] names) {
                    dropped.accept(Stream.of(names).map(Path::of).toList());
                }
            }
        });
    }
}
