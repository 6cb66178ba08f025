package org.benchwright.evidence;

import java.util.List;
import java.util.Map;

import org.hipparchus.special.Gamma;

import org.benchwright.evidence.internal.Require;

/**
 * Whether a model of the stops agrees with what was seen.
 *
 * @param statistic &chi;&sup2;, not negative
 * @param degreesOfFreedom at least 1
 */
public record GoodnessOfFit(double statistic, int degreesOfFreedom) {

    /** Fewer expected stops in a class make the &chi;&sup2; distribution a poor guide (Cochran 1954). */
    private static final double LEAST_EXPECTED = 5;

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException when one is out of range
     */
    public GoodnessOfFit {
        Require.notNegative("statistic", statistic);
        if (degreesOfFreedom < 1) {
            throw new IllegalArgumentException("There is nothing left to judge the fit by.");
        }
    }

    /**
     * Whether stops come at a constant rate, against the Weibull alternative: 2(L<sub>Weibull</sub> -
     * L<sub>exponential</sub>), &chi;&sup2; with one degree of freedom (likelihood ratio; Lawless, Statistical Models and
     * Methods for Lifetime Data, 4.3).
     *
     * @param stops as for {@link IntervalFit#weibull(Map)}
     * @return the test
     * @throws IllegalArgumentException as {@link IntervalFit#weibull(Map)} does
     */
    public static GoodnessOfFit constantRate(List<StopInterval> stops) {
        return constantRate(StopInterval.counted(stops));
    }

    /** As {@link #constantRate(List)}, with units counted already. */
    public static GoodnessOfFit constantRate(Map<StopInterval, Long> stops) {
        double gain = IntervalFit.weibull(stops).logLikelihood() - IntervalFit.exponential(stops).logLikelihood();
        return new GoodnessOfFit(Math.max(0, 2 * gain), 1);
    }

    /**
     * Counts against what a model expects, &Sigma;(O - E)&sup2;/E (Pearson 1900).
     *
     * @param observed counts of two classes or more
     * @param expected what the model expects in the same classes, each at least 5
     * @param estimated how many parameters of the model were estimated from these counts
     * @return the test, with classes - 1 - estimated degrees of freedom
     * @throws IllegalArgumentException when the classes don't match, an expectation is below 5 or nothing is left over
     */
    public static GoodnessOfFit ofCounts(List<Long> observed, List<Double> expected, int estimated) {
        Require.count("number of estimated parameters", estimated);
        if (observed.size() != expected.size() || expected.stream().anyMatch(each -> !(each >= LEAST_EXPECTED))) {
            throw new IllegalArgumentException("Each class needs a count and an expectation of at least 5.");
        }
        double statistic = 0;
        for (int i = 0; i < observed.size(); i++) {
            double off = observed.get(i) - expected.get(i);
            statistic += off * off / expected.get(i);
        }
        return new GoodnessOfFit(statistic, observed.size() - 1 - estimated);
    }

    /**
     * The probability of so poor a fit, or a poorer one, if the model holds.
     *
     * @return 0 to 1; small means that the model should not be used
     */
    public double probability() {
        // The upper tail by itself: keeps its digits where one minus a distribution function would not.
        return Gamma.regularizedGammaQ(degreesOfFreedom / 2.0, statistic / 2);
    }
}
