package org.benchwright.ui.internal.house;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;

import org.benchwright.present.Auditing;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.HouseFile;
import org.benchwright.present.ReceivedRow;
import org.benchwright.present.UnitStory;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.bench.NewTestHandler;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Columns;
import org.benchwright.ui.internal.look.Labels;
import org.benchwright.ui.internal.look.Switched;
import org.benchwright.ui.internal.sign.SignDialog;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.part.ViewPart;

/** Received: the units in the house, where each stands, and what is on record of the selected one. */
public final class ReceivedView extends ViewPart {

    private House house;
    private Desk desk;
    private Settings settings;
    private Composite body;
    private Text scan;
    private Button all;
    private Columns<ReceivedRow> columns;
    private TableViewer table;
    private StyledText story;
    private Label count;
    private Button repaired;
    private Button correct;
    private Button giveBack;
    private Button withdraw;
    private Button test;
    private Button tag;
    private final Runnable entered = () -> onScreen(this::readAgain);
    private final DeskListener tested = (change, id) -> onTheBench(change);
    private Optional<String> picked = Optional.empty();
    private List<HouseFile> files = List.of();
    private boolean reading;
    private boolean again;

    @Override
    public void createPartControl(Composite parent) {
        house = getSite().getService(House.class);
        desk = getSite().getService(Desk.class);
        settings = getSite().getService(Settings.class);
        body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().applyTo(body);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), body);
        Font large = resources.create(FontDescriptor.createFrom(JFaceResources.getDialogFont()).increaseHeight(3));
        bar(large);
        columns = columns(body);
        table = columns.table();
        table.getTable().setFont(large);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(table.getControl());
        FilesDropped.on(table.getTable(), this::dropped);
        count = new Label(body, SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(count);
        story = new StyledText(body, SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL | SWT.BORDER);
        story.setFont(large);
        story.setMargins(10, 8, 10, 8);
        story.setText(HouseMessage.STORY_PICK.text());
        GridDataFactory.fillDefaults().grab(true, true).hint(SWT.DEFAULT, 160).applyTo(story);
        FilesDropped.on(story, this::dropped);
        table.addSelectionChangedListener(event -> {
            picked = selected().map(ReceivedRow::unit);
            files = List.of();
            enable();
            picked.ifPresent(this::tell);
        });
        table.addDoubleClickListener(event -> selected().ifPresent(row -> Scanned.show(getSite().getWorkbenchWindow(), row.unit())));
        body.addDisposeListener(event -> {
            house.remove(entered);
            desk.remove(tested);
        });
        house.add(entered);
        desk.add(tested);
        enable();
        readAgain();
    }

    private void bar(Font large) {
        Composite bar = new Composite(body, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(9).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        scan = new Text(bar, SWT.SEARCH);
        scan.setMessage(HouseMessage.SCAN_HINT.text());
        scan.setFont(large);
        GridDataFactory.fillDefaults().grab(true, false).hint(160, SWT.DEFAULT).applyTo(scan);
        scan.addListener(SWT.DefaultSelection, event -> {
            String typed = scan.getText();
            scan.setText("");
            Scanned.show(getSite().getWorkbenchWindow(), typed);
        });
        Buttons.push(bar, HouseMessage.RECEIVE.text(), () -> receive("", List.of()));
        test = Buttons.push(bar, HouseMessage.TEST.text(), () ->
                selected().ifPresent(row -> new NewTestHandler().open(getSite().getWorkbenchWindow(), row.unit())));
        repaired = Buttons.push(bar, HouseMessage.REPAIRED.text(), () -> selected().ifPresent(this::repair));
        correct = Buttons.push(bar, HouseMessage.CORRECT.text(), () -> selected().ifPresent(row -> correct(row, List.of())));
        giveBack = Buttons.push(bar, HouseMessage.GIVE_BACK.text(), () -> selected().ifPresent(this::giveBack));
        withdraw = Buttons.push(bar, HouseMessage.WITHDRAW.text(), () -> picked.ifPresent(this::withdraw));
        tag = Buttons.push(bar, HouseMessage.TAG.text(), () -> selected().ifPresent(this::tag));
        all = Buttons.check(bar, HouseMessage.ALL.text(), this::readAgain);
    }

    private static Columns<ReceivedRow> columns(Composite body) {
        Columns<ReceivedRow> columns = Columns.in(body, SWT.BORDER, ReceivedRow.class);
        columns.add(HouseMessage.UNIT.text(), 185, Shown::unit);
        columns.add(HouseMessage.STANDS.text(), 230, Shown::state);
        columns.add(HouseMessage.SINCE.text(), 130, Shown::since);
        columns.add(HouseMessage.ORDER.text(), 95, ReceivedRow::order);
        columns.add(HouseMessage.OWNER.text(), 150, ReceivedRow::owner);
        columns.add(HouseMessage.RECEIPT.text(), 80, ReceivedRow::receipt);
        columns.addWide(HouseMessage.NOTES.text(), 200, row -> String.join("; ", row.notes()));
        return columns;
    }

    private Optional<ReceivedRow> selected() {
        return columns.selected();
    }

    private void enable() {
        Switched.enable(repaired, Shown.canRepair(selected()));
        Switched.enable(correct, Shown.canCorrect(selected()));
        Switched.enable(giveBack, Shown.canGiveBack(selected()));
        Switched.enable(withdraw, !files.isEmpty());
        Switched.enable(test, Shown.canTest(selected()));
        Switched.enable(tag, selected().filter(row -> row.standing().inHouse()).isPresent());
    }

    // ---- reading

    /** Which unit somebody looks at is no news of where units stand. */
    private void onTheBench(DeskListener.Change change) {
        if (change != DeskListener.Change.SELECTION) {
            onScreen(this::readAgain);
        }
    }

    /** Reads the units again, once more behind a reading that is under way. */
    private void readAgain() {
        if (reading) {
            again = true;
            return;
        }
        reading = true;
        boolean left = all.getSelection();
        house.ask(receiving -> Files.exists(desk.ledger()) ? receiving.received(left) : List.<ReceivedRow>of())
                .whenComplete((rows, failure) -> onScreen(() -> read(Optional.ofNullable(rows), Optional.ofNullable(failure))));
    }

    private void read(Optional<List<ReceivedRow>> rows, Optional<Throwable> failure) {
        reading = false;
        rows.ifPresent(this::show);
        failure.ifPresent(why -> Labels.say(count, Failures.words(why)));
        if (again) {
            again = false;
            readAgain();
        }
    }

    private void show(List<ReceivedRow> rows) {
        Optional<String> before = picked;
        table.setInput(rows);
        Labels.say(count, rows.isEmpty() ? HouseMessage.NONE.text() : HouseMessage.COUNT.text(rows.size()));
        Optional<ReceivedRow> same = before.flatMap(unit -> rows.stream().filter(row -> row.unit().equals(unit)).reduce((first, last) -> last));
        same.ifPresent(row -> table.setSelection(new StructuredSelection(row), true));
        enable();
    }

    /** Selects a unit and tells what is on record of it. */
    void select(UnitStory found) {
        picked = Optional.of(found.unit());
        readAgain();
        show(found);
    }

    private void tell(String unit) {
        house.ask(receiving -> receiving.look(unit)).whenComplete((found, failure) -> onScreen(() -> {
            if (picked.filter(unit::equals).isEmpty()) {
                return;
            } else if (failure == null) {
                show(found);
            } else {
                // Whatever stood there is of another unit.
                story.setText(Failures.words(failure));
            }
        }));
    }

    private void show(UnitStory found) {
        StringBuilder text = new StringBuilder(found.unit()).append(found.family().map(family -> "   " + family).orElse("")).append("\n");
        text.append(found.lines().isEmpty() ? HouseMessage.STORY_NONE.text(found.unit()) : String.join("\n", found.lines()));
        story.setText(text.toString());
        files = picked.filter(found.unit()::equals).isPresent() ? found.files().stream().filter(file -> file.withdrawn().isEmpty()).toList()
                : List.of();
        enable();
    }

    private void onScreen(Runnable shown) {
        OnDisplay.later(body, shown);
    }

    // ---- entering

    private void receive(String unit, List<Path> files) {
        new ReceiveDialog(body.getShell(), house, settings, unit, files).open();
    }

    /** Photos and papers that are dropped belong to the selected unit; where none is selected, to one that is received now. */
    private void dropped(List<Path> files) {
        Optional<ReceivedRow> unit = selected().filter(row -> Shown.canCorrect(Optional.of(row)));
        // The one who drags waits until the drop is taken.
        onScreen(() -> unit.ifPresentOrElse(row -> correct(row, files), () -> receive("", files)));
    }

    private void correct(ReceivedRow row, List<Path> more) {
        house.ask(receiving -> receiving.said(row.receipt())).whenComplete((said, failure) -> onScreen(() -> {
            if (failure == null) {
                new CorrectDialog(body.getShell(), house, settings, row, said, more).open();
            } else {
                Failures.tell(body.getShell(), failure);
            }
        }));
    }

    private void repair(ReceivedRow row) {
        new RepairDialog(body.getShell(), house, settings, row).open();
    }

    private void withdraw(String unit) {
        List<HouseFile> there = files;
        List<String> names = there.stream().map(file -> HouseMessage.WITHDRAW_ENTRY.text(file.where(), file.name(), file.digest().substring(0, 8)))
                .toList();
        Auditing auditing = Auditing.here(desk.ledger());
        SignDialog.ask(body.getShell(), new SignDialog.Asked(HouseMessage.WITHDRAW_TITLE.text(),
                HouseMessage.WITHDRAW_WHAT.text(unit),
                List.of(new SignDialog.Choice(HouseMessage.WITHDRAW_WHICH.text(), names), new SignDialog.Line(HouseMessage.WITHDRAW_WHY.text(), "")),
                settings.technician(), (answers, by) -> auditing.withdrawFile(unit, there.get(names.indexOf(answers.get(0))).digest(),
                        answers.get(1), by)), () -> tell(unit));
    }

    private void tag(ReceivedRow row) {
        TagDialog dialog = new TagDialog(body.getShell(), row, settings.technician());
        if (dialog.open() == Window.OK) {
            print(row, dialog);
        }
    }

    private void print(ReceivedRow row, TagDialog asked) {
        house.ask(receiving -> receiving.tag(row.unit(), asked.contact(), ZoneId.systemDefault()))
                .thenAccept(printed -> write(asked.file(), printed.pdf(Instant.now())))
                .whenComplete((done, failure) -> onScreen(() -> {
                    if (failure != null) {
                        Failures.tell(body.getShell(), failure);
                    } else {
                        Labels.say(count, HouseMessage.TAG_WRITTEN.text(asked.file().toString()));
                        asked.show();
                    }
                }));
    }

    private static void write(Path path, byte[] pdf) {
        try {
            Files.write(path, pdf);
        } catch (IOException e) {
            throw new CompletionException(new CannotStoreException(HouseMessage.TAG_NOT_WRITTEN.text(path.toString(),
                    String.valueOf(e.getMessage())), e));
        }
    }

    private void giveBack(ReceivedRow row) {
        InputDialog why = new InputDialog(body.getShell(), HouseMessage.GIVE_BACK_TITLE.text(),
                Labels.letters(HouseMessage.GIVE_BACK_WHY.text(row.unit(), row.receipt())),
                "", typed -> typed.isBlank() ? "" : null);
        if (why.open() == Window.OK) {
            Consumer<Throwable> told = failure -> onScreen(() -> Failures.tell(body.getShell(), failure));
            house.enter(receiving -> {
                receiving.giveBack(row.receipt(), why.getValue(), settings.technician());
                return row;
            }).whenComplete((done, failure) -> Optional.ofNullable(failure).ifPresent(told));
        }
    }

    @Override
    public void setFocus() {
        scan.setFocus();
        // What was signed about a record elsewhere moves its unit too.
        readAgain();
    }
}
