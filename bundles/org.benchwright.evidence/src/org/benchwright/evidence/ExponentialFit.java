package org.benchwright.evidence;

import java.util.List;

/**
 * The exponential distribution that makes the lifetimes seen most likely: mean time = total time / failures.
 *
 * @param meanTime m, in the unit of the lifetimes
 * @param failures r, at least 1
 * @param totalTime T of all units together, failed or not
 */
public record ExponentialFit(double meanTime, int failures, double totalTime) {

    /**
     * Fits.
     *
     * @param lifetimes with at least one failure
     * @return the fit
     * @throws IllegalArgumentException when nothing failed: {@link Soak#lowerBound} answers then
     */
    public static ExponentialFit of(List<Lifetime> lifetimes) {
        int failures = (int) lifetimes.stream().filter(Lifetime::failed).count();
        if (failures == 0) {
            throw new IllegalArgumentException("Without a failure there is no estimate of the mean time, only a bound.");
        }
        double total = lifetimes.stream().mapToDouble(Lifetime::time).sum();
        return new ExponentialFit(total / failures, failures, total);
    }
}
