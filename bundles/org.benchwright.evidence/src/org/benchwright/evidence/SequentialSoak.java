package org.benchwright.evidence;

import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.evidence.internal.Require;
import org.benchwright.evidence.internal.SequentialPath;

/**
 * A soak that may stop early (Wald, Sequential Analysis, 1947; Epstein and Sobel 1955): after each hour and each stop,
 * accept when the total time has reached h<sub>a</sub> + s r, reject when it is at most s r - h<sub>r</sub> at a stop, else
 * go on. With D = 1/m<sub>1</sub> - 1/m<sub>0</sub>: s = ln(m<sub>0</sub>/m<sub>1</sub>)/D,
 * h<sub>a</sub> = ln((1 - &alpha;)/&beta;)/D, h<sub>r</sub> = ln((1 - &beta;)/&alpha;)/D.
 *
 * <p>Wald's boundaries keep the risks only roughly; {@link #acceptance} and {@link #expectedTime} are reckoned without
 * approximation. To be used only where the procedure declares it beforehand: looking at the numbers and stopping when they
 * please is another, worse test. Assumes a constant rate of stops and independent units.
 *
 * @param goodMeanTime m<sub>0</sub>, which should be accepted
 * @param poorMeanTime m<sub>1</sub>, which should be rejected, above zero, less than m<sub>0</sub>
 * @param producerRisk &alpha;, nominal risk of rejecting m<sub>0</sub>, above 0; &alpha; + &beta; below 1
 * @param consumerRisk &beta;, nominal risk of accepting m<sub>1</sub>, above 0
 */
public record SequentialSoak(double goodMeanTime, double poorMeanTime, double producerRisk, double consumerRisk) {

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException when one is out of range
     */
    public SequentialSoak {
        Require.positive("mean time to accept", goodMeanTime);
        Require.positive("mean time to reject", poorMeanTime);
        Require.properFraction("producer's risk", producerRisk);
        Require.properFraction("consumer's risk", consumerRisk);
        if (poorMeanTime >= goodMeanTime) {
            throw new IllegalArgumentException("The mean time to reject must be shorter than the one to accept.");
        }
        if (producerRisk + consumerRisk >= 1) {
            throw new IllegalArgumentException("Both risks together must stay below 1.");
        }
    }

    /**
     * The slope of both boundaries.
     *
     * @return s, time for each stop
     */
    public double timePerStop() {
        return Math.log(goodMeanTime / poorMeanTime) / difference();
    }

    /**
     * The time without a stop after which to accept.
     *
     * @return h<sub>a</sub>
     */
    public double acceptAfter() {
        return Math.log((1 - producerRisk) / consumerRisk) / difference();
    }

    /**
     * How far the total time may fall behind s r before rejecting.
     *
     * @return h<sub>r</sub>
     */
    public double rejectBehind() {
        return Math.log((1 - consumerRisk) / producerRisk) / difference();
    }

    private double difference() {
        return 1 / poorMeanTime - 1 / goodMeanTime;
    }

    /**
     * What to do now.
     *
     * @param total the time of all units together, not negative
     * @param stops how many stops so far
     * @return accepted or rejected; nothing while it has to go on
     * @throws IllegalArgumentException when a number is negative
     */
    public Optional<Verdict> decide(double total, int stops) {
        Require.notNegative("total time", total);
        Require.count("number of stops", stops);
        double ahead = total - stops * timePerStop();
        if (ahead >= acceptAfter()) {
            return Optional.of(Verdict.ACCEPTED);
        }
        return stops > 0 && ahead <= -rejectBehind() ? Optional.of(Verdict.REJECTED) : Optional.empty();
    }

    /**
     * The operating characteristic: the probability that units with a given mean time are accepted.
     *
     * @param meanTime m, above zero, at least a 25th of h<sub>a</sub> + h<sub>r</sub>
     * @return 0 to 1, good to about 10<sup>-6</sup>
     * @throws IllegalArgumentException when m is shorter
     */
    public double acceptance(double meanTime) {
        // Rounding may leave a hair beyond what a probability can be.
        return Math.min(1, Math.max(0, path(meanTime).acceptance()));
    }

    /**
     * The mean total time until it is decided.
     *
     * @param meanTime m, above zero, at least a 25th of h<sub>a</sub> + h<sub>r</sub>
     * @return the mean, in the unit of the times, good to about 10<sup>-5</sup> of itself
     * @throws IllegalArgumentException when m is shorter
     */
    public double expectedTime(double meanTime) {
        return path(meanTime).expectedTime();
    }

    private SequentialPath path(double meanTime) {
        Require.positive("mean time between stops", meanTime);
        return SequentialPath.of(timePerStop() / meanTime, acceptAfter() / meanTime, rejectBehind() / meanTime, meanTime);
    }
}
