package org.benchwright.evidence;

import java.util.List;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BrentSolver;

import org.benchwright.evidence.internal.Require;

/**
 * The Weibull distribution that makes the lifetimes seen most likely, S(t) = exp(-(t/&eta;)<sup>&beta;</sup>), one scale
 * for each group and one shape for all of them. Below 1 the shape tells of early failures, above 1 of wear.
 *
 * <p>The shape solves &Sigma;<sub>g</sub> r<sub>g</sub> &Sigma;t<sup>&beta;</sup> ln t / &Sigma;t<sup>&beta;</sup> -
 * r/&beta; - &Sigma;<sub>failed</sub> ln t = 0, the scales follow as (&Sigma;t<sup>&beta;</sup>/r<sub>g</sub>)<sup>1/&beta;</sup>
 * (Lawless, Statistical Models and Methods for Lifetime Data, 5.2). Units still alive count with the time they have.
 *
 * @param shape &beta;, above zero
 * @param scales &eta; of each group, in the unit of the lifetimes
 * @param logLikelihood the natural logarithm of the likelihood
 */
public record WeibullFit(double shape, List<Double> scales, double logLikelihood) {

    private static final double LEAST_SHAPE = 1e-3;
    private static final double MOST_SHAPE = 1e3;
    private static final int MOST_STEPS = 500;

    /** Freezes the scales. */
    public WeibullFit {
        scales = List.copyOf(scales);
    }

    /**
     * Fits one group.
     *
     * @param lifetimes with at least two different times, at least one of them a failure
     * @return the fit
     * @throws IllegalArgumentException when the lifetimes determine no Weibull distribution
     */
    public static WeibullFit of(List<Lifetime> lifetimes) {
        return ofGroups(List.of(lifetimes));
    }

    /**
     * Fits several groups with one shape.
     *
     * @param groups each with at least one failure
     * @return the fit, its scales in the order of the groups
     * @throws IllegalArgumentException when the lifetimes determine no Weibull distribution
     */
    public static WeibullFit ofGroups(List<List<Lifetime>> groups) {
        if (groups.isEmpty() || groups.stream().anyMatch(group -> failures(group) == 0)) {
            throw new IllegalArgumentException("A Weibull fit needs a failure in each group.");
        }
        double unit = groups.stream().flatMap(List::stream).mapToDouble(Lifetime::time).max().orElseThrow();
        UnivariateFunction score = shape -> score(groups, unit, shape);
        if (!(score.value(LEAST_SHAPE) < 0 && score.value(MOST_SHAPE) > 0)) {
            throw new IllegalArgumentException("These lifetimes determine no Weibull distribution: too few differ.");
        }
        double shape = new BrentSolver(1e-14, 1e-14, 1e-15).solve(MOST_STEPS, score, LEAST_SHAPE, MOST_SHAPE);
        List<Double> scales = groups.stream()
                .map(group -> unit * Math.pow(powerSum(group, unit, shape) / failures(group), 1 / shape)).toList();
        return new WeibullFit(shape, scales, logLikelihood(groups, shape, scales));
    }

    /**
     * The part of a group that survives a time.
     *
     * @param group the place of the group, from 0
     * @param time not negative
     * @return S(t)
     * @throws IllegalArgumentException when the time is negative
     */
    public double survival(int group, double time) {
        Require.notNegative("time", time);
        return Math.exp(-Math.pow(time / scales.get(group), shape));
    }

    private static long failures(List<Lifetime> group) {
        return group.stream().filter(Lifetime::failed).count();
    }

    /** Times in parts of the longest one, so that no power overflows. */
    private static double powerSum(List<Lifetime> group, double unit, double shape) {
        return group.stream().mapToDouble(each -> Math.pow(each.time() / unit, shape)).sum();
    }

    private static double score(List<List<Lifetime>> groups, double unit, double shape) {
        double score = 0;
        for (List<Lifetime> group : groups) {
            // relative to the group's own longest time, so that the sum of powers does not vanish
            double longest = group.stream().mapToDouble(Lifetime::time).max().orElseThrow();
            double weighted = group.stream().mapToDouble(
                    each -> Math.pow(each.time() / longest, shape) * Math.log(each.time() / unit)).sum();
            score += failures(group) * (weighted / powerSum(group, longest, shape) - 1 / shape)
                    - group.stream().filter(Lifetime::failed).mapToDouble(each -> Math.log(each.time() / unit)).sum();
        }
        return score;
    }

    private static double logLikelihood(List<List<Lifetime>> groups, double shape, List<Double> scales) {
        double sum = 0;
        for (int i = 0; i < groups.size(); i++) {
            for (Lifetime each : groups.get(i)) {
                double scaled = each.time() / scales.get(i);
                sum -= Math.pow(scaled, shape);
                sum += each.failed() ? Math.log(shape / scales.get(i)) + (shape - 1) * Math.log(scaled) : 0;
            }
        }
        return sum;
    }
}
