package org.benchwright.ui.internal.app;

import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.ui.internal.Message;
import org.eclipse.core.filesystem.EFS;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IURIEditorInput;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;

/** Files that are open for writing. */
public final class Editors {

    private Editors() {
    }

    /** The family or procedure that a part is the editor of; empty where it is something else, or there is no part. */
    public static Optional<Path> file(IWorkbenchPart part) {
        return Optional.ofNullable(part).filter(ITextEditor.class::isInstance).map(each -> ((IEditorPart) each).getEditorInput())
                .filter(IURIEditorInput.class::isInstance).map(input -> ((IURIEditorInput) input).getURI())
                .filter(uri -> "file".equals(uri.getScheme())).map(uri -> Path.of(uri).toAbsolutePath().normalize())
                .filter(ProcedureFiles::isOne);
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
