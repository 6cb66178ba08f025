package org.benchwright.ui.internal.audit;

import java.io.ByteArrayInputStream;
import java.util.Optional;

import org.benchwright.core.Plot;
import org.benchwright.report.Charts;
import org.benchwright.report.Look;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.Palette;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;

/** Shows a plot, drawn elsewhere: a drawing that has been overtaken by another plot, size or look is dropped. */
public final class PlotCanvas {

    private static final int LEAST = 200;
    private static final int MOST = 4000;

    private final Canvas canvas;
    private Optional<Plot> plot = Optional.empty();
    private Optional<Wanted> drawn = Optional.empty();
    private Optional<Wanted> asked = Optional.empty();
    private Optional<Image> image = Optional.empty();

    /** What a drawing is of. */
    private record Wanted(Plot plot, Look look, int width, int height) {
    }

    /** Makes an empty one. */
    public PlotCanvas(Composite parent) {
        canvas = new Canvas(parent, SWT.DOUBLE_BUFFERED);
        canvas.setData(this);
        canvas.addListener(SWT.Paint, this::paint);
        canvas.addDisposeListener(event -> image.ifPresent(Image::dispose));
    }

    /** The control. */
    public Canvas control() {
        return canvas;
    }

    /** Shows this plot, or nothing. */
    public void show(Optional<Plot> next) {
        plot = next;
        canvas.redraw();
    }

    /** True once the plot is on the screen as it is now. */
    public boolean drawn() {
        return plot.isPresent() && plot.map(this::wanted).equals(drawn);
    }

    private void paint(Event event) {
        Palette palette = Theme.palette();
        event.gc.setBackground(palette.panel());
        event.gc.fillRectangle(canvas.getClientArea());
        Optional<Wanted> wanted = plot.map(this::wanted);
        if (wanted.isPresent() && wanted.equals(drawn)) {
            image.ifPresent(picture -> event.gc.drawImage(picture, 0, 0));
        } else if (wanted.isPresent() && !wanted.equals(asked)) {
            asked = wanted;
            draw(wanted.get());
        }
    }

    private Wanted wanted(Plot shown) {
        Point size = canvas.getSize();
        return new Wanted(shown, Theme.palette() == Palette.DARK ? Look.DARK : Look.LIGHT, within(size.x), within(size.y));
    }

    private static int within(int size) {
        return Math.max(LEAST, Math.min(MOST, size));
    }

    private void draw(Wanted wanted) {
        Background.soon(Message.FIGURES_JOB.text(), monitor -> {
            byte[] png = Charts.png(wanted.plot(), wanted.look(), wanted.width(), wanted.height());
            ImageData data = new ImageData(new ByteArrayInputStream(png));
            OnDisplay.later(canvas, () -> take(wanted, data));
        });
    }

    private void take(Wanted wanted, ImageData data) {
        if (asked.equals(Optional.of(wanted))) {
            image.ifPresent(Image::dispose);
            image = Optional.of(new Image(canvas.getDisplay(), data));
            drawn = Optional.of(wanted);
            canvas.redraw();
        }
    }
}
