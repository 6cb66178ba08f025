package org.benchwright.evidence;

import java.util.List;

import org.hipparchus.stat.descriptive.moment.Mean;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;

import org.benchwright.evidence.internal.Require;

/**
 * Readings in brief, summed in two passes so that large values with small differences keep their digits.
 *
 * @param count n, at least 2
 * @param mean the arithmetic mean
 * @param standardDeviation s, with n - 1
 * @param autocorrelation r(1) = &Sigma;(y<sub>i</sub> - m)(y<sub>i-1</sub> - m)/&Sigma;(y<sub>i</sub> - m)&sup2;: whether
 *        a reading resembles the one before; 0 when all are alike
 */
public record Summary(int count, double mean, double standardDeviation, double autocorrelation) {

    /**
     * Sums readings up.
     *
     * @param readings at least two, in their order
     * @return the summary
     * @throws IllegalArgumentException when there are fewer, or one is no finite number
     */
    public static Summary of(List<Double> readings) {
        if (readings.size() < 2) {
            throw new IllegalArgumentException("A summary needs two readings.");
        }
        readings.forEach(reading -> Require.summable("reading", reading));
        double[] values = readings.stream().mapToDouble(Double::doubleValue).toArray();
        double mean = new Mean().evaluate(values);
        double deviation = new StandardDeviation().evaluate(values, mean);
        return new Summary(values.length, mean, deviation, autocorrelation(values, mean));
    }

    private static double autocorrelation(double[] values, double mean) {
        double squares = 0;
        double products = 0;
        for (int i = 0; i < values.length; i++) {
            squares += (values[i] - mean) * (values[i] - mean);
            products += i == 0 ? 0 : (values[i] - mean) * (values[i - 1] - mean);
        }
        return squares == 0 ? 0 : products / squares;
    }
}
