package org.benchwright.ui.internal.flow;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.Collectors;

import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.FlowPlace.Kind;
import org.benchwright.language.proof.FlowPlace.Mark;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.flow.PlacedFlow.Box;
import org.benchwright.ui.internal.flow.PlacedFlow.Line;
import org.benchwright.ui.internal.flow.PlacedFlow.Point;
import org.benchwright.ui.internal.look.Fonts;
import org.benchwright.ui.internal.look.Palette;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;

/** Draws a flow at a scale. What matters has a shape or a word: ends say their verdict, marks are written out, never colour alone. */
final class FlowPainter {

    private static final double PADDING = 8;
    private static final double ARROW = 4;
    private static final int NAME = 13;
    private static final int SMALL = 11;
    private static final double ROUND = 10;

    private final GC gc;
    private final Palette palette;
    private final Fonts fonts;
    private final double scale;

    FlowPainter(GC gc, Palette palette, Fonts fonts, double scale) {
        this.gc = gc;
        this.palette = palette;
        this.fonts = fonts;
        this.scale = scale;
        gc.setAntialias(SWT.ON);
    }

    /** @param sight the part that is in sight, in picture units; what lies outside is not drawn */
    void paint(PlacedFlow flow, int selected, Box sight) {
        for (Line line : flow.lines()) {
            if (bounds(line).meets(sight)) {
                line(line, line.way().from() == selected || line.way().to() == selected);
            }
        }
        for (FlowPlace place : flow.diagram().places()) {
            if (flow.box(place).meets(sight)) {
                place(place, flow.box(place), place.id() == selected);
            }
        }
    }

    private static Box bounds(Line line) {
        DoubleSummaryStatistics x = line.points().stream().mapToDouble(Point::x).summaryStatistics();
        DoubleSummaryStatistics y = line.points().stream().mapToDouble(Point::y).summaryStatistics();
        Box way = new Box(x.getMin(), y.getMin(), x.getMax() - x.getMin(), y.getMax() - y.getMin());
        return line.words().isEmpty() ? way : way.with(line.label());
    }

    private int at(double units) {
        return (int) Math.round(units * scale);
    }

    // ---- ways

    private void line(Line line, boolean selected) {
        boolean straight = line.way().kind().isStraight();
        Color colour = selected ? palette.urgent() : straight ? palette.text() : palette.quiet();
        gc.setForeground(colour);
        gc.setLineWidth(Math.max(1, at(selected ? 2.4 : straight ? 1.8 : 1)));
        gc.setLineStyle(straight ? SWT.LINE_SOLID : SWT.LINE_DASH);
        List<Point> points = line.points();
        int[] corners = new int[points.size() * 2];
        for (int i = 0; i < points.size(); i++) {
            corners[2 * i] = at(points.get(i).x());
            corners[2 * i + 1] = at(points.get(i).y());
        }
        gc.drawPolyline(corners);
        gc.setLineStyle(SWT.LINE_SOLID);
        arrow(points.get(points.size() - 2), points.get(points.size() - 1), colour);
        if (!line.words().isEmpty()) {
            gc.setFont(fonts.of(at(SMALL), false));
            gc.drawText(line.words(), at(line.label().x() + 2), at(line.label().y()), SWT.DRAW_TRANSPARENT);
        }
    }

    private void arrow(Point from, Point to, Color colour) {
        double length = Math.max(1e-6, Math.hypot(to.x() - from.x(), to.y() - from.y()));
        double x = (to.x() - from.x()) / length;
        double y = (to.y() - from.y()) / length;
        gc.setBackground(colour);
        gc.fillPolygon(new int[] {at(to.x()), at(to.y()), at(to.x() - ARROW * (2 * x - y)), at(to.y() - ARROW * (2 * y + x)),
                at(to.x() - ARROW * (2 * x + y)), at(to.y() - ARROW * (2 * y - x))});
    }

    // ---- places

