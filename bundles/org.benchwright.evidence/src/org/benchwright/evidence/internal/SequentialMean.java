package org.benchwright.evidence.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Readings are added one by one until their mean leaves the undecided zones: a random walk between bands, followed by
 * carrying the density of the undecided sums from reading to reading.
 *
 * @param lower the lower tolerance limit, or minus infinity
 * @param upper the upper tolerance limit, or infinity
 * @param guardBand the half-width of the undecided zone around each limit, not negative
 */
public record SequentialMean(double lower, double upper, double guardBand) {

    private static final GaussRule RULE = new GaussRule(10);

    /** A possible sum of the readings so far, and the probability that it stands for. */
    private record Node(double sum, double mass) {
    }

    private record Zone(double from, double to) {

        Zone times(int factor) {
            return new Zone(from * factor, to * factor);
        }

        Optional<Zone> within(double least, double most) {
            double start = Math.max(from, least);
            double end = Math.min(to, most);
            return start < end ? Optional.of(new Zone(start, end)) : Optional.empty();
        }
    }

    /**
     * The probability that the mean comes to lie in the acceptance zone at some reading, and in undecided zones before.
     *
     * @param centre the mean of every reading
     * @param deviation the standard deviation of every reading, above zero
     * @param mostReadings after so many the case stays undecided
     * @return 0 to 1
     */
    public double acceptance(double centre, double deviation, int mostReadings) {
        return decided(centre, deviation, mostReadings, this::acceptedAt);
    }

    /**
     * The probability that the mean comes to lie in a rejection zone at some reading, and in undecided zones before.
     *
     * @param centre the mean of every reading
     * @param deviation the standard deviation of every reading, above zero
     * @param mostReadings after so many the case stays undecided
     * @return 0 to 1
     */
    public double rejection(double centre, double deviation, int mostReadings) {
        return decided(centre, deviation, mostReadings, this::rejectedAt);
    }

    /** The part of the sums so far that is decided one way by the next reading. */
    private interface Decision {
        double at(int reading, List<Node> undecided, double centre, double deviation);
    }

    private double decided(double centre, double deviation, int mostReadings, Decision decision) {
        if (isAlwaysUndecided(centre, deviation)) {
            return 0;
        }
        double decided = 0;
        List<Node> undecided = List.of(new Node(0, 1));
        for (int reading = 1; reading <= mostReadings; reading++) {
            decided += decision.at(reading, undecided, centre, deviation);
            if (reading < mostReadings) {
                undecided = carried(reading, undecided, centre, deviation);
            }
        }
        return Math.min(1, decided);
    }

    /** A mean strays no further than a single reading does. */
    private boolean isAlwaysUndecided(double centre, double deviation) {
        return undecidedZones().stream().anyMatch(
                zone -> zone.from() <= centre - Normal.REACH * deviation && centre + Normal.REACH * deviation <= zone.to());
    }

    private double acceptedAt(int reading, List<Node> undecided, double centre, double deviation) {
        double from = (lower + guardBand) * reading - centre;
        double to = (upper - guardBand) * reading - centre;
        if (from >= to) {
            return 0;
        }
        double sum = 0;
        for (Node node : undecided) {
            sum += node.mass() * Normal.between((from - node.sum()) / deviation, (to - node.sum()) / deviation);
        }
        return sum;
    }

    private double rejectedAt(int reading, List<Node> undecided, double centre, double deviation) {
        double from = (lower - guardBand) * reading - centre;
        double to = (upper + guardBand) * reading - centre;
        double sum = 0;
        for (Node node : undecided) {
            sum += node.mass() * (Normal.below((from - node.sum()) / deviation) + Normal.above((to - node.sum()) / deviation));
        }
        return sum;
    }

    /** The masses of the sums that are undecided after one more reading, on the points of integration rules. */
    private List<Node> carried(int reading, List<Node> undecided, double centre, double deviation) {
        double stray = Normal.REACH * deviation * Math.sqrt(reading);
        double expected = centre * reading;
        List<Node> next = new ArrayList<>();
        undecidedZones().stream().map(zone -> zone.times(reading))
                .flatMap(zone -> zone.within(expected - stray, expected + stray).stream())
                .forEach(zone -> RULE.over(zone.from(), zone.to(), panels(zone, deviation), (sum, weight) -> next
                        .add(new Node(sum, weight * density(sum - centre, undecided, deviation)))));
        return next;
    }

    private static double density(double point, List<Node> undecided, double deviation) {
        double density = 0;
        for (Node node : undecided) {
            double z = (point - node.sum()) / deviation;
            density += node.mass() * Math.exp(-z * z / 2);
        }
        return density / (deviation * Math.sqrt(2 * Math.PI));
    }

    private static int panels(Zone zone, double deviation) {
        return Math.max(1, (int) Math.ceil((zone.to() - zone.from()) / (2 * deviation)));
    }

    private List<Zone> undecidedZones() {
        if (lower + guardBand >= upper - guardBand) {
            return List.of(new Zone(lower - guardBand, upper + guardBand));
        }
        return Stream.of(lower, upper).filter(Double::isFinite)
                .map(limit -> new Zone(limit - guardBand, limit + guardBand)).toList();
    }
}
