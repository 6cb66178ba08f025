package org.benchwright.ui.internal.audit;

import java.util.Optional;

import org.benchwright.present.RecordRow;
import org.benchwright.present.RecordSearch;
import org.benchwright.present.WallTime;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Latest;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.Views;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.StillWindow;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Columns;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.part.ViewPart;

/** Records: every test of the ledger, the latest first, narrowed by a search over all its words. */
public final class RecordsView extends ViewPart {

    /** Nobody reads more lines; and they are put on the screen between two letters that are typed. */
    private static final int MOST_LINES = 500;

    private Text search;
    private Columns<RecordRow> columns;
    private Label count;
    private Optional<ReadRecordsJob> job = Optional.empty();
    /** One that was given up may tell once more, behind the one that took its place. */
    private final Latest reading = new Latest();
    private ReadRecordsJob.Progress read = new ReadRecordsJob.Progress(RecordSearch.none(), 0, true, Optional.empty());

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(4).applyTo(body);
        search = new Text(body, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
        search.setMessage(Message.RECORDS_SEARCH.text());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(search);
        search.addListener(SWT.Modify, event -> show());
        Buttons.push(body, Message.RECORDS_READ.text(), this::readAgain);
        Buttons.push(body, Message.RECORDS_IMPACT.text(), () -> new ImpactDialog(getSite().getShell(), getSite().getService(Desk.class).ledger(),
                getSite().getService(Settings.class).software()).open());
        Buttons.push(body, Message.RECORDS_REVIEWS.text(), () -> new Reviews(body, getSite().getService(Desk.class).ledger(),
                getSite().getService(Settings.class).technician(), this::tell).ask());
        columns = columns(body);
        TableViewer table = columns.table();
        GridDataFactory.fillDefaults().grab(true, true).span(4, 1).applyTo(table.getControl());
        count = new Label(body, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).span(4, 1).hint(200, SWT.DEFAULT).applyTo(count);
        getSite().setSelectionProvider(table);
        table.addSelectionChangedListener(event -> {
            if (!event.getSelection().isEmpty()) {
                // Whoever picks a record wants to read it, whatever else lies over its sheet.
                Views.uncover(getSite().getPage(), Ids.SHEET_VIEW);
            }
        });
        parent.addDisposeListener(event -> job.ifPresent(ReadRecordsJob::cancel));
        readAgain();
    }

    private static Columns<RecordRow> columns(Composite body) {
        Columns<RecordRow> columns = Columns.in(body, SWT.NONE, RecordRow.class);
        columns.add(Message.RECORDS_OPENED.text(), 150, row -> WallTime.here().minute(row.opened()));
        columns.add(Message.RECORDS_SERIAL.text(), 130, RecordRow::serial);
        columns.add(Message.RECORDS_STATE.text(), 210, RecordRow::state);
        columns.add(Message.RECORDS_PROCEDURE.text(), 320, RecordRow::procedure);
        columns.add(Message.RECORDS_BY.text(), 80, RecordRow::technician);
        return columns;
    }

    private void tell(String words) {
        Labels.say(count, words);
        count.requestLayout();
    }

    /** Reads the ledger again. */
    void readAgain() {
        job.ifPresent(ReadRecordsJob::cancel);
        Latest.Reading now = reading.begin();
        ReadRecordsJob next = new ReadRecordsJob(getSite().getService(Desk.class).ledger(), getSite().getService(StillWindow.class),
                progress -> OnDisplay.later(search, () -> now.show(() -> told(progress))));
        job = Optional.of(next);
        next.schedule();
    }

    private void told(ReadRecordsJob.Progress progress) {
        read = progress;
        show();
    }

    private void show() {
        RecordSearch.Found found = read.rows().found(search.getText(), MOST_LINES);
        columns.show(found.rows(), RecordRow::test);
        String words = read.over() ? Message.RECORDS_COUNT.text(found.count(), read.rows().size())
                : Message.RECORDS_READING.text(read.rows().size(), read.all());
        String searched = search.getText().isBlank() ? "" : ", " + Message.RECORDS_SEARCHED.text(search.getText().strip());
        String shown = found.count() > MOST_LINES ? ", " + Message.RECORDS_SHOWN.text(MOST_LINES) : "";
        tell(words + searched + shown + read.trouble().map(trouble -> "   " + trouble).orElse(""));
    }

    @Override
    public void setFocus() {
        search.setFocus();
    }
}
