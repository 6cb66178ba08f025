package org.benchwright.report.internal;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;

import org.knowm.xchart.style.markers.Marker;

/** A short level line: the end of an interval. */
final class Dash extends Marker {

    private static final BasicStroke STROKE = new BasicStroke(2.5f);

    @Override
    public void paint(Graphics2D graphics, double x, double y, int size) {
        graphics.setStroke(STROKE);
        graphics.draw(new Line2D.Double(x - size, y, x + size, y));
    }
}
