package org.benchwright.ui.internal.house;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.ScannedText;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.ReceivedRow;
import org.benchwright.present.Receiving;
import org.benchwright.present.UnitStory;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.look.FieldsDialog;
import org.benchwright.ui.internal.look.Labels;
import org.benchwright.ui.internal.Failures;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Receives units one after the other, and stays until it is closed: a scan and its Enter receive one. */
public final class ReceiveDialog extends FieldsDialog {

    private static final int LOOK_AFTER_MILLIS = 300;
    private static final int WIDTH = 300;
    private static final Pattern SEVERAL = Pattern.compile("[\\r\\n]");

    private final House house;
    private final Settings settings;
    private final String first;
    private final List<Path> offered;
    private final Set<String> received = new HashSet<>();
    private ArrivingFields arriving;
    private Text unit;
    private Text by;
    private StyledText known;
    private org.eclipse.swt.widgets.List done;
    private String asked = "";
    private String looked = "";

    /** @param first the unit that was scanned already, may be empty */
    public ReceiveDialog(Shell parent, House house, Settings settings, String first) {
        this(parent, house, settings, first, List.of());
    }

    /**
     * @param first   the unit that was scanned already, may be empty
     * @param offered files of the first unit
     */
    public ReceiveDialog(Shell parent, House house, Settings settings, String first, List<Path> offered) {
        super(parent, HouseMessage.RECEIVE_TITLE.text(), HouseMessage.RECEIVE_WHAT.text(), 2, HouseMessage.RECEIVE_BUTTON.text());
        this.offered = List.copyOf(offered);
        this.house = house;
        this.settings = settings;
        this.first = first;
    }

    @Override
    protected void addFields(Composite both, Composite area) {
        GridLayoutFactory.createFrom((GridLayout) both.getLayout()).spacing(16, 8).applyTo(both);
        fields(both, area);
        Composite beside = new Composite(both, SWT.NONE);
        GridLayoutFactory.fillDefaults().applyTo(beside);
        GridDataFactory.fillDefaults().grab(true, true).hint(380, SWT.DEFAULT).applyTo(beside);
        new Label(beside, SWT.NONE).setText(HouseMessage.RECEIVE_KNOWN.text());
        known = new StyledText(beside, SWT.READ_ONLY | SWT.WRAP | SWT.BORDER | SWT.V_SCROLL);
        known.setMargins(8, 6, 8, 6);
        GridDataFactory.fillDefaults().grab(true, true).hint(SWT.DEFAULT, 180).applyTo(known);
        new Label(beside, SWT.NONE).setText(HouseMessage.RECEIVE_NOW.text());
        done = new org.eclipse.swt.widgets.List(beside, SWT.BORDER | SWT.V_SCROLL);
        GridDataFactory.fillDefaults().grab(true, true).hint(SWT.DEFAULT, 120).applyTo(done);
        house.forget();
        unit.setText(first);
        (first.isEmpty() ? unit : arriving.complaint()).setFocus();
    }

    private void fields(Composite both, Composite area) {
        Composite fields = new Composite(both, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(3).spacing(10, 8).applyTo(fields);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(fields);
        arriving = ArrivingFields.in(fields, area, WIDTH,
                new Receiving.Arriving("", "", "", Receiving.plateWords().get(0), false, false, "", "", "", "", List.of()));
        arriving.files().add(offered);
        unit = arriving.unit();
        unit.addListener(SWT.DefaultSelection, event -> event.doit = false);
        unit.addListener(SWT.Traverse, event -> {
            if (event.detail == SWT.TRAVERSE_RETURN) {
                event.doit = false;
                okPressed();
            }
        });
        unit.addListener(SWT.Modify, event -> lookSoon());
        unit.addListener(SWT.Verify, this::pasted);
        by = ArrivingFields.text(fields, HouseMessage.RECEIVE_BY, settings.technician(), WIDTH);
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, HouseMessage.RECEIVE_BUTTON.text(), true);
        createButton(parent, IDialogConstants.CANCEL_ID, HouseMessage.RECEIVE_CLOSE.text(), false);
    }

    // ---- what is known of the unit

