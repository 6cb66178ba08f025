package org.benchwright.ui.internal.flow;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;

import org.benchwright.language.proof.FlowPlace;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.flow.PlacedFlow.Box;
import org.benchwright.ui.internal.look.Fonts;
import org.benchwright.ui.internal.look.Palette;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.graphics.Transform;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.ScrollBar;

/**
 * A flow to look at: scrolled, made larger and smaller (Ctrl with the wheel, plus, minus, 0), gone through with the arrow keys. A click
 * or Enter opens a place.
 */
public final class FlowCanvas {

    private static final double SMALLEST = 0.25;
    private static final double LARGEST = 3;
    private static final double STEP = 1.2;

    private final Canvas canvas;
    private final Fonts fonts;
    private final Consumer<FlowPlace> selecting;
    private final Consumer<FlowPlace> opening;
    private Optional<PlacedFlow> shown = Optional.empty();
    private int selected;
    private double scale;

    /**
     * @param selecting is told which place is looked at
     * @param opening   is told which place is to be opened in the text
     */
    public FlowCanvas(Composite parent, Consumer<FlowPlace> selecting, Consumer<FlowPlace> opening) {
        this.selecting = selecting;
        this.opening = opening;
        canvas = new Canvas(parent, SWT.DOUBLE_BUFFERED | SWT.H_SCROLL | SWT.V_SCROLL);
        canvas.setData(this);
        fonts = new Fonts(canvas.getDisplay());
        canvas.addDisposeListener(event -> fonts.dispose());
        canvas.addListener(SWT.Paint, this::paint);
        canvas.addListener(SWT.Resize, event -> settle());
        canvas.addListener(SWT.MouseDown, this::pressed);
        canvas.addListener(SWT.MouseVerticalWheel, this::turned);
        canvas.addListener(SWT.KeyDown, this::typed);
        canvas.addListener(SWT.FocusIn, event -> canvas.redraw());
        canvas.addListener(SWT.FocusOut, event -> canvas.redraw());
        canvas.addListener(SWT.Traverse, event -> event.doit = event.detail != SWT.TRAVERSE_ARROW_NEXT
                && event.detail != SWT.TRAVERSE_ARROW_PREVIOUS);
        canvas.getHorizontalBar().addListener(SWT.Selection, event -> canvas.redraw());
        canvas.getVerticalBar().addListener(SWT.Selection, event -> canvas.redraw());
        canvas.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = spoken();
            }
        });
    }

    /** The control. */
    public Canvas control() {
        return canvas;
    }

    /** What is shown. */
    public Optional<PlacedFlow> shown() {
        return shown;
    }

    /** The place that is looked at. */
    public Optional<FlowPlace> selected() {
        return shown.filter(flow -> selected < flow.diagram().places().size()).map(flow -> flow.diagram().places().get(selected));
    }

    /** How large it is; 1 is one pixel for one unit. */
    public double scale() {
        return scale;
    }

    /** Shows a flow; the place that was looked at stays so where one of its name is still there. */
    public void show(PlacedFlow flow) {
        Optional<FlowPlace> before = selected();
        shown = Optional.of(flow);
        OptionalInt same = flow.diagram().places().stream().filter(place -> before.filter(old -> old.name().equals(place.name())
                && old.kind() == place.kind()).isPresent()).mapToInt(FlowPlace::id).findFirst();
        selected = same.orElse(0);
        settle();
    }

    /** Shows nothing. */
    public void clear() {
        shown = Optional.empty();
        settle();
    }

    // ---- size

    /** As large as can be read at once, with the beginning in sight. */
    private void fit() {
        int room = canvas.getClientArea().width;
        if (room > 0) {
            scale = Math.max(0.9, Math.min(1, room / shown.orElseThrow().width()));
            reveal(shown.orElseThrow().boxes().get(selected));
        }
    }

    private void zoom(double factor) {
        if (scale == 0) {
            // As long as nothing was ever shown, nothing is as large as anything.
            return;
        }
        Point origin = origin();
        Rectangle area = canvas.getClientArea();
        double x = (origin.x + area.width / 2.0) / scale;
        double y = (origin.y + area.height / 2.0) / scale;
        scale = Math.max(SMALLEST, Math.min(LARGEST, scale * factor));
        settle();
        scrollTo((int) (x * scale - area.width / 2.0), (int) (y * scale - area.height / 2.0));
    }

    private void settle() {
        if (scale == 0 && shown.isPresent()) {
            fit();
        }
        settleBars();
        canvas.redraw();
    }

    private void bar(ScrollBar bar, double units, int room) {
        int all = (int) Math.ceil(units * scale);
        int thumb = Math.max(1, Math.min(room, all));
        bar.setValues(Math.max(0, Math.min(bar.getSelection(), all - thumb)), 0, Math.max(1, all), thumb, 24, Math.max(1, room - 24));
        bar.setEnabled(all > room);
    }

    private Point origin() {
        return new Point(canvas.getHorizontalBar().getSelection(), canvas.getVerticalBar().getSelection());
    }

    private void scrollTo(int x, int y) {
        canvas.getHorizontalBar().setSelection(Math.max(0, x));
        canvas.getVerticalBar().setSelection(Math.max(0, y));
        canvas.redraw();
    }

    /** Scrolls no more than it has to, but for a place that is far off. */
    private void reveal(Box box) {
        settleBars();
        Rectangle area = canvas.getClientArea();
        Point origin = origin();
        int left = (int) (box.x() * scale);
        int top = (int) (box.y() * scale);
        boolean across = left < origin.x || left + box.width() * scale > origin.x + area.width;
        boolean down = top < origin.y || top + box.height() * scale > origin.y + area.height;
        scrollTo(across ? (int) (box.middle() * scale) - area.width / 2 : origin.x, down ? top - area.height / 3 : origin.y);
    }

    private void settleBars() {
        Rectangle area = canvas.getClientArea();
        bar(canvas.getHorizontalBar(), shown.map(PlacedFlow::width).orElse(0.0), area.width);
        bar(canvas.getVerticalBar(), shown.map(PlacedFlow::height).orElse(0.0), area.height);
    }

    // ---- drawing

    private void paint(Event event) {
        Palette palette = Theme.palette();
        event.gc.setBackground(palette.ground());
        event.gc.fillRectangle(canvas.getClientArea());
        if (shown.isPresent() && scale > 0) {
            Point origin = origin();
            Transform moved = new Transform(event.display);
            moved.translate(-origin.x, -origin.y);
            event.gc.setTransform(moved);
            new FlowPainter(event.gc, palette, fonts, scale).paint(shown.get(), selected,
                    new Box(origin.x / scale, origin.y / scale, canvas.getClientArea().width / scale, canvas.getClientArea().height / scale));
            event.gc.setTransform(null);
            moved.dispose();
        }
        if (canvas.isFocusControl()) {
            Rectangle area = canvas.getClientArea();
            event.gc.setForeground(palette.quiet());
            event.gc.drawFocus(0, 0, area.width, area.height);
        }
    }

    // ---- mouse and keys

    private void pressed(Event event) {
        canvas.forceFocus();
        Point origin = origin();
        double x = (event.x + origin.x) / scale;
        double y = (event.y + origin.y) / scale;
        shown.flatMap(flow -> flow.diagram().places().stream().filter(place -> flow.box(place).holds(x, y)).findFirst()).ifPresent(place -> {
            select(place);
            opening.accept(place);
        });
    }

    private void turned(Event event) {
        if ((event.stateMask & SWT.MOD1) != 0) {
            zoom(event.count > 0 ? STEP : 1 / STEP);
            event.doit = false;
        }
    }

    private void typed(Event event) {
        switch (event.keyCode) {
            case SWT.ARROW_DOWN -> next(0, 1);
            case SWT.ARROW_UP -> next(0, -1);
            case SWT.ARROW_LEFT -> next(-1, 0);
            case SWT.ARROW_RIGHT -> next(1, 0);
            case SWT.HOME -> shown.ifPresent(flow -> select(flow.diagram().places().get(0)));
            case SWT.CR, SWT.KEYPAD_CR -> selected().ifPresent(opening);
            case SWT.PAGE_DOWN -> scrollTo(origin().x, origin().y + canvas.getClientArea().height);
            case SWT.PAGE_UP -> scrollTo(origin().x, origin().y - canvas.getClientArea().height);
            default -> sized(event.character);
        }
    }

    private void sized(char key) {
        if (key == '+' || key == '=') {
            zoom(STEP);
        } else if (key == '-') {
            zoom(1 / STEP);
        } else if (key == '0') {
            zoom(1 / scale);
        }
    }

    /** The nearest place in a direction; what lies straight ahead counts as nearer than what lies aside. */
    private void next(int right, int down) {
        if (shown.isEmpty()) {
            return;
        }
        PlacedFlow flow = shown.get();
        Box here = flow.boxes().get(selected);
        flow.diagram().places().stream().filter(place -> distance(here, flow.box(place), right, down) < Double.MAX_VALUE)
                .min(Comparator.comparingDouble(place -> distance(here, flow.box(place), right, down))).ifPresent(this::select);
    }

    private static double distance(Box from, Box to, int right, int down) {
        double x = to.middle() - from.middle();
        double y = to.y() - from.y();
        double ahead = x * right + y * down;
        double aside = Math.abs(x * down) + Math.abs(y * right);
        return ahead < 1 ? Double.MAX_VALUE : ahead + 3 * aside;
    }

    /** Looks at a place. */
    public void select(FlowPlace place) {
        selected = place.id();
        shown.ifPresent(flow -> reveal(flow.box(place)));
        selecting.accept(place);
        canvas.getAccessible().setFocus(ACC.CHILDID_SELF);
        canvas.redraw();
    }

    private String spoken() {
        return shown.flatMap(flow -> selected().map(place -> String.join(". ", flow.diagram().told(place)))).orElseGet(Message.FLOW_SPOKEN::text);
    }
}
