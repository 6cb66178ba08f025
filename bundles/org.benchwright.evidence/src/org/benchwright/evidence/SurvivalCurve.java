package org.benchwright.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

import org.benchwright.evidence.internal.Normal;
import org.benchwright.evidence.internal.Require;

/**
 * The part of units that survive a given time, estimated without assuming a shape (Kaplan and Meier 1958): at each time
 * with d failures among n units still at risk it falls by the factor 1 - d/n. Units that were lost sight of at that very
 * time count as at risk then.
 *
 * @param steps where it falls, by time; empty when nothing failed
 */
public record SurvivalCurve(List<Step> steps) {

    /**
     * One fall of the curve.
     *
     * @param time when
     * @param atRisk n, units under observation just before
     * @param failures d, units that failed then
     * @param survival S, the part that survives this time
     * @param standardError of S by Greenwood's formula, S&radic;&Sigma;(d/(n(n - d))); nothing when S is 0
     */
    public record Step(double time, int atRisk, int failures, double survival, OptionalDouble standardError) {

        /**
         * Limits for S on the scale ln(-ln S), which never leave 0 to 1: S<sup>exp(&plusmn;z e/(S |ln S|))</sup>
         * (Kalbfleisch and Prentice, The Statistical Analysis of Failure Time Data, 1.4).
         *
         * @param confidence two-sided, between 0 and 1
         * @return the limits; 0 to 1 when S is 0, as nothing is known about the error then
         * @throws IllegalArgumentException when the confidence is out of range
         */
        public Proportion.Interval limits(double confidence) {
            Require.properFraction("confidence", confidence);
            if (standardError.isEmpty()) {
                return new Proportion.Interval(0, 1);
            }
            double reach = Normal.reachOf(confidence) * standardError.getAsDouble()
                    / (survival * Math.abs(Math.log(survival)));
            return new Proportion.Interval(Math.pow(survival, Math.exp(reach)), Math.pow(survival, Math.exp(-reach)));
        }
    }

    /** A product of fractions that is one half may come out a hair above it. */
    private static final double ROUNDING = 1e-12;

    /** Freezes the steps. */
    public SurvivalCurve {
        steps = List.copyOf(steps);
    }

    /**
     * Estimates the curve.
     *
     * @param lifetimes at least one
     * @return the curve
     * @throws IllegalArgumentException when there is no lifetime
     */
    public static SurvivalCurve of(List<Lifetime> lifetimes) {
        return of(RiskTable.counted(lifetimes));
    }

    /**
     * Estimates the curve from units that are counted already.
     *
     * @param lifetimes how many units are alike, above zero each; at least one
     * @return the curve
     * @throws IllegalArgumentException when there is no lifetime
     */
    public static SurvivalCurve of(Map<Lifetime, Long> lifetimes) {
        if (lifetimes.isEmpty()) {
            throw new IllegalArgumentException("There is no lifetime to estimate from.");
        }
        List<Step> steps = new ArrayList<>();
        double survival = 1;
        double greenwood = 0;
        for (RiskTable.Row row : RiskTable.of(lifetimes).rows()) {
            int atRisk = row.atRisk();
            survival = survival * (atRisk - row.failed()) / atRisk;
            greenwood += (double) row.failed() / ((double) atRisk * (atRisk - row.failed()));
            OptionalDouble error = survival == 0 ? OptionalDouble.empty()
                    : OptionalDouble.of(survival * Math.sqrt(greenwood));
            steps.add(new Step(row.time(), atRisk, row.failed(), survival, error));
        }
        return new SurvivalCurve(steps);
    }

    /**
     * The part that survives a time.
     *
     * @param time not negative
     * @return S; 1 before the first failure
     * @throws IllegalArgumentException when the time is negative
     */
    public double at(double time) {
        Require.notNegative("time", time);
        return steps.stream().filter(step -> step.time() <= time).reduce((first, second) -> second)
                .map(Step::survival).orElse(1.0);
    }

    /**
     * The time that half of the units survive.
     *
     * @return the first time at which S is one half or less; nothing when the curve does not fall so far
     */
    public OptionalDouble median() {
        return steps.stream().filter(step -> step.survival() <= 0.5 + ROUNDING).mapToDouble(Step::time).findFirst();
    }
}
