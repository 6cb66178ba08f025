package org.benchwright.evidence;

import java.util.List;

import org.benchwright.evidence.internal.Means;
import org.benchwright.evidence.internal.Require;

/**
 * Whether readings wander with time: the straight line of least squares (NIST/SEMATECH e-Handbook, 4.1.4.1), summed in two
 * passes about the means. Assumes independent normal errors of one spread; readings that resemble the ones before make the
 * limits too narrow ({@link Summary#autocorrelation}).
 *
 * @param count n, at least 3
 * @param intercept b<sub>0</sub>, at time 0
 * @param slope b<sub>1</sub>, change for each unit of time
 * @param interceptError the standard error of b<sub>0</sub>
 * @param slopeError the standard error of b<sub>1</sub>
 * @param residualDeviation s of what is left, with n - 2
 */
public record Drift(int count, double intercept, double slope, double interceptError, double slopeError,
        double residualDeviation) {

    /**
     * Fits the line.
     *
     * @param times at least three, not all alike, in one unit of time
     * @param readings as many, in one unit
     * @return the drift
     * @throws IllegalArgumentException when there are too few, numbers differ, all times are alike or one is not finite
     */
    public static Drift of(List<Double> times, List<Double> readings) {
        int count = times.size();
        if (count < 3 || readings.size() != count) {
            throw new IllegalArgumentException("Three readings are needed, each with its time.");
        }
        double meanTime = Means.of("time", times);
        double meanReading = Means.of("reading", readings);
        double squares = 0;
        double products = 0;
        for (int i = 0; i < count; i++) {
            squares += Math.pow(times.get(i) - meanTime, 2);
            products += (times.get(i) - meanTime) * (readings.get(i) - meanReading);
        }
        if (squares == 0) {
            throw new IllegalArgumentException("All readings are of one time.");
        }
        double slope = products / squares;
        double left = 0;
        for (int i = 0; i < count; i++) {
            left += Math.pow(readings.get(i) - meanReading - slope * (times.get(i) - meanTime), 2);
        }
        double residual = Math.sqrt(left / (count - 2));
        return new Drift(count, meanReading - slope * meanTime, slope,
                residual * Math.sqrt(1.0 / count + meanTime * meanTime / squares), residual / Math.sqrt(squares), residual);
    }

    /**
     * Limits for the slope: b<sub>1</sub> &plusmn; t(n - 2) times its standard error.
     *
     * @param confidence two-sided, between 0 and 1
     * @return half the width of the interval around the slope
     * @throws IllegalArgumentException when the confidence is out of range
     */
    public double slopeReach(double confidence) {
        Require.properFraction("confidence", confidence);
        return Student.exceededBy((1 - confidence) / 2, count - 2.0) * slopeError;
    }

    /**
     * The probability of so large a slope where nothing drifts.
     *
     * @return 0 to 1; 1 when all readings are alike
     */
    public double probability() {
        if (slope == 0) {
            return 1;
        }
        return slopeError == 0 ? 0 : 2 * Student.above(Math.abs(slope / slopeError), count - 2.0);
    }
}
