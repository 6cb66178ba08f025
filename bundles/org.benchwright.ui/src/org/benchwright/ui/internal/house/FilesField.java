package org.benchwright.ui.internal.house;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;

/** Photos and papers in a dialog: chosen, or dropped anywhere on it. Fills three columns: what they are, their names, a button. */
final class FilesField {

    private static final String BETWEEN = ", ";

    private final Label names;
    private final List<Path> files = new ArrayList<>();

    /**
     * @param parent has a grid of three columns
     * @param area   where files can be dropped
     */
    FilesField(Composite parent, Composite area) {
        new Label(parent, SWT.NONE).setText(HouseMessage.RECEIVE_FILES.text());
        names = new Label(parent, SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, false).align(SWT.FILL, SWT.CENTER).hint(200, SWT.DEFAULT).applyTo(names);
        Button choose = Buttons.push(parent, HouseMessage.RECEIVE_ADD_FILE.text(), this::choose);
        GridDataFactory.swtDefaults().align(SWT.END, SWT.CENTER).applyTo(choose);
        FilesDropped.on(area, this::add);
        show();
    }

    private void choose() {
        FileDialog dialog = new FileDialog(names.getShell(), SWT.OPEN | SWT.MULTI);
        if (dialog.open() != null) {
            Path folder = Path.of(dialog.getFilterPath());
            add(List.of(dialog.getFileNames()).stream().map(folder::resolve).toList());
        }
    }

    /** Adds files. */
    void add(List<Path> more) {
        files.addAll(more);
        show();
    }

    /** What was chosen and dropped so far. */
    List<Path> files() {
        return List.copyOf(files);
    }

    /** Begins anew. */
    void clear() {
        files.clear();
        show();
    }

    private void show() {
        String all = files.stream().map(file -> String.valueOf(file.getFileName())).collect(Collectors.joining(BETWEEN));
        Labels.say(names, files.isEmpty() ? HouseMessage.RECEIVE_DROP.text() : all);
        names.setToolTipText(Labels.letters(all));
    }
}
