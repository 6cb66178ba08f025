package org.benchwright.evidence.internal;

import java.util.Map;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BrentSolver;

import org.benchwright.evidence.StopInterval;

/**
 * The Weibull likelihood of stops between looks, and its slopes; equal observations are reckoned once. With times to the power of the shape
 * stops come at a constant rate r, S(t) = exp(-r (t/T)<sup>&beta;</sup>) with the longest time T; all is reckoned with the logarithms of rate
 * and times, since the powers themselves may be larger or smaller than any number.
 */
public final class IntervalLikelihood {

    private static final int MOST_STEPS = 500;
    private static final double LARGEST_LOG_RATE = 1e12;
    /** Nobody survives e to less than minus this, and e to more than this is no number any more. */
    private static final double LARGEST_EXPONENT = 700;
    /** Less than any other unlikelihood; still a number, so that a root can be looked for beside it. */
    private static final double IMPOSSIBLE = -1e300;
    private static final BrentSolver SOLVER = new BrentSolver(1e-14, 1e-14);

    private final Map<StopInterval, Long> stops;
    private final double unit;

    /**
     * Takes the observations.
     *
     * @param stops how many units are alike; at least one stopped, at least one was still good at some time above zero
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
        return atRate(shape, shape * Math.log(unit / scale));
    }

    /**
     * The log-likelihood where the scale is the likeliest for a shape.
     *
     * @param shape above zero
     * @return the sum over all units
     */
    public double best(double shape) {
        return atRate(shape, logRate(shape));
    }

    private double atRate(double shape, double logRate) {
        return sum((stop, alike) -> alike * one(stop, shape, logRate));
    }

    private double one(StopInterval stop, double shape, double logRate) {
        double from = hazard(stop.after(), shape, logRate);
        if (from > LARGEST_EXPONENT || !stop.stopped()) {
            return -from;
        }
        double logTo = logRate + shape * Math.log(stop.by() / unit);
        if (stop.exact()) {
            return Math.log(shape / stop.by()) + logTo - from;
        }
        double width = Math.exp(logTo) - from;
        // A width that is too small for any number has its logarithm all the same: ln(to - from) = ln to + ln(1 - from/to).
        return -from + (width > Double.MIN_NORMAL ? Math.log(-Math.expm1(-width)) : logTo + Math.log(-Math.expm1(-shape * apart(stop))));
    }

    /** -ln S(t). */
    private double hazard(double time, double shape, double logRate) {
        return time == 0 ? 0 : Math.exp(logRate + shape * Math.log(time / unit));
    }

    /** How far the looks before and after a stop lie apart, as a logarithm; infinite where the first is the beginning. */
    private static double apart(StopInterval stop) {
        return Math.log(stop.by() / stop.after());
    }

    /**
     * The scale that is likeliest for a shape.
     *
     * @param shape above zero
     * @return the scale
     */
    public double scale(double shape) {
        return unit * Math.exp(-logRate(shape) / shape);
    }

    /** The logarithm of the rate that is likeliest for a shape: the log-likelihood has one top over it. */
    private double logRate(double shape) {
        UnivariateFunction slope = logRate -> Math.max(IMPOSSIBLE, sum((stop, alike) -> alike * rateSlope(stop, shape, logRate)));
        double low = -1;
        double high = 1;
        while (slope.value(low) < 0 && low > -LARGEST_LOG_RATE) {
            high = low;
            low *= 2;
        }
        while (slope.value(high) > 0 && high < LARGEST_LOG_RATE) {
            low = high;
            high = high < 0 ? 1 : high * 2;
        }
        return SOLVER.solve(MOST_STEPS, slope, low, high);
    }

    /** The slope of one log-likelihood over the logarithm of the rate. */
    private double rateSlope(StopInterval stop, double shape, double logRate) {
        double from = hazard(stop.after(), shape, logRate);
        if (from > LARGEST_EXPONENT || !stop.stopped()) {
            return -from;
        }
        return stop.exact() ? 1 - from : -from + ratio(hazard(stop.by(), shape, logRate) - from);
    }

    /** w/(e^w - 1), which is 1 for a width of nothing and 0 for a very large one. */
    private static double ratio(double width) {
        return width == 0 ? 1 : width > LARGEST_EXPONENT ? 0 : width / Math.expm1(width);
    }

    /**
     * The slope over the shape, the scale following it. At the top over the rate it is the slope with the rate held.
     *
     * @param shape above zero
     * @return above zero where a larger shape is likelier
     */
    public double slope(double shape) {
        double logRate = logRate(shape);
        return sum((stop, alike) -> alike * shapeSlope(stop, shape, logRate));
    }

    private double shapeSlope(StopInterval stop, double shape, double logRate) {
        double from = hazard(stop.after(), shape, logRate);
        double fromSlope = from == 0 ? 0 : from * Math.log(stop.after() / unit);
        if (from > LARGEST_EXPONENT || !stop.stopped()) {
            return -fromSlope;
        }
        double logBy = Math.log(stop.by() / unit);
        if (stop.exact()) {
            return 1 / shape + logBy - fromSlope;
        }
        // d/dshape of -from + ln(1 - exp(from - to)); the slope of the width is taken relative to it
        double relative = logBy + (stop.after() == 0 ? 0 : apart(stop) / Math.expm1(shape * apart(stop)));
        return -fromSlope + relative * ratio(hazard(stop.by(), shape, logRate) - from);
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
