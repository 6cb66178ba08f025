package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.Comparing;
import org.benchwright.present.Comparison;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.RecordRow;
import org.benchwright.present.WallTime;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Failures;
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
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;

/** Two tests of one unit side by side; which earlier one is chosen. What differs comes first and stands out. */
final class CompareDialog extends FieldsDialog {

    private static final int WIDTH = 900;
    private static final int HEIGHT = 380;

    private final Path ledger;
    private final RecordRow row;
    private Combo earlier;
    private Columns<Comparison.Line> columns;
    private Label count;
    private List<RecordRow> tests = List.of();
    private final Latest reading = new Latest();

    CompareDialog(Shell parent, Path ledger, RecordRow row) {
        super(parent, Message.COMPARE_TITLE.text(), Message.COMPARE_WHAT.text(row.serial(), row.test()), 2, IDialogConstants.CLOSE_LABEL);
        this.ledger = ledger;
        this.row = row;
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        new Label(fields, SWT.NONE).setText(Message.COMPARE_EARLIER.text());
        earlier = new Combo(fields, SWT.READ_ONLY | SWT.DROP_DOWN);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(earlier);
        earlier.addListener(SWT.Selection, event -> compare(tests.get(earlier.getSelectionIndex())));
        columns = Columns.in(fields, SWT.NONE, Comparison.Line.class);
        Table table = columns.table().getTable();
        GridDataFactory.fillDefaults().grab(true, true).span(2, 1).hint(WIDTH, HEIGHT).applyTo(table);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(fields.getDisplay()), table);
        Font bold = resources.create(FontDescriptor.createFrom(table.getFont()).setStyle(SWT.BOLD));
        Function<Comparison.Line, Optional<Font>> font = line -> Optional.of(bold).filter(any -> line.difference() != Comparison.Difference.NONE);
        columns.add(Message.COMPARE_STEP.text(), 130, Comparison.Line::step, font);
        columns.add(Message.COMPARE_FIELD.text(), 170, Comparison.Line::what, font);
        columns.add(Message.COMPARE_THEN.text(), 290, Comparison.Line::then, font);
        columns.add(Message.COMPARE_NOW.text(), 290, Comparison.Line::now, font);
        count = new Label(fields, SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, false).span(2, 1).applyTo(count);
        read(() -> Comparing.earlier(ledger, row.test()), this::show);
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, IDialogConstants.CLOSE_LABEL, true);
    }

    // ---- reading, off the screen's thread

    /** Something that is read. */
    @FunctionalInterface
    private interface Source<T> {
        T read() throws EntryRefusedException, CannotStoreException;
    }

    /** Reads something and shows it, or says why not. */
    private <T> void read(Source<T> source, Consumer<T> shown) {
        count.setText(Message.COMPARE_READING.text());
        setErrorMessage(null);
        Latest.Reading now = reading.begin();
        Background.soon(Message.COMPARE_READING.text(), monitor -> {
            try {
                T found = source.read();
                OnDisplay.later(count, () -> now.show(() -> shown.accept(found)));
            } catch (EntryRefusedException | CannotStoreException | RuntimeException unreadable) {
                String why = Failures.words(unreadable);
                OnDisplay.later(count, () -> now.show(() -> refused(why)));
            }
        });
    }

    private void refused(String why) {
        count.setText("");
        setErrorMessage(why);
    }

    private void show(List<RecordRow> found) {
        tests = found;
        found.forEach(each -> earlier.add(Message.COMPARE_ROW.text(WallTime.here().minute(each.opened()), each.test(), each.state())));
        if (found.isEmpty()) {
            count.setText("");
        } else {
            earlier.select(0);
            compare(found.get(0));
        }
    }

    private void compare(RecordRow other) {
        read(() -> Comparing.of(ledger, row.test(), other.test()), this::tell);
    }

    private void tell(Comparison comparison) {
        columns.table().setInput(comparison.lines());
        count.setText(Message.COMPARE_COUNT.text(comparison.differences(), comparison.lines().size()));
    }
}
