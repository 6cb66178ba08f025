package org.benchwright.ui.internal.audit;

import java.util.List;
import java.util.Optional;

import org.benchwright.report.Page;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;

/** The course of a test's soaks: plots one below the other over the same hours, each with the words that say what may be read off it. */
final class Courses {

    private static final int PLOT_HEIGHT = 260;
    private static final int INDENT = 10;

    private final ScrolledComposite scroller;
    private final Composite body;

    Courses(Composite parent) {
        scroller = new ScrolledComposite(parent, SWT.V_SCROLL);
        scroller.setExpandHorizontal(true);
        scroller.setExpandVertical(true);
        body = new Composite(scroller, SWT.NONE);
        GridLayoutFactory.swtDefaults().applyTo(body);
        scroller.setContent(body);
        scroller.addListener(SWT.Resize, event -> measure());
    }

    /** Shows these in the place of those before. */
    void show(List<Page.Section> sections) {
        for (Control control : body.getChildren()) {
            control.dispose();
        }
        sections.stream().filter(section -> section.plot().isPresent()).forEach(section -> {
            section.sentences().forEach(this::words);
            PlotCanvas canvas = new PlotCanvas(body);
            GridDataFactory.fillDefaults().grab(true, false).hint(SWT.DEFAULT, PLOT_HEIGHT).applyTo(canvas.control());
            canvas.show(Optional.of(section.plot().get()));
        });
        body.layout(true, true);
        measure();
        scroller.setOrigin(0, 0);
    }

    private void words(String sentence) {
        Label label = new Label(body, SWT.WRAP);
        Labels.say(label, sentence);
        GridDataFactory.fillDefaults().grab(true, false).indent(INDENT, 0).applyTo(label);
    }

    /** Sentences need more lines in a narrow window. */
    private void measure() {
        scroller.setMinHeight(body.computeSize(Math.max(1, scroller.getClientArea().width), SWT.DEFAULT).y);
    }
}
