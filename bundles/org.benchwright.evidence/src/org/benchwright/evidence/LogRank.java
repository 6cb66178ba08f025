package org.benchwright.evidence;

import java.util.List;
import java.util.stream.Stream;

/**
 * The log-rank test of whether two groups of units fail alike (Mantel 1966): failures seen in the first group against
 * those expected if both were alike, (O - E)&sup2;/V with the hypergeometric variance, &chi;&sup2; with one degree of
 * freedom. Assumes that units drop out of observation for reasons that have nothing to do with failing.
 *
 * @param observed O, failures in the first group
 * @param expected E, failures expected in it
 * @param variance V of O - E
 */
public record LogRank(double observed, double expected, double variance) {

    /**
     * Compares two groups.
     *
     * @param first at least one lifetime
     * @param second at least one lifetime
     * @return the test
     * @throws IllegalArgumentException when a group is empty, or there is no time at which anything could differ
     */
    public static LogRank of(List<Lifetime> first, List<Lifetime> second) {
        if (first.isEmpty() || second.isEmpty()) {
            throw new IllegalArgumentException("Two groups are needed, neither of them empty.");
        }
        List<Lifetime> all = Stream.concat(first.stream(), second.stream()).toList();
        double expected = 0;
        double variance = 0;
        double[] times = first.stream().mapToDouble(Lifetime::time).sorted().toArray();
        int gone = 0;
        for (RiskTable.Row row : RiskTable.of(all).rows()) {
            while (gone < times.length && times[gone] < row.time()) {
                gone++;
            }
            double atRisk = row.atRisk();
            double share = (times.length - gone) / atRisk;
            double failed = row.failed();
            expected += failed * share;
            variance += atRisk > 1 ? failed * share * (1 - share) * (atRisk - failed) / (atRisk - 1) : 0;
        }
        if (variance == 0) {
            throw new IllegalArgumentException("Nothing failed while both groups were under observation.");
        }
        return new LogRank(first.stream().filter(Lifetime::failed).count(), expected, variance);
    }

    /**
     * The test statistic.
     *
     * @return (O - E)&sup2;/V
     */
    public double statistic() {
        return (observed - expected) * (observed - expected) / variance;
    }

    /**
     * The probability of at least so large a difference between groups that are alike.
     *
     * @return 0 to 1
     */
    public double probability() {
        // Two normal tails: keeps its digits where one minus a chi-squared distribution function would not.
        return 2 * Normal.above(Math.sqrt(statistic()));
    }
}
