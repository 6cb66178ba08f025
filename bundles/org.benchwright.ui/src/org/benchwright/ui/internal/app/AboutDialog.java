package org.benchwright.ui.internal.app;

import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;

import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.FieldsDialog;
import org.eclipse.core.runtime.Platform;
import org.eclipse.core.runtime.URIUtil;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Shell;

/** What this program is, its version, and the libraries of others in it with their licences. */
final class AboutDialog extends FieldsDialog {

    private static final String LIBRARIES = "LIBRARIES.txt";
    private static final int WIDTH = 760;
    private static final int HEIGHT = 360;

    /** @param software name and version */
    AboutDialog(Shell parent, String software) {
        super(parent, Message.ABOUT_TITLE.text(), Message.ABOUT_WHAT.text(software), 1, IDialogConstants.CLOSE_LABEL);
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        StyledText text = new StyledText(fields, SWT.MULTI | SWT.READ_ONLY | SWT.V_SCROLL | SWT.H_SCROLL | SWT.BORDER);
        text.setFont(JFaceResources.getTextFont());
        text.setMargins(8, 6, 8, 6);
        GridDataFactory.fillDefaults().grab(true, true).hint(WIDTH, HEIGHT).applyTo(text);
        Background.soon(Message.ABOUT_TITLE.text(), monitor -> {
            String words = libraries();
            OnDisplay.later(text, () -> text.setText(words));
        });
    }

    /** The list lies beside the program, where it was installed. */
    private static String libraries() {
        URL installed = Platform.getInstallLocation().getURL();
        try {
            return Files.readString(Path.of(URIUtil.toURI(installed)).resolve(LIBRARIES));
        } catch (IOException | URISyntaxException | IllegalArgumentException missing) {
            return Message.ABOUT_NO_LIBRARIES.text(LIBRARIES, String.valueOf(installed));
        }
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, IDialogConstants.CLOSE_LABEL, true);
    }
}