    private void lookSoon() {
        String typed = unit.getText();
        unit.getDisplay().timerExec(LOOK_AFTER_MILLIS, () -> {
            if (!unit.isDisposed() && unit.getText().equals(typed) && !typed.isBlank() && !typed.equals(looked)) {
                looked = typed;
                house.ask(receiving -> receiving.look(typed)).whenComplete((found, failure) -> OnDisplay.later(unit, () -> {
                    if (unit.getText().equals(typed)) {
                        known.setText(failure == null ? words(found) : Failures.words(failure));
                    }
                }));
            }
        });
    }

    private static String words(UnitStory found) {
        String head = found.lines().isEmpty() ? HouseMessage.RECEIVE_FIRST.text(found.unit()) : HouseMessage.RECEIVE_STORY.text(found.unit());
        String question = found.question().map(words -> "\n" + words).orElse("");
        return found.family().map(family -> family + "\n").orElse("") + head + question + found.lines().stream().map(line -> "\n" + line)
                .collect(Collectors.joining());
    }

    // ---- receiving

    /** A column of serial numbers that was pasted: each is a unit of the order. */
    private void pasted(Event event) {
        if (SEVERAL.matcher(event.text).find()) {
            List<String> units = event.text.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
            event.doit = false;
            OnDisplay.later(getShell(), () -> units.forEach(each -> {
                unit.setText(each);
                okPressed();
            }));
        }
    }

    /** A unit is handed over to be recorded, and its fields are free at once: the next scan does not wait for the disk. */
    @Override
    protected void okPressed() {
        String scanned = ScannedText.clean(unit.getText());
        if (received.contains(scanned)) {
            setErrorMessage(HouseMessage.RECEIVE_TWICE.text(scanned));
            next();
            return;
        }
        // Scanned a second time, a number that looked wrong is what the plate says.
        boolean same = !scanned.isEmpty() && scanned.equals(asked);
        Receiving.Arriving entered = arriving.arriving(scanned, arriving.asTyped().getSelection() || same, same, "");
        String initials = by.getText();
        clear();
        Shell window = getParentShell();
        house.enter(receiving -> receiving.receive(entered, initials)).whenComplete((row, failure) -> OnDisplay.later(window, () -> {
            if (getShell() != null) {
                received(entered, Optional.ofNullable(row), Optional.ofNullable(failure));
            } else if (failure != null) {
                // Whoever scanned the last one and closed the dialog takes it for received.
                MessageDialog.openWarning(window, HouseMessage.RECEIVE_TITLE.text(),
                        Labels.letters(HouseMessage.RECEIVE_NOT.text(entered.unit(), Failures.words(failure))));
            }
        }));
    }

    private void received(Receiving.Arriving entered, Optional<ReceivedRow> row, Optional<Throwable> failure) {
        String scanned = entered.unit();
        if (row.isPresent()) {
            received.add(scanned);
            asked = scanned.equals(asked) ? "" : asked;
            done.add(HouseMessage.RECEIVE_DONE.text(row.get().receipt(), row.get().unit(), row.get().family()), 0);
            if (isClear()) {
                // What stands there still is asked about.
                setErrorMessage(null);
            }
            return;
        }
        Throwable why = failure.orElseThrow();
        String words = Failures.words(why);
        if (isClear()) {
            asked = Failures.cause(why) instanceof EntryRefusedException ? scanned : "";
            putBack(entered);
        } else {
            // The next one is being entered already, or another one is asked about.
            done.add(HouseMessage.RECEIVE_NOT.text(scanned, words), 0);
        }
        if (asked.isEmpty() || asked.equals(scanned)) {
            setErrorMessage(words);
        }
    }

    private boolean isClear() {
        return Stream.of(unit, arriving.complaint(), arriving.damage(), arriving.preserve()).allMatch(field -> field.getText().isBlank())
                && arriving.files().files().isEmpty();
    }

    private void putBack(Receiving.Arriving entered) {
        unit.setText(entered.unit());
        arriving.plate().setText(entered.plate());
        arriving.asTyped().setSelection(false);
        arriving.complaint().setText(entered.complaint());
        arriving.damage().setText(entered.damage());
        arriving.preserve().setText(entered.preserve());
        arriving.files().add(entered.files());
        unit.setFocus();
        unit.selectAll();
    }

    private void clear() {
        arriving.complaint().setText("");
        arriving.damage().setText("");
        arriving.preserve().setText("");
        arriving.files().clear();
        next();
    }

    private void next() {
        arriving.asTyped().setSelection(false);
        arriving.plate().select(0);
        unit.setText("");
        looked = "";
        unit.setFocus();
    }
}
