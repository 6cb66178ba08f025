package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.Auditing;
import org.benchwright.present.DeviationRow;
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
import org.benchwright.ui.internal.look.Switched;
import org.benchwright.ui.internal.sign.SignDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.part.ViewPart;

/** What waits for an auditor in the whole ledger, oldest first, and deciding on it. */
abstract class DeviationsView extends ViewPart {

    private static final int DETAIL_HEIGHT = 84;

    private final boolean nonconformities;
    private Button all;
    private Button decide;
    private Columns<DeviationRow> columns;
    private TableViewer table;
    private Label count;
    private Text detail;
    private Optional<DeviationsJob> job = Optional.empty();
    private final Latest reading = new Latest();

    DeviationsView(boolean nonconformities) {
        this.nonconformities = nonconformities;
    }

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(3).applyTo(body);
        all = Buttons.check(body, Message.DEVIATIONS_ALL.text(), this::readAgain);
        GridDataFactory.fillDefaults().grab(true, false).align(SWT.BEGINNING, SWT.CENTER).applyTo(all);
        Buttons.push(body, Message.RECORDS_READ.text(), this::readAgain);
        decide = Buttons.push(body, Message.DEVIATIONS_DECIDE.text(), () -> columns.selected().ifPresent(this::decide));
        decide.setEnabled(false);
        columns = columns(body);
        table = columns.table();
        GridDataFactory.fillDefaults().grab(true, true).span(3, 1).applyTo(table.getControl());
        detail = new Text(body, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL);
        detail.setText(Message.DEVIATIONS_NOTHING.text());
        GridDataFactory.fillDefaults().grab(true, false).span(3, 1).hint(SWT.DEFAULT, DETAIL_HEIGHT).applyTo(detail);
        count = new Label(body, SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, false).span(3, 1).applyTo(count);
        getSite().setSelectionProvider(table);
        table.addSelectionChangedListener(event -> picked());
        parent.addDisposeListener(event -> job.ifPresent(DeviationsJob::cancel));
        readAgain();
    }

    private static Columns<DeviationRow> columns(Composite body) {
        Columns<DeviationRow> columns = Columns.in(body, SWT.NONE, DeviationRow.class);
        columns.add(Message.DEVIATIONS_UNIT.text(), 100, DeviationRow::serial);
        columns.add(Message.DEVIATIONS_AGE.text(), 70, DeviationRow::age);
        columns.add(Message.DEVIATIONS_OWNER.text(), 95, DeviationRow::owner);
        columns.addWide(Message.DEVIATIONS_WHAT.text(), 230, DeviationRow::words);
        columns.add(Message.DEVIATIONS_DECISION.text(), 130, row -> row.decision().map(each -> each.word() + ", " + each.by()).orElse(""));
        columns.add(Message.DEVIATIONS_PLACE.text(), 140, DeviationRow::place);
        columns.add(Message.DEVIATIONS_NOTED.text(), 140, row -> WallTime.here().minute(row.noted()));
        return columns;
    }

    private void picked() {
        Optional<DeviationRow> row = columns.selected();
        Switched.enable(decide, row.filter(DeviationRow::waiting).isPresent());
        detail.setText(row.map(DeviationsView::words).orElseGet(Message.DEVIATIONS_NOTHING::text));
        if (row.isPresent()) {
            // Whoever decides wants to read the record, whatever else lies over its sheet.
            Views.uncover(getSite().getPage(), Ids.SHEET_VIEW);
        }
    }

    private static String words(DeviationRow row) {
        String decided = row.decision().map(each -> "\n" + Message.DEVIATIONS_DECIDED.text(each.word(), each.by(),
                WallTime.here().minute(each.instant()), each.reason()))
                .orElse("");
        return row.words() + "\n" + Message.DEVIATIONS_DETAIL.text(row.test(), row.serial(), String.valueOf(row.event()), row.place(),
                WallTime.here().minute(row.noted()))
                + (row.owner().isEmpty() ? "" : " " + Message.DEVIATIONS_TO_ACT.text(row.owner())) + decided;
    }

    private void decide(DeviationRow row) {
        Settings settings = getSite().getService(Settings.class);
        Auditing auditing = Auditing.here(ledger());
        SignDialog.Asked asked = new SignDialog.Asked((nonconformities ? Message.DECIDE_NONCONFORMITY : Message.DECIDE_DEPARTURE).text(),
                Message.DECIDE_WHAT.text(row.serial(), row.words()),
                List.of(new SignDialog.Choice(Message.DECIDE_AS.text(), Auditing.choices(nonconformities)),
                        new SignDialog.Line(Message.DECIDE_REASON.text(), "")),
                settings.technician(), (answers, who) -> auditing.decide(row.test(), row.event(), answers.get(0), answers.get(1), who));
        SignDialog.ask(getSite().getShell(), asked, () -> {
            readAgain();
            SheetView.readAgain(getSite().getPage());
        });
    }

    private Path ledger() {
        return getSite().getService(Desk.class).ledger();
    }

    /** Reads the ledger again. */
    void readAgain() {
        job.ifPresent(DeviationsJob::cancel);
        Latest.Reading now = reading.begin();
        DeviationsJob next = new DeviationsJob(ledger(), getSite().getService(StillWindow.class), nonconformities, !all.getSelection(),
                read -> OnDisplay.later(table.getControl(), () -> now.show(() -> show(read))));
        job = Optional.of(next);
        next.schedule();
    }

    private void show(DeviationsJob.Read read) {
        columns.show(read.rows(), row -> row.test() + " " + row.event());
        long waiting = read.rows().stream().filter(DeviationRow::waiting).count();
        String words = Message.DEVIATIONS_COUNT.text(waiting, read.rows().size() - waiting);
        Labels.say(count, read.trouble().orElse(words));
        picked();
    }

    @Override
    public void setFocus() {
        table.getControl().setFocus();
    }
}
