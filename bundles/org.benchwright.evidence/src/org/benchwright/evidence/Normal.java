package org.benchwright.evidence;

import org.hipparchus.distribution.continuous.NormalDistribution;

/** The standard normal distribution, taken on the side where small probabilities keep their digits. */
final class Normal {

    private static final NormalDistribution STANDARD = new NormalDistribution();

    private Normal() {
    }

    static double density(double z) {
        return STANDARD.density(z);
    }

    static double below(double z) {
        if (Double.isInfinite(z)) {
            return z > 0 ? 1 : 0;
        }
        return STANDARD.cumulativeProbability(z);
    }

    static double above(double z) {
        return below(-z);
    }

    static double between(double from, double to) {
        return from > 0 ? above(from) - above(to) : below(to) - below(from);
    }

    static double quantile(double probability) {
        return STANDARD.inverseCumulativeProbability(probability);
    }
}
