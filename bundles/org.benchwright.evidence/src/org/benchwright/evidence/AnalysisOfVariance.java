package org.benchwright.evidence;

import java.util.Collection;
import java.util.List;

import org.hipparchus.special.Beta;

import org.benchwright.evidence.internal.Means;

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

    private static final String READING = "reading";

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
        double grand = Means.of(READING, groups.stream().flatMap(List::stream).toList());
        double between = 0;
        double within = 0;
        for (List<Double> group : groups) {
            double mean = Means.of(READING, group);
            between += group.size() * (mean - grand) * (mean - grand);
            within += group.stream().mapToDouble(reading -> (reading - mean) * (reading - mean)).sum();
        }
        return new AnalysisOfVariance(between, groups.size() - 1, within, count - groups.size());
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
        // The other tail, taken by itself: keeps its digits where one minus a distribution function would not.
        return Double.isInfinite(statistic) ? 0
                : Beta.regularizedBeta(withinDegrees / (withinDegrees + betweenDegrees * statistic), withinDegrees / 2.0, betweenDegrees / 2.0);
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
