package org.benchwright.evidence;

import java.util.List;
import java.util.Map;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BrentSolver;

import org.benchwright.evidence.internal.IntervalLikelihood;
import org.benchwright.evidence.internal.Normal;
import org.benchwright.evidence.internal.Require;

/**
 * The Weibull distribution that makes stops likeliest that are known only to lie between two looks (or to the instant, or
 * to be still to come): S(t) = exp(-(t/&eta;)<sup>&beta;</sup>). Each unit contributes S(after) - S(by), S(after) when it
 * never stopped, or the density when the instant is known (Meeker and Escobar, Statistical Methods for Reliability Data,
 * 7.2 and 8.2). Limits are by the likelihood ratio: all values for which 2(L<sub>max</sub> - L) is at most the &chi;&sup2;
 * quantile with one degree of freedom; approximate, the better the more stops there are.
 *
 * <p>With the shape held at 1 it is the exponential distribution: a constant rate of stops.
 *
 * @param shape &beta;, above zero
 * @param scale &eta;, in the unit of the times
 * @param logLikelihood the natural logarithm of the likelihood
 */
public record IntervalFit(double shape, double scale, double logLikelihood) {

    private static final double LEAST_LOG_SHAPE = Math.log(0.02);
    private static final double MOST_LOG_SHAPE = Math.log(50);
    /** A limit that is more than e to this times as large as the estimate, or as small, is none. */
    private static final double FARTHEST = 20;
    /** Shapes whose log-likelihoods differ by less are equally likely, but for rounding. */
    private static final double ALIKE = 1e-6;
    private static final int MOST_STEPS = 500;
    /** As good as impossible; still a number, so that a root can be looked for beside it. */
    private static final double MUCH_TOO_LOW = -1e300;
    private static final BrentSolver SOLVER = new BrentSolver(1e-12, 1e-12);

    /**
     * Fits a Weibull distribution.
     *
     * @param stops how many units are alike; at least two units stopped, not all of them told by one and the same interval
     * @return the fit
     * @throws IllegalArgumentException when the stops determine no Weibull distribution with a shape of 0.02 to 50
     */
    public static IntervalFit weibull(Map<StopInterval, Long> stops) {
        IntervalLikelihood likelihood = likelihood(stops);
        UnivariateFunction slope = logShape -> likelihood.slope(Math.exp(logShape));
        if (!(slope.value(LEAST_LOG_SHAPE) > 0 && slope.value(MOST_LOG_SHAPE) < 0)) {
            throw undetermined();
        }
        IntervalFit fit = at(likelihood, Math.exp(SOLVER.solve(MOST_STEPS, slope, LEAST_LOG_SHAPE, MOST_LOG_SHAPE)));
        if (likelihood.best(Math.exp(MOST_LOG_SHAPE)) > fit.logLikelihood - ALIKE) {
            // Every large shape explains these stops equally well, and where the slope turned was rounding.
            throw undetermined();
        }
        return fit;
    }

    private static IllegalArgumentException undetermined() {
        return new IllegalArgumentException("These stops determine no Weibull distribution: too few differ.");
    }

    /**
     * Fits an exponential distribution.
     *
     * @param stops how many units are alike; at least one unit stopped, at least one not at once
     * @return the fit, its shape 1, its scale the mean time
     * @throws IllegalArgumentException when nothing stopped: {@link Soak#lowerBound} answers then; or everything before
     *         the first look, which fits no mean time however short
     */
    public static IntervalFit exponential(Map<StopInterval, Long> stops) {
        return at(likelihood(stops), 1);
    }

    /** As {@link #weibull(Map)}, one for each unit. */
    public static IntervalFit weibull(List<StopInterval> stops) {
        return weibull(StopInterval.counted(stops));
    }

    /** As {@link #exponential(Map)}, one for each unit. */
    public static IntervalFit exponential(List<StopInterval> stops) {
        return exponential(StopInterval.counted(stops));
    }

