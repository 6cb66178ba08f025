package org.benchwright.ui.internal.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.OpenEvent;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;

/** The files of the procedures' folder; one is opened by Enter or a double click. */
public final class ProceduresView extends ViewPart {

    private TableViewer files;

    @Override
    public void createPartControl(Composite parent) {
        files = new TableViewer(parent, SWT.SINGLE | SWT.V_SCROLL);
        files.setContentProvider(ArrayContentProvider.getInstance());
        files.setLabelProvider(new LabelProvider() {
            @Override
            public String getText(Object file) {
                return ((Path) file).getFileName().toString();
            }
        });
        files.addOpenListener(this::open);
        refresh();
    }

    /** Reads the folder again. */
    private void refresh() {
        Optional<Path> folder = getSite().getService(Settings.class).procedures();
        try {
            List<Path> found = ProcedureFiles.all(folder);
            if (!found.equals(files.getInput())) {
                files.setInput(found);
            }
            files.getControl().setToolTipText(folder.map(Path::toString).map(Labels::letters).orElse(""));
            setContentDescription(folder.map(f -> String.valueOf(f.getFileName())).orElseGet(Message.PROCEDURES_NO_FOLDER::text));
        } catch (IOException e) {
            setContentDescription(Message.PROCEDURES_UNREADABLE.text(String.valueOf(e.getMessage())));
        }
    }

    private void open(OpenEvent event) {
        Path file = (Path) files.getStructuredSelection().getFirstElement();
        Editors.open(getSite().getPage(), file);
    }

    @Override
    public void setFocus() {
        refresh();
        files.getControl().setFocus();
    }
}
