package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.Comparing;
import org.benchwright.present.Comparison;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.RecordRow;
import org.benchwright.ui.internal.Message;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TableViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;

/** Two tests of one unit side by side; which earlier one is chosen. What differs comes first and stands out. */
final class CompareDialog extends TitleAreaDialog {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final int WIDTH = 900;
    private static final int HEIGHT = 380;

    private final Path ledger;
    private final RecordRow row;
    private Combo earlier;
    private TableViewer table;
    private Label count;
    private Font bold;
    private List<RecordRow> tests = List.of();

    CompareDialog(Shell parent, Path ledger, RecordRow row) {
        super(parent);
        this.ledger = ledger;
        this.row = row;
        setShellStyle(getShellStyle() | SWT.RESIZE);
    }

    @Override
    protected void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText(Message.COMPARE_TITLE.text());
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = (Composite) super.createDialogArea(parent);
        setTitle(Message.COMPARE_TITLE.text());
        setMessage(Message.COMPARE_WHAT.text(row.serial(), row.test()));
        Composite fields = new Composite(area, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(2).margins(12, 12).spacing(10, 10).applyTo(fields);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(fields);
        new Label(fields, SWT.NONE).setText(Message.COMPARE_EARLIER.text());
        earlier = new Combo(fields, SWT.READ_ONLY | SWT.DROP_DOWN);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(earlier);
        earlier.addListener(SWT.Selection, event -> compare(tests.get(earlier.getSelectionIndex())));
        table = new TableViewer(fields, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.H_SCROLL);
        table.getTable().setHeaderVisible(true);
        table.setContentProvider(ArrayContentProvider.getInstance());
        GridDataFactory.fillDefaults().grab(true, true).span(2, 1).hint(WIDTH, HEIGHT).applyTo(table.getControl());
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), table.getControl());
        bold = resources.create(FontDescriptor.createFrom(table.getTable().getFont()).setStyle(SWT.BOLD));
        column(Message.COMPARE_STEP, 130, Comparison.Line::step);
        column(Message.COMPARE_FIELD, 170, Comparison.Line::what);
        column(Message.COMPARE_THEN, 290, Comparison.Line::then);
        column(Message.COMPARE_NOW, 290, Comparison.Line::now);
        count = new Label(fields, SWT.NONE);
        count.setText(Message.COMPARE_READING.text());
        GridDataFactory.fillDefaults().grab(true, false).span(2, 1).applyTo(count);
        readEarlier();
        return area;
    }

    private void column(Message title, int width, Function<Comparison.Line, String> text) {
        TableViewerColumn column = new TableViewerColumn(table, SWT.LEFT);
        column.getColumn().setText(title.text());
        column.getColumn().setWidth(width);
        column.setLabelProvider(new ColumnLabelProvider() {
            @Override
            public String getText(Object line) {
                return text.apply((Comparison.Line) line);
            }

            @Override
            public Font getFont(Object line) {
                return ((Comparison.Line) line).difference() == Comparison.Difference.NONE ? table.getTable().getFont() : bold;
            }
        });
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, IDialogConstants.CLOSE_LABEL, true);
    }

    // ---- reading, off the screen's thread

    private void readEarlier() {
        Job.createSystem(Message.COMPARE_READING.text(), (ICoreRunnable) monitor -> {
            try {
                List<RecordRow> found = Comparing.earlier(ledger, row.test());
                onScreen(() -> show(found));
            } catch (CannotStoreException e) {
                onScreen(() -> setErrorMessage(e.getMessage()));
            }
        }).schedule();
    }

    private void show(List<RecordRow> found) {
        tests = found;
        found.forEach(each -> earlier.add(Message.COMPARE_ROW.text(TIME.format(each.opened().atZone(ZoneId.systemDefault())), each.test(), each.state())));
        if (!found.isEmpty()) {
            earlier.select(0);
            compare(found.get(0));
        }
    }

    private void compare(RecordRow other) {
        count.setText(Message.COMPARE_READING.text());
        Job.createSystem(Message.COMPARE_READING.text(), (ICoreRunnable) monitor -> {
            try {
                Comparison comparison = Comparing.of(ledger, row.test(), other.test());
                onScreen(() -> tell(other, comparison));
            } catch (EntryRefusedException | CannotStoreException e) {
                onScreen(() -> setErrorMessage(e.getMessage()));
            }
        }).schedule();
    }

    private void tell(RecordRow other, Comparison comparison) {
        if (tests.get(earlier.getSelectionIndex()).equals(other)) {
            table.setInput(comparison.lines());
            count.setText(Message.COMPARE_COUNT.text(comparison.differences(), comparison.lines().size()));
        }
    }

    private void onScreen(Runnable work) {
        Control control = table.getControl();
        if (!control.isDisposed()) {
            control.getDisplay().asyncExec(() -> {
                if (!control.isDisposed()) {
                    work.run();
                }
            });
        }
    }
}
