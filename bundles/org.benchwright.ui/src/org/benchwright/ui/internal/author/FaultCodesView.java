package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.editing.Place;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.FaultPage;
import org.benchwright.present.WallTime;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Latest;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Editors;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Clipping;
import org.benchwright.ui.internal.look.Columns;
import org.benchwright.ui.internal.look.Labels;
import org.benchwright.ui.internal.look.Switched;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.IPartListener;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.part.ViewPart;

/**
 * Fault codes: those of all fault logs that the notes of their family don't tell, or all; from each to its family (F3, Enter or a double click),
 * and a note to be filled in (Ctrl+C).
 */
public final class FaultCodesView extends ViewPart implements AuthorListener {

    private final IPartListener shown = new PartActivated(this::activated);
    private Composite body;
    private Label told;
    private Columns<Line> columns;
    private TableViewer table;
    private Button copy;
    private Button open;
    private Button all;
    private Optional<FaultPage> page = Optional.empty();
    private List<Line> known = List.of();
    private final Latest comparing = new Latest();

    /**
     * A code.
     *
     * @param row  as the ledger has it
     * @param told whether its family's notes tell it: then, or by now
     */
    private record Line(FaultPage.Row row, String told) {
    }

    @Override
    public void createPartControl(Composite parent) {
        body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().applyTo(body);
        told = new Label(body, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(told);
        Composite keys = new Composite(body, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(4).applyTo(keys);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(keys);
        copy = Buttons.push(keys, Message.FAULT_CODES_COPY.text(), this::copy);
        open = Buttons.push(keys, Message.FAULT_CODES_OPEN.text(), this::open);
        all = Buttons.check(keys, Message.FAULT_CODES_ALL.text(), this::filter);
        Buttons.push(keys, Message.FAULT_CODES_READ.text(), this::read);
        columns = Columns.in(body, SWT.BORDER, Line.class);
        table = columns.table();
        GridDataFactory.fillDefaults().grab(true, true).applyTo(table.getControl());
        List<String> headings = FaultPage.headings().stream().map(FaultCodesView::capital).toList();
        columns.add(headings.get(0), 65, line -> line.row().code());
        columns.add(headings.get(1), 205, line -> line.row().family());
        columns.add(headings.get(2), 75, Line::told);
        columns.addWide(Message.FAULT_CODES_BESIDE.text(), 125, line -> line.row().beside());
        columns.add(headings.get(3), 55, line -> line.row().tests());
        columns.add(headings.get(4), 92, line -> line.row().first());
        columns.add(headings.get(5), 92, line -> line.row().last());
        columns.add(headings.get(6), 130, line -> line.row().where());
        table.addSelectionChangedListener(event -> enable());
        table.addOpenListener(event -> open());
        table.getTable().addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.F3) {
                open();
            } else if (event.keyCode == 'c' && event.stateMask == SWT.MOD1) {
                copy();
            }
        });
        getSite().getPage().addPartListener(shown);
        Authoring.current().ifPresent(authoring -> authoring.add(this));
        enable();
        read();
    }

    /** What machines get begins with a small letter, a column of the window with a capital one. */
    private static String capital(String heading) {
        return heading.substring(0, 1).toUpperCase(Locale.ENGLISH) + heading.substring(1);
    }

    private void activated(IWorkbenchPart part) {
        if (part == this) {
            compare();
        }
    }

    @Override
    public void checked(FolderState state) {
        if (!state.running()) {
            OnDisplay.later(body, this::compare);
        }
    }

    private Optional<FaultPage.Row> selected() {
        return columns.selected().map(Line::row);
    }

    private void enable() {
        Switched.enable(copy, selected().isPresent());
        Switched.enable(open, selected().isPresent());
    }

    // ---- reading

    /** Every fault log of the ledger is read: that takes its time, and is done when somebody looks here first, or asks for it. */
    private void read() {
        Path ledger = getSite().getService(Desk.class).ledger();
        tell(Message.FAULT_CODES_READING.text());
        Background.soon(Message.FAULT_CODES_JOB.text(), monitor -> {
            try {
                FaultPage found = FaultPage.of(ledger, true, ZoneId.systemDefault());
                OnDisplay.later(body, () -> {
                    page = Optional.of(found);
                    tell(Message.FAULT_CODES_AT.text(found.sentence(), WallTime.here().today(Instant.now())));
                    compare();
                });
            } catch (CannotStoreException e) {
                OnDisplay.later(body, () -> tell(String.valueOf(e.getMessage())));
            }
        });
    }

    /** Compares what was read with the notes as they are written now. */
    private void compare() {
        if (page.isPresent() && body.isVisible()) {
            FaultPage found = page.get();
            List<AuthorFolder> folders = folders();
            Latest.Reading now = comparing.begin();
            Background.soon(Message.FAULT_CODES_JOB.text(), monitor -> {
                List<Line> lines = lines(found, folders);
                OnDisplay.later(body, () -> now.show(() -> show(lines)));
            });
        }
    }

    /** The ledger tells what the notes said then; a note that was written since is told of, too. */
    private static List<Line> lines(FaultPage page, List<AuthorFolder> folders) {
        Map<String, Set<String>> notes = new HashMap<>();
        return page.rows().stream().map(row -> {
            Set<String> now = notes.computeIfAbsent(row.name(),
                    name -> folders.stream().flatMap(folder -> FamilyPlaces.told(folder.session(), name).stream())
                    .collect(Collectors.toSet()));
            return new Line(row, row.known() || !now.contains(row.code()) ? row.told() : Message.FAULT_CODES_SINCE.text());
        }).toList();
    }

    /** The folder of the editor that is used, and the one that the window was opened with. */
    private List<AuthorFolder> folders() {
        Stream<Path> paths = Stream.concat(Editors.file(getSite().getPage().getActiveEditor()).map(Path::getParent).stream(),
                getSite().getService(Settings.class).procedures().stream());
        return Authoring.current().map(authoring -> paths.map(authoring::folder).distinct().toList()).orElse(List.of());
    }

    private void show(List<Line> lines) {
        known = lines;
        filter();
    }

    private void filter() {
        List<Line> shown = known.stream().filter(line -> all.getSelection() || !line.row().known()).toList();
        columns.show(shown, line -> List.of(line.row().name(), line.row().code()));
        enable();
    }

    private void tell(String words) {
        if (Labels.say(told, words)) {
            body.layout();
        }
    }

    // ---- what the engineer does with a code

    private void copy() {
        selected().ifPresent(row -> {
            Clipping.copy(body.getDisplay(), row.note());
            tell(Message.FAULT_CODES_COPIED.text(row.code(), row.family()));
        });
    }

    private void open() {
        if (selected().isEmpty()) {
            return;
        }
        FaultPage.Row row = selected().get();
        List<AuthorFolder> folders = folders();
        Background.soon(Message.FAULT_CODES_OPEN.text(), monitor -> {
            Optional<Place> place = folders.stream().flatMap(folder -> FamilyPlaces.of(folder.session(), row.name(), row.code()).stream())
                    .findFirst();
            OnDisplay.later(body, () -> place.ifPresentOrElse(found -> Passages.show(getSite().getPage(), found),
                    () -> tell(Message.FAULT_CODES_NO_FAMILY.text(row.name()))));
        });
    }

    @Override
    public void setFocus() {
        table.getControl().setFocus();
    }

    @Override
    public void dispose() {
        getSite().getPage().removePartListener(shown);
        Authoring.current().ifPresent(authoring -> authoring.remove(this));
        super.dispose();
    }
}
