package org.benchwright.ui.tests;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.language.proof.FlowPlace;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.audit.PlotCanvas;
import org.benchwright.ui.internal.flow.FlowCanvas;
import org.benchwright.ui.internal.flow.PlacedFlow;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Spinner;
import org.eclipse.swt.widgets.TabFolder;
import org.eclipse.swt.widgets.TabItem;
import org.eclipse.ui.PartInitException;

/** Somebody who looks at What it proves. */
final class Prover {

    private Prover() {
    }

    private static Optional<FlowCanvas> canvas() {
        return Screen.all(Canvas.class).map(Canvas::getData).filter(FlowCanvas.class::isInstance).map(FlowCanvas.class::cast).findFirst();
    }

    static FlowCanvas flow() {
        return canvas().orElseThrow(() -> new AssertionError("the diagram is not on the screen"));
    }

    /** Brings the view to the front. */
    static void look() {
        try {
            Screen.page().showView(Ids.PROOF_VIEW);
        } catch (PartInitException notOpened) {
            throw new AssertionError(notOpened.getMessage(), notOpened);
        }
    }

    /** Lets the view beside it to the front again. */
    static void lookAway() throws PartInitException {
        Screen.page().showView(Ids.PRINTED_VIEW);
    }

    /** Waits until a place of this name is in the diagram. */
    static void waitForFlow(String name) {
        look();
        Screen.waitFor(name + " in the diagram", () -> {
            // The pages come with the first procedure, and stay turned where somebody turned them.
            Screen.all(TabFolder.class).forEach(folder -> folder.setSelection(0));
            return canvas().flatMap(FlowCanvas::shown).flatMap(flow -> place(flow, name)).isPresent();
        });
    }

    private static Optional<FlowPlace> place(PlacedFlow flow, String name) {
        return flow.diagram().places().stream().filter(place -> place.name().equals(name)).findFirst();
    }

    static FlowPlace place(String name) {
        return flow().shown().flatMap(flow -> place(flow, name)).orElseThrow();
    }

    static void select(String name) {
        flow().select(place(name));
        Screen.settle();
    }

    /** Clicks on a place that is in sight. */
    static void click(String name) {
        PlacedFlow.Box box = flow().shown().orElseThrow().box(place(name));
        Canvas control = flow().control();
        Event event = new Event();
        event.button = 1;
        event.x = (int) ((box.x() + box.width() / 2) * flow().scale()) - control.getHorizontalBar().getSelection();
        event.y = (int) ((box.y() + box.height() / 2) * flow().scale()) - control.getVerticalBar().getSelection();
        control.notifyListeners(SWT.MouseDown, event);
        Screen.settle();
    }

    static void turnTo(String page) {
        TabFolder folder = Screen.one(TabFolder.class, any -> true);
        TabItem item = Stream.of(folder.getItems()).filter(each -> each.getText().equals(page)).findFirst().orElseThrow();
        folder.setSelection(item);
        Screen.settle();
    }

    /** What is said above the pages. */
    static List<String> labels() {
        return Screen.all(Label.class).map(Label::getText).toList();
    }

    static void waitForWords(String words) {
        Screen.waitFor(words, () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().contains(words)));
    }

    /** Waits until the plot is drawn, which happens elsewhere. */
    static void waitForPlot() {
        Screen.waitFor("the plot", () -> Screen.all(Canvas.class).map(Canvas::getData).filter(PlotCanvas.class::isInstance)
                .map(PlotCanvas.class::cast).anyMatch(PlotCanvas::drawn));
        Screen.settle();
    }

    static void whatIf(int hours) {
        Spinner spinner = Screen.one(Spinner.class, any -> true);
        spinner.setSelection(hours);
        spinner.notifyListeners(SWT.Selection, new Event());
        Screen.settle();
    }
}
