package org.benchwright.ui.internal.audit;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.present.RecordRow;
import org.benchwright.present.RecordSearch;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.StillWindow;
import org.benchwright.ui.internal.look.Columns;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.part.ViewPart;

/** Records: every test of the ledger, the latest first, narrowed by a search over all its words. */
public final class RecordsView extends ViewPart {

    /** Nobody reads more lines; and they are put on the screen between two letters that are typed. */
    private static final int MOST_LINES = 500;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    private Text search;
    private TableViewer table;
    private Label count;
    private Optional<ReadRecordsJob> job = Optional.empty();
    private ReadRecordsJob.Progress read = new ReadRecordsJob.Progress(RecordSearch.none(), 0, true, Optional.empty());

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(4).applyTo(body);
        search = new Text(body, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
        search.setMessage(Message.RECORDS_SEARCH.text());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(search);
        search.addListener(SWT.Modify, event -> show());
        Button again = new Button(body, SWT.PUSH);
        again.setText(Message.RECORDS_READ.text());
        again.addListener(SWT.Selection, event -> readAgain());
        Button impact = new Button(body, SWT.PUSH);
        impact.setText(Message.RECORDS_IMPACT.text());
        impact.addListener(SWT.Selection, event -> new ImpactDialog(getSite().getShell(), getSite().getService(Desk.class).ledger(),
                getSite().getService(Settings.class).software()).open());
        Button reviews = new Button(body, SWT.PUSH);
        reviews.setText(Message.RECORDS_REVIEWS.text());
        reviews.addListener(SWT.Selection, event -> new Reviews(reviews, getSite().getService(Desk.class).ledger(),
                getSite().getService(Settings.class).technician(), this::planned).ask());
        table = new TableViewer(body, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.H_SCROLL);
        table.getTable().setHeaderVisible(true);
        GridDataFactory.fillDefaults().grab(true, true).span(4, 1).applyTo(table.getControl());
        table.setContentProvider(ArrayContentProvider.getInstance());
        columns();
        count = new Label(body, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).span(4, 1).hint(200, SWT.DEFAULT).applyTo(count);
        getSite().setSelectionProvider(table);
        table.addSelectionChangedListener(event -> {
            if (!event.getSelection().isEmpty()) {
                showSheet();
            }
        });
        parent.addDisposeListener(event -> job.ifPresent(ReadRecordsJob::cancel));
        readAgain();
    }

    private void columns() {
        Columns<RecordRow> columns = new Columns<>(table, RecordRow.class);
        columns.add(Message.RECORDS_OPENED.text(), 150, row -> TIME.format(row.opened().atZone(ZoneId.systemDefault())));
        columns.add(Message.RECORDS_SERIAL.text(), 130, RecordRow::serial);
        columns.add(Message.RECORDS_STATE.text(), 210, RecordRow::state);
        columns.add(Message.RECORDS_PROCEDURE.text(), 320, RecordRow::procedure);
        columns.add(Message.RECORDS_BY.text(), 80, RecordRow::technician);
    }

    /** Whoever picks a record wants to read it, whatever else lies over its sheet. */
    private void showSheet() {
        try {
            getSite().getPage().showView(Ids.SHEET_VIEW, null, IWorkbenchPage.VIEW_VISIBLE);
        } catch (PartInitException e) {
            ILog.of(RecordsView.class).log(e.getStatus());
        }
    }

    private void planned(String words) {
        count.setText(words.replace("&", "&&"));
        count.requestLayout();
    }

    /** Reads the ledger again. */
    void readAgain() {
        job.ifPresent(ReadRecordsJob::cancel);
        ReadRecordsJob next = new ReadRecordsJob(getSite().getService(Desk.class).ledger(), getSite().getService(StillWindow.class), this::told);
        job = Optional.of(next);
        next.schedule();
    }

    private void told(ReadRecordsJob.Progress progress) {
        OnDisplay.later(search, () -> {
            read = progress;
            show();
        });
    }

    private void show() {
        RecordSearch.Found found = read.rows().found(search.getText(), MOST_LINES);
        // However many are read behind those that are shown, these are put on the screen once.
        if (!found.rows().equals(table.getInput())) {
            table.setInput(found.rows());
        }
        String words = read.over() ? Message.RECORDS_COUNT.text(found.count(), read.rows().size())
                : Message.RECORDS_READING.text(read.rows().size(), read.all());
        String searched = search.getText().isBlank() ? "" : ", " + Message.RECORDS_SEARCHED.text(search.getText().strip());
        String shown = found.count() > MOST_LINES ? ", " + Message.RECORDS_SHOWN.text(MOST_LINES) : "";
        count.setText((words + searched + shown + read.trouble().map(trouble -> "   " + trouble).orElse("")).replace("&", "&&"));
        count.requestLayout();
    }

    @Override
    public void setFocus() {
        search.setFocus();
    }
}