    private void place(FlowPlace place, Box box, boolean selected) {
        frame(place, box, selected);
        if (place.isEnd() || place.kind() == Kind.OVER) {
            end(place, box);
            return;
        }
        double inside = box.width() - 2 * PADDING;
        gc.setForeground(palette.quiet());
        gc.setFont(fonts.of(at(SMALL), false));
        text(place.kind() == Kind.SOAK ? Message.FLOW_SOAK.text(place.stage()) : place.stage(), box.x() + PADDING, box.y() + 3, inside);
        gc.setForeground(palette.text());
        gc.setFont(fonts.of(at(NAME), true));
        text(place.name(), box.x() + PADDING, box.y() + 17, inside);
        String marks = marks(place);
        gc.setFont(fonts.of(at(SMALL), false));
        gc.setForeground(place.marks().contains(Mark.UNREACHABLE) ? palette.urgent() : palette.quiet());
        text((marks.isEmpty() ? "" : marks + "  ") + place.words(), box.x() + PADDING, box.y() + 37, inside);
    }

    private void frame(FlowPlace place, Box box, boolean selected) {
        boolean unreachable = place.marks().contains(Mark.UNREACHABLE);
        int round = at(place.isEnd() || place.kind() == Kind.OVER ? box.height() : place.kind() == Kind.SOAK ? 2.5 * ROUND : ROUND / 2);
        gc.setBackground(palette.panel());
        gc.fillRoundRectangle(at(box.x()), at(box.y()), at(box.width()), at(box.height()), round, round);
        gc.setForeground(selected ? palette.urgent() : colour(place));
        gc.setLineWidth(Math.max(1, at(selected ? 3 : place.kind() == Kind.SOAK ? 2.4 : 1.2)));
        gc.setLineStyle(unreachable ? SWT.LINE_DASH : SWT.LINE_SOLID);
        gc.drawRoundRectangle(at(box.x()), at(box.y()), at(box.width()), at(box.height()), round, round);
        gc.setLineStyle(SWT.LINE_SOLID);
        if (unreachable) {
            gc.setForeground(palette.urgent());
            gc.drawLine(at(box.x()), at(box.y() + box.height()), at(box.x() + box.width()), at(box.y()));
        }
    }

    private Color colour(FlowPlace place) {
        return switch (place.kind()) {
            case ACCEPTED -> palette.good();
            case REJECTED -> palette.urgent();
            default -> palette.quiet();
        };
    }

    private void end(FlowPlace place, Box box) {
        boolean live = place.marks().contains(Mark.ENDS_LIVE);
        String words = live ? Message.FLOW_ENDS_LIVE.text() : place.name();
        gc.setForeground(live ? palette.urgent() : colour(place));
        gc.setFont(fonts.of(at(SMALL + 1), true));
        int width = gc.textExtent(words).x;
        int height = gc.textExtent(words).y;
        gc.drawText(words, at(box.middle()) - width / 2, at(box.y() + box.height() / 2) - height / 2, SWT.DRAW_TRANSPARENT);
    }

    private static String marks(FlowPlace place) {
        return place.marks().stream().sorted().map(FlowPainter::word).collect(Collectors.joining("  "));
    }

    private static String word(Mark mark) {
        return switch (mark) {
            case UNREACHABLE -> Message.FLOW_UNREACHABLE.text();
            case ON_DEMAND -> Message.FLOW_ON_DEMAND.text();
            case LIVE -> Message.FLOW_LIVE.text();
            case ENDS_LIVE -> Message.FLOW_ENDS_LIVE.text();
            case CONDITIONAL -> Message.FLOW_CONDITIONAL.text();
        };
    }

    /** Words that don't fit are cut, and end in dots. */
    private void text(String words, double x, double y, double width) {
        String shown = words;
        int room = at(width);
        if (gc.textExtent(shown).x > room) {
            int length = shown.length();
            while (length > 0 && gc.textExtent(shown.substring(0, length) + "\u2026").x > room) {
                length -= Math.max(1, length / 12);
            }
            shown = shown.substring(0, Math.max(0, length)).strip() + "\u2026";
        }
        gc.drawText(shown, at(x), at(y), SWT.DRAW_TRANSPARENT);
    }
}
