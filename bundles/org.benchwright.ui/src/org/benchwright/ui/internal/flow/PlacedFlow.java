package org.benchwright.ui.internal.flow;

import java.util.List;

import org.benchwright.language.proof.FlowDiagram;
import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.FlowWay;

/**
 * A flow with places for all that is drawn of it, in picture units: at the usual size one unit is one pixel.
 *
 * @param diagram the flow
 * @param boxes   where its places are, by their numbers
 * @param lines   its ways
 * @param width   of the whole picture
 * @param height  of the whole picture
 */
public record PlacedFlow(FlowDiagram diagram, List<Box> boxes, List<Line> lines, double width, double height) {

    /**
     * A rectangle.
     *
     * @param x      its left edge
     * @param y      its upper edge
     * @param width  not negative
     * @param height not negative
     */
    public record Box(double x, double y, double width, double height) {

        /** Whether a point lies in it. */
        public boolean holds(double atX, double atY) {
            return x <= atX && atX <= x + width && y <= atY && atY <= y + height;
        }

        /** Whether it has a point in common with another. */
        boolean meets(Box other) {
            return x <= other.x + other.width && other.x <= x + width && y <= other.y + other.height && other.y <= y + height;
        }

        /** The smallest that holds this one and another. */
        Box with(Box other) {
            double left = Math.min(x, other.x);
            double top = Math.min(y, other.y);
            return new Box(left, top, Math.max(x + width, other.x + other.width) - left, Math.max(y + height, other.y + other.height) - top);
        }

        double middle() {
            return x + width / 2;
        }
    }

    /** A corner or an end of a line. */
    public record Point(double x, double y) {
    }

    /**
     * A way, drawn from corner to corner.
     *
     * @param way    the way
     * @param points two or more, the arrow at the last
     * @param label  where its words are; one of no size where it has none
     * @param words  what is written there; may be empty
     */
    public record Line(FlowWay way, List<Point> points, Box label, String words) {
        public Line {
            points = List.copyOf(points);
        }
    }

    public PlacedFlow {
        boxes = List.copyOf(boxes);
        lines = List.copyOf(lines);
    }

    /** Where a place is. */
    public Box box(FlowPlace place) {
        return boxes.get(place.id());
    }
}
