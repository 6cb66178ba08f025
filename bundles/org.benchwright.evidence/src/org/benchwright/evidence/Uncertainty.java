package org.benchwright.evidence;

import java.util.List;

import org.benchwright.evidence.internal.Require;

/**
 * A standard uncertainty with its degrees of freedom, by the rules of the Guide to the expression of uncertainty in
 * measurement (JCGM 100:2008).
 *
 * @param standard u, the standard uncertainty, not negative
 * @param degreesOfFreedom &nu;, above zero; infinite when u is known beyond doubt
 */
public record Uncertainty(double standard, double degreesOfFreedom) {

    /**
     * Checks both.
     *
     * @throws IllegalArgumentException when a number is out of range
     */
    public Uncertainty {
        Require.notNegative("standard uncertainty", standard);
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException("The degrees of freedom must be above zero: " + degreesOfFreedom);
        }
    }

    /**
     * A standard uncertainty known beyond doubt.
     *
     * @param standard u
     * @return the uncertainty with infinite degrees of freedom
     */
    public static Uncertainty known(double standard) {
        return new Uncertainty(standard, Double.POSITIVE_INFINITY);
    }

    /**
     * What a certificate states: u = U/k (4.3.3).
     *
     * @param expanded U, not negative
     * @param coverage k, above zero
     * @return the uncertainty
     */
    public static Uncertainty ofCertificate(double expanded, double coverage) {
        Require.notNegative("expanded uncertainty", expanded);
        Require.positive("coverage factor", coverage);
        return known(expanded / coverage);
    }

    /**
     * Any value within &plusmn;a alike: u = a/&radic;3 (4.3.7).
     *
     * @param halfWidth a, not negative
     * @return the uncertainty
     */
    public static Uncertainty rectangular(double halfWidth) {
        return known(checked(halfWidth) / Math.sqrt(3));
    }

    /**
     * Values near the middle likelier, none beyond &plusmn;a: u = a/&radic;6 (4.3.9).
     *
     * @param halfWidth a, not negative
     * @return the uncertainty
     */
    public static Uncertainty triangular(double halfWidth) {
        return known(checked(halfWidth) / Math.sqrt(6));
    }

    /**
     * Swinging between &plusmn;a like a controlled temperature: u = a/&radic;2 (H.1.3.4).
     *
     * @param halfWidth a, not negative
     * @return the uncertainty
     */
    public static Uncertainty uShaped(double halfWidth) {
        return known(checked(halfWidth) / Math.sqrt(2));
    }

    /**
     * Combines independent contributions, already multiplied by their sensitivities: u = &radic;&Sigma;u<sub>i</sub>&sup2;
     * (5.1.2) with effective degrees of freedom u&#8308; / &Sigma;(u<sub>i</sub>&#8308;/&nu;<sub>i</sub>)
     * (Welch-Satterthwaite, G.4.1).
     *
     * @param contributions at least one, all in one unit
     * @return the combined uncertainty; infinite degrees of freedom when all contributions have them or are zero
     * @throws IllegalArgumentException when there is no contribution
     */
    public static Uncertainty combined(List<Uncertainty> contributions) {
        if (contributions.isEmpty()) {
            throw new IllegalArgumentException("There is no contribution to combine.");
        }
        double largest = contributions.stream().mapToDouble(Uncertainty::standard).max().orElseThrow();
        if (largest == 0) {
            return known(0);
        }
        // In parts of the largest, so that fourth powers neither overflow nor vanish.
        double squares = contributions.stream().mapToDouble(each -> Math.pow(each.standard / largest, 2)).sum();
        double fourths = contributions.stream()
                .mapToDouble(each -> Math.pow(each.standard / largest, 4) / each.degreesOfFreedom).sum();
        return new Uncertainty(largest * Math.sqrt(squares),
                fourths == 0 ? Double.POSITIVE_INFINITY : squares * squares / fourths);
    }

    /**
     * The coverage factor for a level of confidence: the quantile of Student's distribution, its degrees of freedom cut
     * down to a whole number (G.4.1, note 1), or the normal one when they are infinite.
     *
     * @param confidence two-sided, between 0 and 1
     * @return k
     * @throws IllegalArgumentException when the confidence is out of range
     */
    public double coverageFactor(double confidence) {
        Require.properFraction("confidence", confidence);
        double whole = Math.max(Math.min(1, degreesOfFreedom), Math.floor(degreesOfFreedom));
        return Student.exceededBy((1 - confidence) / 2, whole);
    }

    /**
     * The expanded uncertainty U = k u.
     *
     * @param confidence two-sided, between 0 and 1
     * @return U
     * @throws IllegalArgumentException when the confidence is out of range
     */
    public double expanded(double confidence) {
        return coverageFactor(confidence) * standard;
    }

    private static double checked(double halfWidth) {
        Require.notNegative("half-width", halfWidth);
        return halfWidth;
    }
}
