package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.Comparing;
import org.benchwright.present.Comparison;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.RecordRow;
import org.benchwright.present.WallTime;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Latest;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.Columns;
import org.benchwright.ui.internal.look.FieldsDialog;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TableViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;

/** Two tests of one unit side by side; which earlier one is chosen. What differs comes first and stands out. */
final class CompareDialog extends FieldsDialog {

    private static final int WIDTH = 900;
    private static final int HEIGHT = 380;

    private final Path ledger;
    private final RecordRow row;
    private Combo earlier;
    private TableViewer table;
    private Label count;
    private Font bold;
    private List<RecordRow> tests = List.of();
    private final Latest comparing = new Latest();

    CompareDialog(Shell parent, Path ledger, RecordRow row) {
        super(parent, Message.COMPARE_TITLE.text(), Message.COMPARE_WHAT.text(row.serial(), row.test()), 2, IDialogConstants.CLOSE_LABEL);
        this.ledger = ledger;
        this.row = row;
        setShellStyle(getShellStyle() | SWT.RESIZE);
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        new Label(fields, SWT.NONE).setText(Message.COMPARE_EARLIER.text());
        earlier = new Combo(fields, SWT.READ_ONLY | SWT.DROP_DOWN);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(earlier);
        earlier.addListener(SWT.Selection, event -> compare(tests.get(earlier.getSelectionIndex())));
        table = Columns.in(fields, SWT.NONE, Comparison.Line.class).table();
        GridDataFactory.fillDefaults().grab(true, true).span(2, 1).hint(WIDTH, HEIGHT).applyTo(table.getControl());
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(fields.getDisplay()), table.getControl());
        bold = resources.create(FontDescriptor.createFrom(table.getTable().getFont()).setStyle(SWT.BOLD));
        column(Message.COMPARE_STEP, 130, Comparison.Line::step);
        column(Message.COMPARE_FIELD, 170, Comparison.Line::what);
        column(Message.COMPARE_THEN, 290, Comparison.Line::then);
        column(Message.COMPARE_NOW, 290, Comparison.Line::now);
        count = new Label(fields, SWT.NONE);
        count.setText(Message.COMPARE_READING.text());
        GridDataFactory.fillDefaults().grab(true, false).span(2, 1).applyTo(count);
        readEarlier();
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
        Background.soon(Message.COMPARE_READING.text(), monitor -> {
            try {
                List<RecordRow> found = Comparing.earlier(ledger, row.test());
                OnDisplay.later(table.getControl(), () -> show(found));
            } catch (CannotStoreException e) {
                OnDisplay.later(table.getControl(), () -> setErrorMessage(e.getMessage()));
            }
        });
    }

    private void show(List<RecordRow> found) {
        tests = found;
        found.forEach(each -> earlier.add(Message.COMPARE_ROW.text(WallTime.here().minute(each.opened()), each.test(), each.state())));
        if (!found.isEmpty()) {
            earlier.select(0);
            compare(found.get(0));
        }
    }

    private void compare(RecordRow other) {
        count.setText(Message.COMPARE_READING.text());
        setErrorMessage(null);
        Latest.Reading now = comparing.begin();
        Background.soon(Message.COMPARE_READING.text(), monitor -> {
            try {
                Comparison comparison = Comparing.of(ledger, row.test(), other.test());
                OnDisplay.later(table.getControl(), () -> now.show(() -> tell(comparison)));
            } catch (EntryRefusedException | CannotStoreException e) {
                OnDisplay.later(table.getControl(), () -> now.show(() -> setErrorMessage(e.getMessage())));
            }
        });
    }

    private void tell(Comparison comparison) {
        table.setInput(comparison.lines());
        count.setText(Message.COMPARE_COUNT.text(comparison.differences(), comparison.lines().size()));
    }
}
