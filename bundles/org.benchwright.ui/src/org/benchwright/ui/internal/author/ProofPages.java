package org.benchwright.ui.internal.author;

import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

import org.benchwright.core.Plot;
import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.ProofSection;
import org.benchwright.language.proof.ProofSection.Subject;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.audit.PlotCanvas;
import org.benchwright.ui.internal.author.ProofJob.Proved;
import org.benchwright.ui.internal.flow.FlowCanvas;
import org.benchwright.ui.internal.look.SheetGrids;
import org.benchwright.ui.internal.look.Story;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Spinner;
import org.eclipse.swt.widgets.TabFolder;
import org.eclipse.swt.widgets.TabItem;

/** The subjects of what a procedure proves, one page for each. */
final class ProofPages {

    private static final int USUAL_HOURS = 96;
    private static final int MOST_HOURS = 8760;

    private final TabFolder folder;
    private final Map<Subject, Story> stories = new EnumMap<>(Subject.class);
    private final FlowCanvas flow;
    private final SheetGrids times;
    private final SheetGrids lengths;
    private final PlotCanvas plot;
    private final Combo plots;
    private final Spinner hours;
    private Optional<Proved> shown = Optional.empty();
    private List<ProofSection> sections = List.of();
    private List<Plot> drawn = List.of();

    /** @param opening is told which place is to be shown in the text */
    ProofPages(Composite parent, Consumer<FlowPlace> opening) {
        folder = new TabFolder(parent, SWT.TOP);
        SashForm flowPage = page(Subject.FLOW, Message.PROOF_FLOW);
        flow = new FlowCanvas(flowPage, this::tell, opening);
        story(Subject.FLOW, flowPage);
        flowPage.setWeights(3, 1);
        SashForm timesPage = page(Subject.TIMES, Message.PROOF_TIMES);
        times = new SheetGrids(timesPage);
        story(Subject.TIMES, timesPage);
        timesPage.setWeights(3, 2);
        story(Subject.FAULTS, page(Subject.FAULTS, Message.PROOF_FAULTS));
        story(Subject.RISKS, page(Subject.RISKS, Message.PROOF_RISKS));
        SashForm soakPage = page(Subject.SOAK, Message.PROOF_SOAK);
        Composite top = new Composite(soakPage, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(4).applyTo(top);
        new Label(top, SWT.NONE).setText(Message.PROOF_WHAT_IF.text());
        hours = new Spinner(top, SWT.BORDER);
        hours.setValues(USUAL_HOURS, 1, MOST_HOURS, 0, 1, 24);
        hours.addListener(SWT.Selection, event -> otherLength());
        new Label(top, SWT.NONE).setText(Message.PROOF_HOURS.text());
        plots = new Combo(top, SWT.READ_ONLY | SWT.DROP_DOWN);
        plots.addListener(SWT.Selection, event -> draw());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(plots);
        plot = new PlotCanvas(top);
        GridDataFactory.fillDefaults().grab(true, true).span(4, 1).applyTo(plot.control());
        lengths = new SheetGrids(soakPage);
        story(Subject.SOAK, soakPage);
        soakPage.setWeights(5, 3, 3);
        folder.setVisible(false);
    }

    private SashForm page(Subject subject, Message title) {
        SashForm page = new SashForm(folder, SWT.VERTICAL);
        TabItem item = new TabItem(folder, SWT.NONE);
        item.setText(title.text());
        item.setData(subject);
        item.setControl(page);
        return page;
    }

    private void story(Subject subject, Composite page) {
        stories.put(subject, new Story(page, 0));
    }

    Control control() {
        return folder;
    }

    /** Shows nothing. */
    void clear() {
        shown = Optional.empty();
        flow.clear();
        folder.setVisible(false);
    }

    /** Shows a procedure. */
    void show(Proved proved) {
        shown = Optional.of(proved);
        reckon();
        flow.show(proved.flow());
        sections.stream().filter(section -> section.subject() != Subject.SOAK).forEach(this::write);
        times.show(section(Subject.TIMES).tables());
        soak();
        folder.setVisible(true);
    }

    /** With the length of the soak that is asked for. */
    private void reckon() {
        Optional<Duration> other = Optional.of(Duration.ofHours(hours.getSelection()));
        sections = shown.map(proved -> proved.proof().sections(other)).orElse(List.of());
    }

    private ProofSection section(Subject subject) {
        return sections.get(subject.ordinal());
    }

    private void write(ProofSection section) {
        Story story = stories.get(section.subject());
        int top = story.control().getTopIndex();
        story.clear();
        section.sentences().forEach(story::strong);
        if (section.subject() == Subject.FLOW || section.subject() == Subject.FAULTS || section.subject() == Subject.RISKS) {
            section.tables().forEach(table -> new SheetWords(table).write(story));
        }
        section.assumptions().forEach(story::paragraph);
        if (top == 0) {
            story.showBeginning();
        } else {
            story.control().setTopIndex(top);
        }
    }

    /** What is looked at in the diagram, with the ways from it and why they are taken. */
    private void tell(FlowPlace place) {
        shown.ifPresent(proved -> {
            Story story = stories.get(Subject.FLOW);
            List<String> told = proved.proof().flow().told(place);
            story.clear();
            story.strong(told.get(0));
            told.stream().skip(1).forEach(story::paragraph);
            story.paragraph("");
            section(Subject.FLOW).sentences().forEach(story::paragraph);
            story.showBeginning();
        });
    }

    // ---- soak

    private void otherLength() {
        if (shown.isPresent()) {
            reckon();
            soak();
        }
    }

    private void soak() {
        ProofSection section = section(Subject.SOAK);
        write(section);
        lengths.show(section.tables());
        int chosen = Math.max(0, plots.getSelectionIndex());
        drawn = section.plots();
        plots.setItems(drawn.stream().map(Plot::title).toArray(String[]::new));
        plots.select(chosen < drawn.size() ? chosen : 0);
        plots.setEnabled(!drawn.isEmpty());
        hours.setEnabled(!drawn.isEmpty());
        draw();
    }

    private void draw() {
        plot.show(drawn.isEmpty() ? Optional.empty() : Optional.of(drawn.get(Math.max(0, plots.getSelectionIndex()))));
    }

    void setFocus() {
        folder.setFocus();
    }
}
