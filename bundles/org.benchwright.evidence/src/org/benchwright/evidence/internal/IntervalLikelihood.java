package org.benchwright.evidence.internal;

import java.util.Map;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BrentSolver;

import org.benchwright.evidence.StopInterval;

/** The Weibull likelihood of stops between looks, and its slopes; equal observations are reckoned once. */
public final class IntervalLikelihood {

    private static final int MOST_STEPS = 500;
    private static final BrentSolver SOLVER = new BrentSolver(1e-14, 1e-14);

    private final Map<StopInterval, Long> stops;
    private final double unit;

    /**
     * Takes the observations.
     *
     * @param stops how many units are alike; at least one stopped
     */
    public IntervalLikelihood(Map<StopInterval, Long> stops) {
        this.stops = Map.copyOf(stops);
        unit = stops.keySet().stream().mapToDouble(stop -> stop.stopped() ? stop.by() : stop.after()).max().orElseThrow();
    }

    /**
     * The log-likelihood.
     *
     * @param shape above zero
     * @param scale above zero
     * @return the sum over all units
     */
    public double value(double shape, double scale) {
        return sum((stop, alike) -> alike * one(stop, shape, scale));
    }

    private static double one(StopInterval stop, double shape, double scale) {
        double from = Math.pow(stop.after() / scale, shape);
        if (stop.exact()) {
            return Math.log(shape / scale) + (shape - 1) * Math.log(stop.by() / scale) - from;
        }
        double to = stop.stopped() ? Math.pow(stop.by() / scale, shape) : Double.POSITIVE_INFINITY;
        return -from + Math.log(-Math.expm1(from - to));
    }

    /**
     * The scale that is likeliest for a shape: with times to the power of the shape, stops come at a constant rate, whose
     * log-likelihood has one top.
     *
     * @param shape above zero
     * @return the scale
     */
    public double scale(double shape) {
        UnivariateFunction slope = logRate -> sum((stop, alike) -> alike * rateSlope(stop, shape, Math.exp(logRate)));
        double low = -1;
        double high = 1;
        while (slope.value(low) < 0 && low > -700) {
            low *= 2;
        }
        while (slope.value(high) > 0 && high < 700) {
            high *= 2;
        }
        double logRate = SOLVER.solve(MOST_STEPS, slope, low, high);
        return unit * Math.exp(-logRate / shape);
    }

    /** The slope of one log-likelihood over the logarithm of the rate, in times relative to the longest. */
    private double rateSlope(StopInterval stop, double shape, double rate) {
        double from = rate * Math.pow(stop.after() / unit, shape);
        if (stop.exact()) {
            return 1 - from;
        }
        if (!stop.stopped()) {
            return -from;
        }
        double width = rate * Math.pow(stop.by() / unit, shape) - from;
        return -from + ratio(width);
    }

    /** w/(e^w - 1), which is 1 for a width of nothing. */
    private static double ratio(double width) {
        return width == 0 ? 1 : width / Math.expm1(width);
    }

    /**
     * The slope over the shape, the scale following it.
     *
     * @param shape above zero
     * @return above zero where a larger shape is likelier
     */
    public double slope(double shape) {
        double scale = scale(shape);
        return sum((stop, alike) -> alike * shapeSlope(stop, shape, scale));
    }

    private static double shapeSlope(StopInterval stop, double shape, double scale) {
        double from = Math.pow(stop.after() / scale, shape);
        double fromSlope = from == 0 ? 0 : from * Math.log(stop.after() / scale);
        if (stop.exact()) {
            return 1 / shape + Math.log(stop.by() / scale) - fromSlope;
        }
        if (!stop.stopped()) {
            return -fromSlope;
        }
        double to = Math.pow(stop.by() / scale, shape);
        double toSlope = to * Math.log(stop.by() / scale);
        // d/dshape of -from + ln(1 - exp(from - to))
        return -fromSlope + (toSlope - fromSlope) / Math.expm1(to - from);
    }

    private interface Part {
        double of(StopInterval stop, long alike);
    }

    private double sum(Part part) {
        double sum = 0;
        for (Map.Entry<StopInterval, Long> each : stops.entrySet()) {
            sum += part.of(each.getKey(), each.getValue());
        }
        return sum;
    }
}
