package org.benchwright.evidence;

import org.hipparchus.distribution.continuous.TDistribution;

import org.benchwright.evidence.internal.Normal;

/**
 * Student's distribution, with any number of degrees of freedom. With very many of them the library's incomplete beta function loses its
 * digits, and beyond 10<sup>15</sup> all of them; there the distribution is taken as the normal one, corrected for what is left between
 * them.
 */
final class Student {

    /** From here on what the corrections leave out is smaller than what the library loses. */
    private static final double NEARLY_NORMAL = 1e6;

    private Student() {
    }

    /**
     * The probability beyond a value; Abramowitz and Stegun, 26.7.8, where nearly normal.
     *
     * @param degrees &nu;, above zero; may be infinite
     */
    static double above(double value, double degrees) {
        if (degrees < NEARLY_NORMAL) {
            // With fewer degrees than any number has there is nothing left but the two far ends.
            return degrees < Double.MIN_NORMAL ? 0.5 : new TDistribution(degrees).cumulativeProbability(-value);
        }
        return Normal.above(value * (1 - 1 / (4 * degrees)) / Math.sqrt(1 + value * value / (2 * degrees)));
    }

    /**
     * The value beyond which a part lies; Abramowitz and Stegun, 26.7.5 with its first term, where nearly normal.
     *
     * @param probability that part, above 0, at most 0.5: the tail itself keeps the digits that one minus it would not
     * @param degrees     &nu;, above zero; may be infinite
     */
    static double exceededBy(double probability, double degrees) {
        if (degrees < NEARLY_NORMAL) {
            return -new TDistribution(degrees).inverseCumulativeProbability(probability);
        }
        double z = -Normal.quantile(probability);
        return z + (z * z * z + z) / (4 * degrees);
    }
}
