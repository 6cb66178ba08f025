package org.benchwright.evidence.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.benchwright.evidence.StopInterval;
import org.benchwright.evidence.TurnbullCurve.Mass;

/** Where the weight of interval-censored stops lies, and how much of it makes them likeliest. */
public final class InnermostIntervals {

    private static final double ACCURACY = 1e-9;
    private static final double NOTHING = 1e-12;
    private static final double LOSING = 1e-5;
    private static final int MOST_ROUNDS = 200_000;

    /** At one time: exact stops begin, then intervals end, then intervals begin after it. */
    private enum Kind {
        EXACT_BEGIN, END, OPEN_BEGIN
    }

    private record Endpoint(double time, Kind kind) {
    }

    /** The innermost intervals that one observation covers, and how many units share that observation. */
    private record Cover(int first, int last, long units) {
    }

    private final List<double[]> intervals;
    private final List<Cover> covers;
    private final long units;

    /**
     * Finds the innermost intervals.
     *
     * @param stops how many units are alike; at least one
     */
    public InnermostIntervals(Map<StopInterval, Long> stops) {
        units = stops.values().stream().mapToLong(Long::longValue).sum();
        intervals = innermost(stops.keySet());
        covers = stops.entrySet().stream().map(each -> cover(each.getKey(), each.getValue())).toList();
    }

    private static List<double[]> innermost(Set<StopInterval> stops) {
        List<Endpoint> ends = new ArrayList<>();
        for (StopInterval stop : stops) {
            ends.add(new Endpoint(stop.after(), stop.exact() ? Kind.EXACT_BEGIN : Kind.OPEN_BEGIN));
            ends.add(new Endpoint(stop.by(), Kind.END));
        }
        ends.sort(Comparator.comparingDouble(Endpoint::time).thenComparing(Endpoint::kind));
        List<double[]> found = new ArrayList<>();
        for (int i = 1; i < ends.size(); i++) {
            if (ends.get(i).kind() == Kind.END && ends.get(i - 1).kind() != Kind.END) {
                found.add(new double[] { ends.get(i - 1).time(), ends.get(i).time() });
            }
        }
        return found;
    }

    private Cover cover(StopInterval stop, long alike) {
        int first = -1;
        int last = -1;
        for (int i = 0; i < intervals.size(); i++) {
            double[] interval = intervals.get(i);
            // an instant at the very beginning of an open interval lies outside it
            boolean beforeIt = stop.exact() ? interval[0] < stop.after()
                    : interval[0] < stop.after() || interval[0] == interval[1] && interval[0] == stop.after();
            if (!beforeIt && interval[1] <= stop.by()) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        return new Cover(first, last, alike);
    }

    /**
     * The weights by self-consistency.
     *
     * @return the intervals that bear weight
     */
    public List<Mass> mostLikely() {
        double[] weights = new double[intervals.size()];
        Arrays.fill(weights, 1.0 / weights.length);
        double[] gains = gains(weights);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double best = 0;
            for (int i = 0; i < weights.length; i++) {
                best = Math.max(best, gains[i]);
                weights[i] *= gains[i];
            }
            gains = gains(weights);
            if (best - 1 < ACCURACY) {
                break;
            }
        }
        List<Mass> masses = new ArrayList<>();
        double kept = 0;
        for (int i = 0; i < weights.length; i++) {
            // what loses a part of itself in each round goes to nothing, however slowly
            weights[i] = weights[i] > NOTHING && gains[i] > 1 - LOSING ? weights[i] : 0;
            kept += weights[i];
        }
        for (int i = 0; i < weights.length; i++) {
            if (weights[i] > 0) {
                masses.add(new Mass(intervals.get(i)[0], intervals.get(i)[1], weights[i] / kept));
            }
        }
        return masses;
    }

    /** For each interval the mean over all units of (covers it) / (probability of what was seen): 1 where weight fits. */
    private double[] gains(double[] weights) {
        double[] sums = new double[weights.length + 1];
        for (int i = 0; i < weights.length; i++) {
            sums[i + 1] = sums[i] + weights[i];
        }
        double[] steps = new double[weights.length + 1];
        for (Cover cover : covers) {
            double share = (double) cover.units() / units / (sums[cover.last() + 1] - sums[cover.first()]);
            steps[cover.first()] += share;
            steps[cover.last() + 1] -= share;
        }
        double[] gains = new double[weights.length];
        double running = 0;
        for (int i = 0; i < gains.length; i++) {
            running += steps[i];
            gains[i] = running;
        }
        return gains;
    }
}
