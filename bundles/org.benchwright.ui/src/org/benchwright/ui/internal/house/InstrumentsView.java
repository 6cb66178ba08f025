package org.benchwright.ui.internal.house;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.InstrumentDesk;
import org.benchwright.present.InstrumentRow;
import org.benchwright.present.PeopleDesk;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Latest;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Columns;
import org.benchwright.ui.internal.look.Labels;
import org.benchwright.ui.internal.look.Switched;
import org.benchwright.ui.internal.sign.SignDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.part.ViewPart;

/** Instruments: what the bench measures with, how accurately, and until when; entered and signed here. */
public final class InstrumentsView extends ViewPart {

    private Path ledger;
    private Settings settings;
    private Composite body;
    private Columns<InstrumentRow> columns;
    private TableViewer table;
    private StyledText more;
    private Label count;
    private Button calibrated;
    private Button moved;
    private Button retire;
    private Button reinstate;
    private final Latest reading = new Latest();

    @Override
    public void createPartControl(Composite parent) {
        ledger = getSite().getService(Desk.class).ledger();
        settings = getSite().getService(Settings.class);
        body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().applyTo(body);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), body);
        Font large = resources.create(FontDescriptor.createFrom(JFaceResources.getDialogFont()).increaseHeight(3));
        bar();
        columns = Columns.in(body, SWT.BORDER, InstrumentRow.class);
        table = columns.table();
        table.getTable().setFont(large);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(table.getControl());
        columns.add(HouseMessage.ASSET.text(), 140, InstrumentRow::asset);
        columns.add(HouseMessage.INSTRUMENT.text(), 200, InstrumentRow::title);
        columns.add(HouseMessage.STANDS.text(), 290, row -> (row.usable() ? "" : "\u2717 ") + row.state());
        columns.add(HouseMessage.DUE.text(), 110, row -> row.due().map(Object::toString).orElse(""));
        columns.add(HouseMessage.CERTIFICATE.text(), 110, InstrumentRow::certificate);
        columns.addWide(HouseMessage.CUSTODY.text(), 140, InstrumentRow::custody);
        table.addSelectionChangedListener(event -> picked());
        // The one who drags waits until the drop is taken.
        FilesDropped.on(table.getTable(), files -> onScreen(() -> files.forEach(this::importList)));
        count = new Label(body, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(count);
        more = new StyledText(body, SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL | SWT.BORDER);
        more.setFont(large);
        more.setMargins(10, 8, 10, 8);
        GridDataFactory.fillDefaults().grab(true, true).hint(SWT.DEFAULT, 130).applyTo(more);
        picked();
        readAgain();
    }

    private void bar() {
        Composite bar = new Composite(body, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(7).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        Buttons.push(bar, HouseMessage.ADD.text(), this::add);
        calibrated = Buttons.push(bar, HouseMessage.CALIBRATED.text(), () -> selected().ifPresent(this::calibrated));
        moved = Buttons.push(bar, HouseMessage.MOVED.text(), () -> selected().ifPresent(this::moved));
        retire = Buttons.push(bar, HouseMessage.RETIRE.text(), () -> selected().ifPresent(this::retire));
        reinstate = Buttons.push(bar, HouseMessage.REINSTATE.text(), () -> selected().ifPresent(this::reinstate));
        Buttons.push(bar, HouseMessage.IMPORT.text(), this::importList);
        Buttons.push(bar, HouseMessage.READ_AGAIN.text(), this::readAgain);
    }

    private Optional<InstrumentRow> selected() {
        return columns.selected();
    }

    private void picked() {
        Switched.enable(calibrated, selected().isPresent());
        Switched.enable(moved, selected().isPresent());
        Switched.enable(retire, selected().isPresent());
        Switched.enable(reinstate, selected().filter(row -> !row.usable()).isPresent());
        more.setText(selected().map(row -> {
            String serial = row.serial().isEmpty() ? "" : "   " + row.serial();
            return row.asset() + "   " + row.title() + serial + "\n" + String.join("\n", row.ranges());
        }).orElseGet(HouseMessage.INSTRUMENT_PICK::text));
    }

    // ---- reading

    private InstrumentDesk instruments() {
        return InstrumentDesk.here(ledger);
    }

    private void readAgain() {
        Latest.Reading now = reading.begin();
        Background.soon(HouseMessage.JOB.text(), monitor -> {
            try {
                List<InstrumentRow> rows = Files.exists(ledger) ? instruments().instruments() : List.of();
                onScreen(() -> now.show(() -> show(rows)));
            } catch (CannotStoreException e) {
                onScreen(() -> now.show(() -> Labels.say(count, String.valueOf(e.getMessage()))));
            }
        });
    }

    private void show(List<InstrumentRow> rows) {
        columns.show(rows, InstrumentRow::asset);
        Labels.say(count, rows.isEmpty() ? HouseMessage.INSTRUMENTS_NONE.text() : HouseMessage.INSTRUMENTS_COUNT.text(rows.size(),
                rows.stream().filter(row -> !row.usable()).count()));
        picked();
    }

    private void onScreen(Runnable shown) {
        OnDisplay.later(body, shown);
    }

    // ---- signing

    /** As long as nobody has a key, the bench signs: then nobody is named. */
    private static Optional<PeopleDesk.Signing> signing(PeopleDesk.Signing who) {
        return who.id().isEmpty() ? Optional.empty() : Optional.of(who);
    }

    private void sign(HouseMessage title, String words, List<SignDialog.Question> questions, SignDialog.Signature signature) {
        SignDialog.ask(body.getShell(), new SignDialog.Asked(title.text().replace(" ...", ""), words, questions, "", signature).orNobody(),
                this::readAgain);
    }

    private static SignDialog.Question line(HouseMessage label, String initial) {
        return new SignDialog.Line(label.text(), initial);
    }

    private void add() {
        List<SignDialog.Question> questions = List.of(line(HouseMessage.ASSET, ""), line(HouseMessage.INSTRUMENT, ""), line(HouseMessage.SERIAL, ""),
                line(HouseMessage.RANGES, HouseMessage.RANGES_EXAMPLE.text()), line(HouseMessage.CUSTODY, settings.station()));
        sign(HouseMessage.ADD, HouseMessage.BENCH_SIGNS.text(), questions,
                (given, who) -> instruments().add(new InstrumentDesk.NewInstrument(given.get(0), given.get(1),
                        given.get(2), ranges(given.get(3)), given.get(4)), signing(who)));
    }

    private static List<String> ranges(String typed) {
        return List.of(typed.split(";"));
    }

    private void calibrated(InstrumentRow row) {
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        List<SignDialog.Question> questions = List.of(line(HouseMessage.CERTIFICATE, ""), line(HouseMessage.CALIBRATED_ON, today.toString()),
                line(HouseMessage.DUE, today.plusYears(1).toString()), line(HouseMessage.RANGES_FOUND, ""));
        sign(HouseMessage.CALIBRATED, words(row), questions, (given, who) -> instruments().calibrated(row.asset(), given.get(0), day(given.get(1)),
                given.get(2).isBlank() ? Optional.empty() : Optional.of(day(given.get(2))), ranges(given.get(3)), signing(who)));
    }

    private static LocalDate day(String typed) throws EntryRefusedException {
        try {
            return LocalDate.parse(typed.strip());
        } catch (DateTimeException e) {
            throw new EntryRefusedException(HouseMessage.NO_DAY.text(typed), e);
        }
    }

    private void moved(InstrumentRow row) {
        sign(HouseMessage.MOVED, words(row), List.of(line(HouseMessage.CUSTODY, row.custody())),
                (given, who) -> instruments().moved(row.asset(), given.get(0), signing(who)));
    }

    private void retire(InstrumentRow row) {
        sign(HouseMessage.RETIRE, words(row), List.of(line(HouseMessage.REASON, "")),
                (given, who) -> instruments().retired(row.asset(), given.get(0), signing(who)));
    }

    private void reinstate(InstrumentRow row) {
        sign(HouseMessage.REINSTATE, words(row), List.of(line(HouseMessage.REASON, "")),
                (given, who) -> instruments().reinstated(row.asset(), given.get(0), signing(who)));
    }

    private static String words(InstrumentRow row) {
        return HouseMessage.ABOUT.text(row.asset(), row.title());
    }

    private void importList() {
        FileDialog file = new FileDialog(body.getShell(), SWT.OPEN);
        file.setFilterExtensions(new String[] {"*.csv"});
        Optional.ofNullable(file.open()).map(Path::of).ifPresent(this::importList);
    }

    private void importList(Path list) {
        sign(HouseMessage.IMPORT, String.valueOf(list.getFileName()), List.of(), (given, who) -> instruments().importList(InstrumentDesk.list(list), signing(who)));
    }

    @Override
    public void setFocus() {
        table.getControl().setFocus();
    }
}
