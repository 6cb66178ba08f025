package org.benchwright.ui.internal.bench;

import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;

import org.benchwright.core.ScannedText;
import org.benchwright.present.LookReminder;
import org.benchwright.present.RoundStop;
import org.benchwright.present.UnitRow;
import org.benchwright.present.WallTime;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.Views;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.ui.part.ViewPart;

/**
 * Rounds: one visit to all units on soak, position by position; one key for each that is as expected. Its place in the rack says which unit it
 * is; where nobody said its place, it is scanned first.
 */
public final class RoundsView extends ViewPart {

    /** Widths of the columns, in parts of the whole. */
    private static final int[] WIDTHS = {14, 22, 26, 38};
    private static final int WHOLE = 100;
    private static final int LARGER = 8;
    /** A scanner types the next letter within fewer ms. */
    private static final int SCANNERS_GAP = 150;

    private Desk desk;
    private Settings settings;
    private Table table;
    private Label told;
    private Label keeps;
    /** What came of the last look at each test in this round. */
    private final Map<String, String> looked = new HashMap<>();
    private final Set<String> scanned = new HashSet<>();
    private long presses;
    private final DeskListener listener = (change, test) -> OnDisplay.later(table, this::show);

    @Override
    public void createPartControl(Composite parent) {
        desk = getSite().getService(Desk.class);
        settings = getSite().getService(Settings.class);
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().applyTo(body);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), body);
        FontDescriptor large = FontDescriptor.createFrom(JFaceResources.getDialogFont()).increaseHeight(LARGER);
        table = new Table(body, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.BORDER);
        table.setHeaderVisible(true);
        table.setFont(resources.create(large));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(table);
        for (Words title : new Words[] {Words.ROUNDS_COLUMN_POSITION, Words.ROUNDS_COLUMN_UNIT, Words.ROUNDS_COLUMN_DUE,
                Words.ROUNDS_COLUMN_LOOKED}) {
            new TableColumn(table, SWT.LEFT).setText(title.text());
        }
        keeps = words(body, resources, large);
        told = words(body, resources, large.setStyle(SWT.BOLD));
        Label keys = words(body, resources, FontDescriptor.createFrom(JFaceResources.getDialogFont()).increaseHeight(2));
        keys.setText(Words.ROUNDS_HOW.text());
        table.addListener(SWT.KeyDown, this::pressed);
        table.addListener(SWT.Selection, event -> tellWhatToSee());
        table.addListener(SWT.Resize, event -> widths());
        table.addDisposeListener(event -> desk.remove(listener));
        desk.add(listener);
        show();
    }

    private static Label words(Composite body, LocalResourceManager resources, FontDescriptor font) {
        Label label = new Label(body, SWT.WRAP);
        label.setFont(resources.create(font));
        GridDataFactory.fillDefaults().grab(true, false).hint(200, SWT.DEFAULT).applyTo(label);
        return label;
    }

    private void widths() {
        int width = table.getClientArea().width;
        IntStream.range(0, WIDTHS.length).forEach(i -> table.getColumn(i).setWidth(width * WIDTHS[i] / WHOLE));
    }

    private void show() {
        List<RoundStop> stops = RoundStop.of(desk.units());
        Optional<String> before = selected().map(RoundStop::test);
        stops.stream().filter(RoundStop::overdue).map(RoundStop::test).forEach(looked::remove);
        table.setItemCount(stops.size());
        for (int i = 0; i < stops.size(); i++) {
            RoundStop stop = stops.get(i);
            TableItem item = table.getItem(i);
            item.setText(new String[] {stop.position().orElse(Words.ROUNDS_NO_POSITION.text()), stop.serial(), due(stop),
                    looked.getOrDefault(stop.test(), "")});
            item.setData(stop);
        }
        before.ifPresent(this::select);
        if (table.getSelectionCount() == 0 && !stops.isEmpty()) {
            table.setSelection(0);
        }
        if (stops.isEmpty()) {
            tell(Words.ROUNDS_NONE.text());
        } else if (told.getText().equals(Words.ROUNDS_NONE.text())) {
            tell("");
        }
        tellWhatToSee();
    }

    private String due(RoundStop stop) {
        boolean missed = LookReminder.of(desk.units(), Instant.now()).stream()
                .anyMatch(look -> look.test().equals(stop.test()) && look.kind() == LookReminder.Kind.MISSED);
        Words words = missed ? Words.ROUNDS_MISSED : stop.overdue() ? Words.ROUNDS_NOW : Words.ROUNDS_LATER;
        return words.text(WallTime.here().near(stop.due()));
    }

    private Optional<RoundStop> selected() {
        return table.getSelectionCount() == 0 ? Optional.empty() : Optional.ofNullable((RoundStop) table.getSelection()[0].getData());
    }

    private void select(String test) {
        IntStream.range(0, table.getItemCount()).filter(i -> ((RoundStop) table.getItem(i).getData()).test().equals(test)).findFirst()
                .ifPresent(table::setSelection);
    }

    private void tellWhatToSee() {
        String words = selected().map(stop -> Words.ROUNDS_KEEPS.text(stop.position().orElse(stop.serial()), stop.keeps())).orElse("");
        put(keeps, words);
    }

    private void tell(String words) {
        put(told, words);
    }

    private static void put(Label label, String words) {
        if (Labels.say(label, words)) {
            label.getParent().layout(true, true);
        }
    }

    private void pressed(Event event) {
        long press = ++presses;
        boolean expected = event.character == ' ' || event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR || event.keyCode == FootSwitch.key();
        if (expected) {
            event.doit = false;
            selected().ifPresent(stop -> answer(stop, true));
        } else if (event.character == 'n' || event.character == 'N') {
            event.doit = false;
            // A scanner may be typing a serial number with that letter.
            table.getDisplay().timerExec(SCANNERS_GAP, () -> {
                if (!table.isDisposed() && press == presses) {
                    selected().ifPresent(stop -> answer(stop, false));
                }
            });
        }
    }

    private void answer(RoundStop stop, boolean expected) {
        if (desk.station().locked()) {
            tell(Words.STATION_LOCKED.text(desk.station().person().orElse("")));
        } else if (!expected) {
            onCard(stop);
        } else if (!stop.placeTells() && !scanned.contains(stop.serial())) {
            tell(Words.ROUNDS_SCAN_FIRST.text(stop.serial()));
        } else {
            look(stop);
        }
    }

    /** Only what is on record is said to be; until then the round stays where it is. */
    private void look(RoundStop stop) {
        Optional<UnitRow> unit = desk.units().stream().filter(row -> row.test().equals(stop.test())).findFirst();
        unit.ifPresent(row -> desk.here(row, desk.worksHere(settings.technician()), settings.station()).thenCompose(RoundsView::look)
                .whenComplete((came, failure) -> OnDisplay.later(table, () -> {
                    if (failure != null) {
                        tell(stop.serial() + ": " + Failures.words(failure));
                    } else {
                        came(stop, came);
                    }
                })));
    }

    /** What came of a look: why it was not recorded, or that it has to be answered on the card. */
    private record Came(Optional<String> refused, boolean onCard) {
    }

    private static CompletableFuture<Came> look(OpenTest test) {
        return test.shown().looksWithOneKey() ? test.lookAsExpected(test.shown().version()).thenApply(refused -> new Came(refused, false))
                : CompletableFuture.completedFuture(new Came(Optional.empty(), true));
    }

    private void came(RoundStop stop, Came came) {
        if (came.onCard()) {
            onCard(stop);
        } else if (came.refused().isPresent()) {
            tell(stop.serial() + ": " + came.refused().get());
        } else {
            looked.put(stop.test(), Words.ROUNDS_AS_EXPECTED.text(WallTime.here().justNow(Instant.now())));
            scanned.remove(stop.serial());
            tell(Words.ROUNDS_LOOKED.text(stop.serial()));
            table.setSelection(Math.min(table.getSelectionIndex() + 1, table.getItemCount() - 1));
            show();
        }
    }

    private void onCard(RoundStop stop) {
        scanned.remove(stop.serial());
        looked.put(stop.test(), Words.ROUNDS_ON_CARD.text());
        tell(Words.ROUNDS_CARD.text(stop.serial()));
        desk.select(stop.test());
        show();
        Views.activate(getSite().getPage(), Ids.CARD_VIEW);
    }

    /** A unit was scanned while the round is in front: the round goes to it. False if no unit on soak has that serial number. */
    public boolean scanned(String text) {
        String serial = ScannedText.clean(text);
        Optional<RoundStop> stop = RoundStop.of(desk.units()).stream().filter(each -> each.serial().equals(serial)).findFirst();
        stop.ifPresent(found -> {
            scanned.add(found.serial());
            desk.held(found.test()).ifPresent(test -> test.identify(serial));
            select(found.test());
            tell(Words.ROUNDS_SCANNED.text(found.serial()));
            tellWhatToSee();
        });
        return stop.isPresent();
    }

    @Override
    public void setFocus() {
        table.setFocus();
    }
}
