package org.benchwright.evidence;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

import org.benchwright.evidence.internal.Normal;

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
        return of(RiskTable.counted(first), RiskTable.counted(second));
    }

    /**
     * Compares two groups whose units are counted already.
     *
     * @param first how many units are alike, above zero each; at least one
     * @param second the same of the other group
     * @return the test
     * @throws IllegalArgumentException as for single lifetimes
     */
    public static LogRank of(Map<Lifetime, Long> first, Map<Lifetime, Long> second) {
        if (first.isEmpty() || second.isEmpty()) {
            throw new IllegalArgumentException("Two groups are needed, neither of them empty.");
        }
        Map<Lifetime, Long> all = new HashMap<>(first);
        second.forEach((lifetime, units) -> all.merge(lifetime, units, Long::sum));
        NavigableMap<Double, Long> leaving = new TreeMap<>();
        first.forEach((lifetime, units) -> leaving.merge(lifetime.time(), units, Long::sum));
        double expected = 0;
        double variance = 0;
        long left = leaving.values().stream().mapToLong(Long::longValue).sum();
        for (RiskTable.Row row : RiskTable.of(all).rows()) {
            while (!leaving.isEmpty() && leaving.firstKey() < row.time()) {
                left -= leaving.pollFirstEntry().getValue();
            }
            double atRisk = row.atRisk();
            double share = left / atRisk;
            double failed = row.failed();
            expected += failed * share;
            variance += atRisk > 1 ? failed * share * (1 - share) * (atRisk - failed) / (atRisk - 1) : 0;
        }
        if (variance == 0) {
            throw new IllegalArgumentException("Nothing failed while both groups were under observation.");
        }
        long observed = first.entrySet().stream().filter(each -> each.getKey().failed()).mapToLong(Map.Entry::getValue).sum();
        return new LogRank(observed, expected, variance);
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
