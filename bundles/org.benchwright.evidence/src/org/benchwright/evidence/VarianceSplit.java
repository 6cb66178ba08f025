package org.benchwright.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.LUDecomposition;

import org.benchwright.evidence.internal.Require;

/**
 * Where the variance of readings comes from: so much from the person, so much from the station, so much from the unit, the
 * rest from reading to reading. Analysis of variance for crossed random factors in any arrangement, also with unequal
 * numbers: each factor's uncorrected sum of squares is set equal to what it is expected to be (Henderson 1953, method 1;
 * Searle, Casella and McCulloch, Variance Components, 5.3). With equal numbers these are the usual analysis-of-variance
 * estimates without interaction. Assumes that factors add up and that their levels are a chance selection.
 *
 * @param components the variance of each factor, in their order, then that from reading to reading; may be negative where
 *        there is little of it
 */
public record VarianceSplit(List<Double> components) {

    /** Freezes the components. */
    public VarianceSplit {
        components = List.copyOf(components);
    }

    /**
     * One reading and where it comes from.
     *
     * @param value the reading
     * @param levels for each factor, who or what: the same number of factors in all readings
     */
    public record Reading(double value, List<String> levels) {

        /**
         * Freezes the levels.
         *
         * @throws IllegalArgumentException when the value is no finite number
         */
        public Reading {
            Require.summable("reading", value);
            levels = List.copyOf(levels);
        }
    }

    /**
     * Splits the variance.
     *
     * @param readings each factor at two levels or more, and factors told apart by them
     * @return the split
     * @throws IllegalArgumentException when the readings can't tell the factors apart
     */
    public static VarianceSplit of(List<Reading> readings) {
        int factors = readings.isEmpty() ? 0 : readings.get(0).levels().size();
        if (factors == 0 || readings.stream().anyMatch(each -> each.levels().size() != factors)) {
            throw new IllegalArgumentException("Readings with the same factors are needed, at least one.");
        }
        double centre = readings.stream().mapToDouble(Reading::value).average().orElseThrow();
        double[][] matrix = new double[factors + 1][factors + 1];
        double[] squares = new double[factors + 1];
        Terms mean = Terms.of(readings, centre, factors, each -> "");
        for (int row = 0; row <= factors; row++) {
            int factor = row;
            Terms terms = row < factors ? Terms.of(readings, centre, factors, each -> each.levels().get(factor))
                    : Terms.ofAll(readings, centre, factors);
            squares[row] = terms.squares() - mean.squares();
            for (int column = 0; column < factors; column++) {
                matrix[row][column] = terms.shares()[column] - mean.shares()[column];
            }
            matrix[row][factors] = terms.groups() - mean.groups();
        }
        DecompositionSolver solver = new LUDecomposition(new Array2DRowRealMatrix(matrix), 1e-9).getSolver();
        if (!solver.isNonSingular()) {
            throw new IllegalArgumentException("These readings don't tell the factors apart.");
        }
        List<Double> components = new ArrayList<>();
        for (double component : solver.solve(new ArrayRealVector(squares)).toArray()) {
            components.add(component);
        }
        return new VarianceSplit(components);
    }

    /**
     * The variance of all causes together, negative ones left out.
     *
     * @return their sum
     */
    public double total() {
        return components.stream().mapToDouble(each -> Math.max(0, each)).sum();
    }

    /**
     * The standard deviation from one cause.
     *
     * @param place of the factor, from 0; the last place is from reading to reading
     * @return 0 where the estimate is negative: nothing to be seen of it
     */
    public double deviation(int place) {
        return Math.sqrt(Math.max(0, components.get(place)));
    }

    private interface Key {
        String of(Reading reading);
    }

    /** T = sum of (sum of a group)^2 / (its size), and how often each variance is expected in it. */
    private record Terms(double squares, double[] shares, double groups) {

        static Terms of(List<Reading> readings, double centre, int factors, Key key) {
            Map<String, List<Reading>> groups = new HashMap<>();
            readings.forEach(each -> groups.computeIfAbsent(key.of(each), any -> new ArrayList<>()).add(each));
            double squares = 0;
            double[] shares = new double[factors];
            for (List<Reading> group : groups.values()) {
                double sum = group.stream().mapToDouble(each -> each.value() - centre).sum();
                squares += sum * sum / group.size();
                for (int factor = 0; factor < factors; factor++) {
                    shares[factor] += squaredCounts(group, factor) / group.size();
                }
            }
            return new Terms(squares, shares, groups.size());
        }

        static Terms ofAll(List<Reading> readings, double centre, int factors) {
            double[] shares = new double[factors];
            Arrays.fill(shares, readings.size());
            double squares = readings.stream().mapToDouble(each -> Math.pow(each.value() - centre, 2)).sum();
            return new Terms(squares, shares, readings.size());
        }

        private static double squaredCounts(Collection<Reading> group, int factor) {
            Map<String, Integer> counts = new HashMap<>();
            group.forEach(each -> counts.merge(each.levels().get(factor), 1, Integer::sum));
            return counts.values().stream().mapToDouble(count -> (double) count * count).sum();
        }
    }
}
