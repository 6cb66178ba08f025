package org.benchwright.ui.internal.app;

import java.nio.file.Path;

import org.benchwright.ui.internal.Message;
import org.eclipse.core.filesystem.EFS;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.ide.IDE;

/** Opens files for writing. */
public final class Editors {

    private Editors() {
    }

    /** Opens a file in the editor that is registered for it; says so where that fails. */
    public static void open(IWorkbenchPage page, Path file) {
        try {
            IDE.openEditorOnFileStore(page, EFS.getLocalFileSystem().getStore(file.toUri()));
        } catch (PartInitException e) {
            ErrorDialog.openError(page.getWorkbenchWindow().getShell(), Message.APP_TITLE.text(),
                    Message.EDITOR_NOT_OPENED.text(file.toString()), e.getStatus());
        }
    }
}
