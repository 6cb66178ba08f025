package org.benchwright.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

import org.benchwright.core.Plot;
import org.benchwright.report.internal.Drawing;
import org.knowm.xchart.ChartEncoder;

/** Draws plots; needs no display. Takes a moment: not for a thread that answers people. */
public final class Charts {

    private static final int SMALLEST = 200;
    private static final int LARGEST = 8000;

    private Charts() {
    }

    /**
     * Draws a picture of points.
     *
     * @param plot   with at least one series that has points
     * @param look   for which ground
     * @param width  200 to 8000 points
     * @param height 200 to 8000 points
     * @return the bytes of a PNG file
     * @throws IllegalArgumentException when there is nothing to draw, or a size is out of range
     */
    public static byte[] png(Plot plot, Look look, int width, int height) {
        check(plot, width, height);
        try {
            return ChartEncoder.getBytes(Drawing.of(plot, look, width, height), "png");
        } catch (IOException e) {
            throw new UncheckedIOException("writing to memory can't fail", e);
        }
    }

    /**
     * Draws a picture of lines that can be printed at any size.
     *
     * @param plot   with at least one series that has points
     * @param look   for which ground
     * @param width  200 to 8000
     * @param height 200 to 8000
     * @return the text of an SVG file; it holds no script and refers to nothing outside
     * @throws IllegalArgumentException when there is nothing to draw, or a size is out of range
     */
    public static String svg(Plot plot, Look look, int width, int height) {
        check(plot, width, height);
        try (ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            ChartEncoder.saveChart(Drawing.of(plot, look, width, height), bytes, "svg");
            return bytes.toString(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("writing to memory can't fail", e);
        }
    }

    private static void check(Plot plot, int width, int height) {
        if (plot.series().stream().allMatch(series -> series.x().isEmpty())) {
            throw new IllegalArgumentException("There is nothing to draw: " + plot.title());
        }
        if (Math.min(width, height) < SMALLEST || Math.max(width, height) > LARGEST) {
            throw new IllegalArgumentException("A picture is " + SMALLEST + " to " + LARGEST + " wide and high: " + width + ", " + height);
        }
    }
}
