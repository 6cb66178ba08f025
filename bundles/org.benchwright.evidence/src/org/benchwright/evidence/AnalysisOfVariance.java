package org.benchwright.evidence;

import java.util.Collection;
import java.util.List;

import org.hipparchus.distribution.continuous.FDistribution;

import org.benchwright.evidence.internal.Require;

/**
 * Whether groups of readings differ more than readings within a group: one-way analysis of variance (NIST/SEMATECH
 * e-Handbook, 7.4.3). Summed in two passes about the means. Assumes independent, normal readings of one spread.
 *
 * @param between sum of squares between groups, &Sigma;n<sub>i</sub>(m<sub>i</sub> - m)&sup2;
 * @param betweenDegrees k - 1
 * @param within sum of squares within groups
 * @param withinDegrees N - k
 */
public record AnalysisOfVariance(double between, int betweenDegrees, double within, int withinDegrees) {

    /**
     * Compares groups.
     *
     * @param groups at least two, none empty, at least one with two readings; groups may differ in size
     * @return the analysis
     * @throws IllegalArgumentException when there are too few groups or readings, or a reading is no finite number
     */
    public static AnalysisOfVariance of(Collection<List<Double>> groups) {
        int count = groups.stream().mapToInt(List::size).sum();
        if (groups.size() < 2 || groups.stream().anyMatch(List::isEmpty) || count == groups.size()) {
            throw new IllegalArgumentException("Two groups are needed, none empty, one of them with two readings.");
        }
        double grand = groups.stream().mapToDouble(group -> mean(group) * group.size()).sum() / count;
        double between = 0;
        double within = 0;
        for (List<Double> group : groups) {
            double mean = mean(group);
            between += group.size() * (mean - grand) * (mean - grand);
            within += group.stream().mapToDouble(reading -> (reading - mean) * (reading - mean)).sum();
        }
        return new AnalysisOfVariance(between, groups.size() - 1, within, count - groups.size());
    }

    /** Deviations from the first reading are summed, so that leading digits shared by all don't cost any. */
    private static double mean(List<Double> group) {
        group.forEach(reading -> Require.summable("reading", reading));
        double first = group.get(0);
        return first + group.stream().mapToDouble(reading -> reading - first).sum() / group.size();
    }

    /**
     * The ratio of the mean squares.
     *
     * @return F; infinite when readings within all groups are alike, 0 when all readings are
     */
    public double statistic() {
        return between == 0 ? 0 : between / betweenDegrees / (within / withinDegrees);
    }

    /**
     * The probability of so large a difference between groups that are alike.
     *
     * @return 0 to 1
     */
    public double probability() {
        double statistic = statistic();
        return Double.isInfinite(statistic) ? 0
                : 1 - new FDistribution(betweenDegrees, withinDegrees).cumulativeProbability(statistic);
    }

    /**
     * The part of all squares that lies between the groups.
     *
     * @return R&sup2;, 0 to 1; 0 when all readings are alike
     */
    public double explained() {
        return between == 0 ? 0 : between / (between + within);
    }

    /**
     * The standard deviation within the groups.
     *
     * @return s, in the unit of the readings
     */
    public double residualDeviation() {
        return Math.sqrt(within / withinDegrees);
    }
}
