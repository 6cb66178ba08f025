package org.benchwright.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

import org.benchwright.evidence.internal.Require;

/**
 * Counts of causes, the most frequent first, with the part of all that they make up together (Juran, Quality Control
 * Handbook, 1951). Equal counts are in the order of their names.
 *
 * @param bars the causes that occurred
 * @param total all counts together
 */
public record Pareto(List<Bar> bars, long total) {

    /**
     * One cause.
     *
     * @param name its name
     * @param count how often, above zero
     * @param share its part of all, 0 to 1
     * @param cumulative the part that it and those before it make up, up to 1
     */
    public record Bar(String name, long count, double share, double cumulative) {
    }

    /** Freezes the bars. */
    public Pareto {
        bars = List.copyOf(bars);
    }

    /**
     * Sorts counts.
     *
     * @param counts by name, not negative; zeros are left out
     * @return the chart; empty when nothing was counted
     * @throws IllegalArgumentException when a count is negative
     */
    public static Pareto of(Map<String, Long> counts) {
        counts.values().forEach(count -> Require.count("count of a cause", count));
        long total = counts.values().stream().mapToLong(Long::longValue).sum();
        List<Map.Entry<String, Long>> sorted = counts.entrySet().stream().filter(each -> each.getValue() > 0)
                .sorted(Map.Entry.<String, Long>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .toList();
        List<Bar> bars = new ArrayList<>();
        long running = 0;
        for (Map.Entry<String, Long> each : sorted) {
            running += each.getValue();
            bars.add(new Bar(each.getKey(), each.getValue(), (double) each.getValue() / total, (double) running / total));
        }
        return new Pareto(bars, total);
    }
}
