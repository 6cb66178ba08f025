package org.benchwright.language.proof;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;

import org.benchwright.engine.plan.Claim;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.evidence.Soak;
import org.benchwright.language.internal.proof.StepTimes;

/**
 * What a soak detects. Assumed: a fault strikes at a constant rate, one unit's stops don't depend on another's, and the unit is in the same
 * condition all the time; the exponential model of {@link Soak}.
 *
 * @param name      its name
 * @param title     its title
 * @param lasting   how long it lasts
 * @param latching  whether a stop stays until somebody ends it; if not, looks witness nothing
 * @param watched   whether a watch is asked for: what it sees is evidence either way
 * @param lookEvery how often somebody looks
 * @param claim     what the procedure says that it reveals
 */
public record SoakProof(String name, String title, Duration lasting, boolean latching, boolean watched, Duration lookEvery, Optional<Claim> claim) {

    /** Where the procedure claims nothing, this probability is spoken of. */
    public static final double USUAL_PROBABILITY = 0.9;
    /** Lengths that are compared. */
    private static final List<Duration> LENGTHS = Stream.of(24, 48, 72, 96, 120).map(Duration::ofHours).toList();

    public SoakProof {
        Objects.requireNonNull(lasting);
        Objects.requireNonNull(lookEvery);
    }

    /** The soak of a plan. */
    public static SoakProof of(SoakStage soak, boolean latching, Optional<Claim> claim) {
        return new SoakProof(soak.name(), soak.title(), soak.lasting(), latching, soak.watch().isPresent(), soak.lookEvery(), claim);
    }

    /**
     * What a length means.
     *
     * @param length          the length
     * @param longestRevealed the longest mean interval of a fault that is revealed with {@link SoakProof#probability()}
     * @param revealed        the probability that a fault of {@link SoakProof#meanInterval()} is revealed, 0 to 1
     * @param stationTime     how long one unit occupies its place
     * @param looks           how often somebody looks, the first look included
     */
    public record Length(Duration length, Duration longestRevealed, double revealed, Duration stationTime, int looks) {

        /** The probability that such a fault stays hidden. */
        public double hidden() {
            return 1 - revealed;
        }
    }

    /** The probability that is spoken of: the claim's, or 90 %. */
    public double probability() {
        return claim.map(each -> each.probability().doubleValue()).orElse(USUAL_PROBABILITY);
    }

    /** The mean interval that is spoken of: the claim's, or the longest that the soak reveals. */
    public Duration meanInterval() {
        return claim.map(Claim::meanInterval).orElseGet(() -> atLeastASecond(Soak.longestMeanTimeRevealed(lasting, probability())));
    }

    private static Duration atLeastASecond(Duration time) {
        return time.compareTo(Duration.ofSeconds(1)) < 0 ? Duration.ofSeconds(1) : time;
    }

    /** The hours of a soak so long that count as evidence. */
    public Duration evidence(Duration length) {
        return latching || watched ? length : Duration.ZERO;
    }

    /**
     * The probability that a fault is revealed.
     *
     * @param length       the soak's length
     * @param meanInterval the mean time between two stops that the fault makes, above zero
     * @return 0 to 1
     */
    public double revealed(Duration length, Duration meanInterval) {
        return Soak.detectionProbability(hours(evidence(length)), hours(meanInterval));
    }

    /** Whether the claim holds; true without a claim. */
    public boolean supportsClaim() {
        return claim.map(each -> Soak.supports(evidence(lasting), each.meanInterval(), probability())).orElse(true);
    }

    /** What a length means. */
    public Length what(Duration length) {
        return new Length(length, Soak.longestMeanTimeRevealed(evidence(length), probability()), revealed(length, meanInterval()), length,
                StepTimes.looks(length, lookEvery));
    }

    /**
     * The usual lengths, the soak's own and perhaps another.
     *
     * @param other another length to compare, above zero
     * @return the shortest first
     */
    public List<Length> lengths(Optional<Duration> other) {
        TreeSet<Duration> all = new TreeSet<>(LENGTHS);
        all.add(lasting);
        other.ifPresent(all::add);
        return all.stream().map(this::what).toList();
    }

    /** A time in hours. */
    public static double hours(Duration time) {
        return time.toMillis() / 3_600_000.0;
    }
}
