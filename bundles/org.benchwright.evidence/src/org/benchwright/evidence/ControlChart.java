package org.benchwright.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

import org.benchwright.evidence.internal.Means;

/**
 * A control chart: points with the limits between which a process that does not change keeps them (Shewhart;
 * NIST/SEMATECH e-Handbook, 6.3.2).
 *
 * @param points in their order
 * @param lower the lower control limit
 * @param centre the centre line
 * @param upper the upper control limit
 */
public record ControlChart(List<Double> points, double lower, double centre, double upper) {

    private static final String READING = "reading";

    /** Freezes the points. */
    public ControlChart {
        points = List.copyOf(points);
    }

    /**
     * Single readings: mean &plusmn; 3 MR/d2(2), with MR the mean of the moving ranges of two (6.3.2.2).
     *
     * @param readings at least two, in their order
     * @return the chart
     * @throws IllegalArgumentException when there are fewer, or one is no finite number
     */
    public static ControlChart individuals(List<Double> readings) {
        double reach = 3 * Means.of(READING, movingRanges(readings)) / ChartConstants.meanRange(2);
        double mean = Means.of(READING, readings);
        return new ControlChart(readings, mean - reach, mean, mean + reach);
    }

    /**
     * The moving ranges of single readings, up to D4(2) times their mean.
     *
     * @param readings at least two, in their order
     * @return the chart
     * @throws IllegalArgumentException when there are fewer, or one is no finite number
     */
    public static ControlChart movingRange(List<Double> readings) {
        return rangeChart(movingRanges(readings), ChartConstants.of(2));
    }

    /**
     * Means of subgroups: grand mean &plusmn; A2 times the mean range (6.3.2.1).
     *
     * @param subgroups at least one, all of the same size of 2 to 100
     * @return the chart
     * @throws IllegalArgumentException when the subgroups differ in size, or a reading is no finite number
     */
    public static ControlChart means(List<List<Double>> subgroups) {
        double factor = ChartConstants.meanFactor(commonSize(subgroups));
        List<Double> means = subgroups.stream().map(group -> Means.of(READING, group)).toList();
        double grand = Means.of(READING, means);
        double reach = factor * Means.of(READING, rangesOf(subgroups));
        return new ControlChart(means, grand - reach, grand, grand + reach);
    }

    /**
     * Ranges of subgroups: D3 to D4 times the mean range (6.3.2.1).
     *
     * @param subgroups at least one, all of the same size of 2 to 100
     * @return the chart
     * @throws IllegalArgumentException when the subgroups differ in size, or a reading is no finite number
     */
    public static ControlChart ranges(List<List<Double>> subgroups) {
        return rangeChart(rangesOf(subgroups), ChartConstants.of(commonSize(subgroups)));
    }

    /**
     * The points outside the limits.
     *
     * @return their places, from 0
     */
    public List<Integer> signals() {
        return IntStream.range(0, points.size())
                .filter(place -> points.get(place) < lower || points.get(place) > upper).boxed().toList();
    }

    private static ControlChart rangeChart(List<Double> ranges, ChartConstants constants) {
        double mean = Means.of(READING, ranges);
        return new ControlChart(ranges, constants.lowerRangeFactor() * mean, mean, constants.upperRangeFactor() * mean);
    }

    private static List<Double> rangesOf(List<List<Double>> subgroups) {
        return subgroups.stream().map(group -> group.stream().mapToDouble(Double::doubleValue).summaryStatistics())
                .map(group -> group.getMax() - group.getMin()).toList();
    }

    private static int commonSize(List<List<Double>> subgroups) {
        List<Integer> sizes = subgroups.stream().map(List::size).distinct().toList();
        if (sizes.size() != 1) {
            throw new IllegalArgumentException("Subgroups of one size are needed, not of " + sizes);
        }
        return sizes.get(0);
    }

    private static List<Double> movingRanges(List<Double> readings) {
        if (readings.size() < 2) {
            throw new IllegalArgumentException("A chart of single readings needs two of them.");
        }
        List<Double> ranges = new ArrayList<>();
        for (int i = 1; i < readings.size(); i++) {
            ranges.add(Math.abs(readings.get(i) - readings.get(i - 1)));
        }
        return ranges;
    }
}
