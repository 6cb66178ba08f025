package org.benchwright.ui.internal.author;

import java.util.function.Consumer;

import org.eclipse.ui.IPartListener;
import org.eclipse.ui.IWorkbenchPart;

/** Tells which part is used now. */
record PartActivated(Consumer<IWorkbenchPart> told) implements IPartListener {

    @Override
    public void partActivated(IWorkbenchPart part) {
        told.accept(part);
    }

    @Override
    public void partBroughtToTop(IWorkbenchPart part) {
        told.accept(part);
    }

    @Override
    public void partClosed(IWorkbenchPart part) {
        // The one that is used next will be told.
    }

    @Override
    public void partDeactivated(IWorkbenchPart part) {
        // The one that is used next will be told.
    }

    @Override
    public void partOpened(IWorkbenchPart part) {
        // It is activated too if it is used.
    }
}
