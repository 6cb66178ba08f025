package org.benchwright.ui.internal.house;

import java.io.IOException;
import java.nio.file.Path;

import org.benchwright.ui.internal.look.Labels;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.handlers.HandlerUtil;

/** Asks for the camera's folder, and watches it from now on, after the next start too. */
public final class CameraHandler extends AbstractHandler {

    private static final String NODE = "org.benchwright.ui";
    private static final String FOLDER = "camera";

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        IWorkbenchWindow window = HandlerUtil.getActiveWorkbenchWindowChecked(event);
        CameraFolder camera = window.getService(CameraFolder.class);
        DirectoryDialog dialog = new DirectoryDialog(window.getShell());
        dialog.setText(HouseMessage.CAMERA_TITLE.text());
        dialog.setMessage(HouseMessage.CAMERA_WHAT.text());
        camera.folder().ifPresent(folder -> dialog.setFilterPath(folder.toString()));
        String chosen = dialog.open();
        if (chosen != null) {
            try {
                camera.watch(Path.of(chosen));
                InstanceScope.INSTANCE.getNode(NODE).put(FOLDER, chosen);
            } catch (IOException e) {
                MessageDialog.openWarning(window.getShell(), HouseMessage.CAMERA_TITLE.text(),
                        Labels.letters(HouseMessage.CAMERA_FAILED.text(String.valueOf(e.getMessage()))));
            }
        }
        return null;
    }

    /** Watches the folder that was chosen in an earlier window; one that is gone is watched no more. */
    public static void goOn(CameraFolder camera) {
        String folder = InstanceScope.INSTANCE.getNode(NODE).get(FOLDER, "");
        try {
            if (!folder.isEmpty()) {
                camera.watch(Path.of(folder));
            }
        } catch (IOException gone) {
            InstanceScope.INSTANCE.getNode(NODE).remove(FOLDER);
        }
    }
}
