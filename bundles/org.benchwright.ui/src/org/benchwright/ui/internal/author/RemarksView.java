package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Severity;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.Place;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Editors;
import org.benchwright.ui.internal.look.Labels;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.look.Columns;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TableViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.ui.IPartListener;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.part.ViewPart;

/** The remarks on the whole folder, and when they were made. A remark's place is opened by Enter or a double click. */
public final class RemarksView extends ViewPart implements AuthorListener {

    private static final int WORDS_LEAST = 400;

    private final IPartListener editors = new PartActivated(this::follow);
    private TableViewer remarks;
    private Optional<AuthorFolder> folder = Optional.empty();

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 2).applyTo(body);
        remarks = new TableViewer(body, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL);
        remarks.setContentProvider(ArrayContentProvider.getInstance());
        remarks.getTable().setHeaderVisible(true);
        column(Message.REMARKS_SEVERITY, 95, new Severities());
        TableColumn words = column(Message.REMARKS_WORDS, WORDS_LEAST, ColumnLabelProvider.createTextProvider(remark -> ((Remark) remark).words()));
        column(Message.REMARKS_FILE, 210, ColumnLabelProvider.createTextProvider(r -> ((Remark) r).file().getFileName().toString()));
        column(Message.REMARKS_LINE, 50, ColumnLabelProvider.createTextProvider(r -> Integer.toString(((Remark) r).line())));
        column(Message.REMARKS_CODE, 170, ColumnLabelProvider.createTextProvider(remark -> ((Remark) remark).code().word()));
        Columns.fill(words, WORDS_LEAST);
        remarks.addOpenListener(event -> {
            if (remarks.getStructuredSelection().getFirstElement() instanceof Remark remark) {
                Passages.show(getSite().getPage(), new Place(remark.file(), remark.offset(), remark.length()));
            }
        });
        getSite().setSelectionProvider(remarks);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(remarks.getControl());
        Label inFull = new Label(body, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).indent(4, 0).hint(SWT.DEFAULT, 2 * remarks.getTable().getItemHeight()).applyTo(inFull);
        remarks.addSelectionChangedListener(event -> Labels.say(inFull,
                event.getStructuredSelection().getFirstElement() instanceof Remark remark ? remark.words() : ""));
        MenuManager menu = new MenuManager();
        getSite().registerContextMenu(menu, remarks);
        remarks.getControl().setMenu(menu.createContextMenu(remarks.getControl()));
        Authoring.current().ifPresent(authoring -> authoring.add(this));
        getSite().getPage().addPartListener(editors);
        follow(getSite().getPage().getActiveEditor());
    }

    private TableColumn column(Message title, int width, ColumnLabelProvider labels) {
        TableViewerColumn column = new TableViewerColumn(remarks, SWT.LEFT);
        column.getColumn().setText(title.text());
        column.getColumn().setWidth(width);
        column.getColumn().setResizable(true);
        column.setLabelProvider(labels);
        return column.getColumn();
    }

    /** Shows the folder of the editor that is used, else the one that the window was opened with. */
    private void follow(IWorkbenchPart part) {
        Optional<Path> of = Editors.file(part).map(Path::getParent);
        Optional<Path> wanted = of.or(() -> folder.isPresent() ? Optional.empty() : getSite().getService(Settings.class).procedures());
        Authoring.current().ifPresent(authoring -> wanted.map(authoring::folder).ifPresent(this::use));
        if (folder.isEmpty()) {
            setContentDescription(Message.PROCEDURES_NO_FOLDER.text());
        }
    }

    private void use(AuthorFolder other) {
        if (folder.isEmpty() || folder.get() != other) {
            folder = Optional.of(other);
            show(other.state());
            other.check();
        }
    }

    @Override
    public void checked(FolderState state) {
        OnDisplay.later(remarks.getControl(), () -> {
            if (folder.map(AuthorFolder::state).filter(present -> present.folder().equals(state.folder())).isPresent()) {
                show(folder.get().state());
            }
        });
    }

    private void show(FolderState state) {
        List<Remark> all = state.remarks().values().stream().flatMap(List::stream).sorted().toList();
        if (!all.equals(remarks.getInput())) {
            remarks.setInput(all);
        }
        setContentDescription(RemarkWords.of(state));
    }

    @Override
    public void setFocus() {
        remarks.getControl().setFocus();
    }

    @Override
    public void dispose() {
        getSite().getPage().removePartListener(editors);
        Authoring.current().ifPresent(authoring -> authoring.remove(this));
        super.dispose();
    }

    /** A word and a shape: never colour alone. */
    private static final class Severities extends ColumnLabelProvider {

        @Override
        public String getText(Object remark) {
            Severity severity = ((Remark) remark).severity();
            return severity.word();
        }

        @Override
        public Image getImage(Object remark) {
            return Pictures.of(((Remark) remark).severity());
        }
    }
}
