package org.benchwright.evidence;

import org.hipparchus.distribution.continuous.BetaDistribution;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.hipparchus.distribution.discrete.HypergeometricDistribution;

import org.benchwright.evidence.internal.Require;

/**
 * Single sampling by attributes: n units are looked at, the lot is accepted with at most c nonconforming among them.
 *
 * @param sampleSize n, at least 1
 * @param acceptance c, not negative, less than n
 */
public record SamplingPlan(int sampleSize, int acceptance) {

    private static final double SOLVER_ACCURACY = 1e-14;

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException when one is out of range
     */
    public SamplingPlan {
        if (sampleSize < 1 || acceptance < 0 || acceptance >= sampleSize) {
            throw new IllegalArgumentException("No sampling plan: " + acceptance + " of " + sampleSize);
        }
    }

    /**
     * The probability of accepting out of an endless stream: P(at most c of n) by the binomial distribution.
     *
     * @param nonconforming the part of units that does not conform, 0 to 1
     * @return Pa
     * @throws IllegalArgumentException when the part is out of range
     */
    public double probabilityOfAcceptance(double nonconforming) {
        Require.part("nonconforming part", nonconforming);
        return new BinomialDistribution(sampleSize, nonconforming).cumulativeProbability(acceptance);
    }

    /**
     * The probability of accepting one lot: P(at most c of n) by the hypergeometric distribution.
     *
     * @param lot N, at least n
     * @param nonconforming how many units of the lot do not conform, 0 to N
     * @return Pa
     * @throws IllegalArgumentException when a number is out of range
     */
    public double probabilityOfAcceptance(int lot, int nonconforming) {
        requireLot(lot);
        if (nonconforming < 0 || nonconforming > lot) {
            throw new IllegalArgumentException("A lot of " + lot + " can't hold " + nonconforming + " such units.");
        }
        return new HypergeometricDistribution(lot, nonconforming, sampleSize).cumulativeProbability(acceptance);
    }

    /**
     * The quality that is accepted with a given probability: the Beta quantile (1 - Pa; c + 1, n - c).
     *
     * @param probability Pa, between 0 and 1
     * @return the part of units that does not conform
     * @throws IllegalArgumentException when the probability is out of range
     */
    public double qualityAcceptedWith(double probability) {
        Require.properFraction("probability of acceptance", probability);
        return new BetaDistribution(acceptance + 1.0, (double) sampleSize - acceptance, SOLVER_ACCURACY)
                .inverseCumulativeProbability(1 - probability);
    }

    /**
     * The average quality that goes out when refused lots are sorted: Pa p (N - n)/N.
     *
     * @param lot N, at least n
     * @param nonconforming p, 0 to 1
     * @return the part of units that does not conform afterwards
     * @throws IllegalArgumentException when a number is out of range
     */
    public double averageOutgoingQuality(int lot, double nonconforming) {
        requireLot(lot);
        return probabilityOfAcceptance(nonconforming) * nonconforming * (lot - sampleSize) / lot;
    }

    /**
     * The average number of units looked at for each lot when refused lots are sorted: n + (1 - Pa)(N - n).
     *
     * @param lot N, at least n
     * @param nonconforming p, 0 to 1
     * @return the average
     * @throws IllegalArgumentException when a number is out of range
     */
    public double averageTotalInspection(int lot, double nonconforming) {
        requireLot(lot);
        return sampleSize + (1 - probabilityOfAcceptance(nonconforming)) * (lot - sampleSize);
    }

    private void requireLot(int lot) {
        if (lot < sampleSize) {
            throw new IllegalArgumentException("A lot of " + lot + " is smaller than the sample of " + sampleSize + ".");
        }
    }
}
