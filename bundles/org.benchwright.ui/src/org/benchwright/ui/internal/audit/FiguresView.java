package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.SheetTable;
import org.benchwright.present.Figure;
import org.benchwright.present.FigureFilter;
import org.benchwright.present.Figures;
import org.benchwright.ui.internal.Latest;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.StillWindow;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.SheetGrids;
import org.benchwright.ui.internal.look.Story;
import org.benchwright.ui.internal.look.Switched;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.part.ViewPart;

/** Figures: what the records say about units, families and procedures; a list of them, and the chosen one in words and as a plot. */
public final class FiguresView extends ViewPart {

    private Text family;
    private Text unit;
    private Text from;
    private Text to;
    private Button write;
    private org.eclipse.swt.widgets.List titles;
    private Story story;
    private PlotCanvas canvas;
    private SheetGrids grids;
    private SashForm right;
    private SashForm words;
    private Optional<FiguresJob> job = Optional.empty();
    private final Latest reading = new Latest();
    private Figures figures = new Figures(List.of(), List.of());

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(10).applyTo(body);
        family = field(body, Message.FIGURES_FAMILY, Message.FIGURES_FAMILY_HINT);
        unit = field(body, Message.FIGURES_UNIT, Message.FIGURES_UNIT_HINT);
        from = field(body, Message.FIGURES_FROM, Message.FIGURES_DAY_HINT);
        to = field(body, Message.FIGURES_TO, Message.FIGURES_DAY_HINT);
        Buttons.push(body, Message.FIGURES_READ.text(), this::readAgain);
        write = Buttons.push(body, Message.FIGURES_WRITE.text(), () -> Optional.ofNullable(new DirectoryDialog(getSite().getShell()).open())
                .ifPresent(folder -> writeNumbers(Path.of(folder))));
        write.setEnabled(false);
        SashForm parts = new SashForm(body, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).span(10, 1).applyTo(parts);
        titles = new org.eclipse.swt.widgets.List(parts, SWT.SINGLE | SWT.V_SCROLL | SWT.BORDER);
        titles.addListener(SWT.Selection, event -> choose());
        right = new SashForm(parts, SWT.VERTICAL);
        canvas = new PlotCanvas(right);
        words = new SashForm(right, SWT.VERTICAL);
        story = new Story(words, 1);
        grids = new SheetGrids(words);
        words.setWeights(2, 3);
        tell(Message.FIGURES_NOT_YET.text());
        parts.setWeights(1, 3);
        parent.addDisposeListener(event -> job.ifPresent(FiguresJob::cancel));
    }

    private static Text field(Composite parent, Message label, Message hint) {
        new Label(parent, SWT.NONE).setText(label.text());
        Text field = new Text(parent, SWT.BORDER);
        field.setMessage(hint.text());
        GridDataFactory.fillDefaults().grab(true, false).align(SWT.FILL, SWT.CENTER).applyTo(field);
        return field;
    }

    /** Reads the ledger again. */
    void readAgain() {
        job.ifPresent(FiguresJob::cancel);
        Latest.Reading now = reading.begin();
        Optional<FigureFilter> filter = filter();
        if (filter.isEmpty()) {
            return;
        }
        Path ledger = getSite().getService(Desk.class).ledger();
        FiguresJob next = new FiguresJob(ledger, getSite().getService(StillWindow.class), filter.get(), new FiguresJob.Watcher() {
            @Override
            public void derived(long tests) {
                onScreen(() -> now.show(() -> tell(Message.FIGURES_READING.text(String.valueOf(tests)))));
            }

            @Override
            public void read(Figures read) {
                onScreen(() -> now.show(() -> take(read)));
            }

            @Override
            public void failed(String words) {
                onScreen(() -> now.show(() -> tell(words)));
            }
        });
        job = Optional.of(next);
        next.schedule();
    }

    private Optional<FigureFilter> filter() {
        try {
            return Optional.of(new FigureFilter(words(family), words(unit), words(from).map(LocalDate::parse), words(to).map(LocalDate::parse),
                    ZoneId.systemDefault(), LocalDate.now(ZoneId.systemDefault())));
        } catch (DateTimeException notADay) {
            tell(Message.FIGURES_NO_DAY.text());
            return Optional.empty();
        }
    }

    private static Optional<String> words(Text field) {
        return Optional.of(field.getText().strip()).filter(text -> !text.isEmpty());
    }

    private void onScreen(Runnable work) {
        OnDisplay.later(titles, work);
    }

    private void tell(String told) {
        story.clear();
        story.paragraph(told);
        words.setMaximizedControl(story.control());
        right.setMaximizedControl(words);
    }

    private void take(Figures read) {
        figures = read;
        Switched.enable(write, true);
        titles.setItems(read.figures().stream().map(Figure::title).toArray(String[]::new));
        titles.select(0);
        choose();
    }

    /** Writes the numbers of all figures into a folder, and says so below the words of the one that is shown. */
    public void writeNumbers(Path folder) {
        new WriteNumbersJob(figures, folder, words -> onScreen(() -> {
            choose();
            story.strong(words);
            story.showEnd();
        })).schedule();
    }

    private void choose() {
        if (titles.getSelectionIndex() < 0) {
            return;
        }
        Figure figure = figures.figures().get(titles.getSelectionIndex());
        story.clear();
        story.heading(figure.title());
        figure.sentences().forEach(story::strong);
        figures.basis().forEach(story::paragraph);
        story.showBeginning();
        List<SheetTable> tables = figure.tables().stream().filter(table -> !table.rows().isEmpty()).toList();
        grids.show(tables);
        words.setMaximizedControl(tables.isEmpty() ? story.control() : null);
        canvas.show(figure.plot());
        right.setMaximizedControl(figure.plot().isPresent() ? null : words);
    }

    @Override
    public void setFocus() {
        titles.setFocus();
    }
}