    /** As {@link #meanTimeLimits(Map, double)}, one for each unit. */
    public static Range meanTimeLimits(List<StopInterval> stops, double confidence) {
        return meanTimeLimits(StopInterval.counted(stops), confidence);
    }

    /** As {@link #shapeLimits(Map, double)}, one for each unit. */
    public static Range shapeLimits(List<StopInterval> stops, double confidence) {
        return shapeLimits(StopInterval.counted(stops), confidence);
    }

    private static IntervalFit at(IntervalLikelihood likelihood, double shape) {
        double scale = likelihood.scale(shape);
        return new IntervalFit(shape, scale, likelihood.value(shape, scale));
    }

    private static IntervalLikelihood likelihood(Map<StopInterval, Long> stops) {
        if (stops.keySet().stream().noneMatch(StopInterval::stopped)) {
            throw new IllegalArgumentException("Without a stop there is no estimate, only a bound.");
        }
        if (stops.keySet().stream().allMatch(stop -> stop.after() == 0)) {
            throw new IllegalArgumentException("All stopped before the first look: no time is too short.");
        }
        return new IntervalLikelihood(stops);
    }

    /**
     * The part that survives a time.
     *
     * @param time not negative
     * @return S(t)
     * @throws IllegalArgumentException when the time is negative
     */
    public double survival(double time) {
        Require.notNegative("time", time);
        return Math.exp(-Math.pow(time / scale, shape));
    }

    /**
     * Limits for the mean time of the exponential distribution.
     *
     * @param stops as for {@link #exponential(Map)}
     * @param confidence two-sided, between 0 and 1
     * @return lower and upper limit, in the unit of the times
     * @throws IllegalArgumentException as {@link #exponential(Map)} does, or when the confidence is out of range
     */
    public static Range meanTimeLimits(Map<StopInterval, Long> stops, double confidence) {
        IntervalLikelihood likelihood = likelihood(stops);
        double best = likelihood.scale(1);
        double lowest = likelihood.value(1, best) - drop(confidence);
        return around(Math.log(best), logScale -> likelihood.value(1, Math.exp(logScale)) - lowest);
    }

    /**
     * Limits for the shape of the Weibull distribution, the scale following it.
     *
     * @param stops as for {@link #weibull(Map)}
     * @param confidence two-sided, between 0 and 1
     * @return lower and upper limit; a limit of 1 or more on both sides tells of wear, below 1 of early failures
     * @throws IllegalArgumentException as {@link #weibull(Map)} does, or when the confidence is out of range
     */
    public static Range shapeLimits(Map<StopInterval, Long> stops, double confidence) {
        IntervalFit fit = weibull(stops);
        IntervalLikelihood likelihood = likelihood(stops);
        double lowest = fit.logLikelihood - drop(confidence);
        return around(Math.log(fit.shape), logShape -> likelihood.best(Math.exp(logShape)) - lowest);
    }

    private static double drop(double confidence) {
        Require.properFraction("confidence", confidence);
        double z = Normal.reachOf(confidence);
        return z * z / 2;
    }

    /** Steps away from the best value until the likelihood has dropped enough, then closes in; all in logarithms. */
    private static Range around(double best, UnivariateFunction aboveLowest) {
        UnivariateFunction bounded = place -> Math.max(MUCH_TOO_LOW, aboveLowest.value(place));
        return new Range(Math.exp(edge(best, bounded, -1)), Math.exp(edge(best, bounded, 1)));
    }

    private static double edge(double best, UnivariateFunction aboveLowest, int direction) {
        double reach = 0.1;
        while (reach < FARTHEST && aboveLowest.value(best + direction * reach) > 0) {
            reach *= 1.5;
        }
        if (reach >= FARTHEST) {
            return direction < 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
        }
        return SOLVER.solve(MOST_STEPS, aboveLowest, Math.min(best, best + direction * reach),
                Math.max(best, best + direction * reach));
    }

    /**
     * Two ends of what the likelihood does not rule out.
     *
     * @param lower 0 when nothing is too small
     * @param upper infinite when nothing is too large
     */
    public record Range(double lower, double upper) {
    }
}
