package org.benchwright.evidence;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Stream;

import org.benchwright.evidence.internal.Require;

/**
 * What a stretch of the soak finds and costs, such as the third day: of the units that reach its beginning, the part that
 * stops in it, learned from soaks that were watched. Units that were taken off before its end count for as long as they
 * were watched (Kaplan and Meier, begun anew at the stretch).
 *
 * <p>Truncation: soaks end, so nothing is learned about stops later than the longest of them.
 *
 * @param from its beginning
 * @param to its end
 * @param reached how many units were still working and watched at its beginning
 * @param stopped how many were seen to stop in it
 * @param foundPer1000 units found in it, of 1,000 that reach it
 * @param least the lower confidence limit for that
 * @param most the upper confidence limit
 * @param stationHoursEach station-hours spent for each unit found; infinite when none was
 */
public record SoakDay(double from, double to, int reached, int stopped, double foundPer1000, double least, double most,
        double stationHoursEach) {

    private static final double LONGEST_HOURS = 1e6;

    /**
     * Learns from soaks, one lifetime for each unit.
     *
     * @param soaks how long each unit soaked, in hours, and whether it stopped then
     * @param from the beginning, not negative
     * @param to the end, later than the beginning
     * @param confidence two-sided, between 0 and 1
     * @return what the stretch finds
     * @throws IllegalArgumentException when a number is out of range, or no unit was watched to the end of the stretch or
     *         stopped in it: nothing can be said then
     */
    public static SoakDay of(List<Lifetime> soaks, double from, double to, double confidence) {
        return of(RiskTable.counted(soaks), from, to, confidence);
    }

    /**
     * Learns from soaks of units that are counted already.
     *
     * @param soaks how many units soaked alike, above zero each
     * @param from the beginning, not negative
     * @param to the end, later than the beginning
     * @param confidence two-sided, between 0 and 1
     * @return what the stretch finds
     * @throws IllegalArgumentException as for single lifetimes
     */
    public static SoakDay of(Map<Lifetime, Long> soaks, double from, double to, double confidence) {
        Require.notNegative("beginning", from);
        Require.finite("end", to);
        Require.properFraction("confidence", confidence);
        if (to <= from) {
            throw new IllegalArgumentException("A stretch ends after its beginning.");
        }
        Map<Lifetime, Long> cut = new HashMap<>();
        soaks.forEach((each, units) -> {
            if (each.time() > from) {
                cut.merge(each.time() > to ? Lifetime.aliveAt(to - from) : new Lifetime(each.time() - from, each.failed()), units, Long::sum);
            }
        });
        long reached = units(cut, each -> true);
        long stopped = units(cut, Lifetime::failed);
        long through = units(cut, each -> each.time() >= to - from);
        if (through == 0 && stopped < reached || reached == 0) {
            throw new IllegalArgumentException("No unit was watched through this stretch.");
        }
        SurvivalCurve curve = SurvivalCurve.of(cut);
        double found = 1 - curve.at(to - from);
        Proportion.Interval limits = limits(curve, new Proportion(stopped, reached), through, confidence);
        double hours = cut.entrySet().stream().mapToDouble(each -> each.getKey().time() * each.getValue()).sum();
        return new SoakDay(from, to, Math.toIntExact(reached), Math.toIntExact(stopped), 1000 * found, 1000 * limits.lower(),
                1000 * limits.upper(), stopped == 0 ? Double.POSITIVE_INFINITY : hours / stopped);
    }

    private static long units(Map<Lifetime, Long> soaks, Predicate<Lifetime> which) {
        return soaks.entrySet().stream().filter(each -> which.test(each.getKey())).mapToLong(Map.Entry::getValue).sum();
    }

    private static Proportion.Interval limits(SurvivalCurve curve, Proportion stopped, long through, double confidence) {
        if (stopped.hits() == 0) {
            return new Proportion(0, through).clopperPearson(confidence);
        }
        SurvivalCurve.Step last = curve.steps().get(curve.steps().size() - 1);
        if (last.survival() == 0) {
            // Greenwood's formula has no error then. Units that were taken off might have stopped, too, so counting them as good keeps the limit low.
            return new Proportion.Interval(stopped.clopperPearson(confidence).lower(), 1);
        }
        Proportion.Interval surviving = last.limits(confidence);
        return new Proportion.Interval(1 - surviving.upper(), 1 - surviving.lower());
    }

    /**
     * All whole days within the longest soak watched.
     *
     * @param soaks as for {@link #of(Map, double, double, double)}
     * @param confidence two-sided, between 0 and 1
     * @return each day of which something can be said, in order
     * @throws IllegalArgumentException when the confidence is out of range, or a soak would have lasted longer than a century
     */
    public static List<SoakDay> eachDay(Map<Lifetime, Long> soaks, double confidence) {
        Require.properFraction("confidence", confidence);
        double longest = soaks.keySet().stream().mapToDouble(Lifetime::time).max().orElse(0);
        if (longest > LONGEST_HOURS) {
            throw new IllegalArgumentException("No soak lasts so many hours: " + longest);
        }
        return Stream.iterate(0.0, day -> day + 24 <= longest, day -> day + 24)
                .map(day -> of(soaks, day, day + 24, confidence)).toList();
    }

    /** As {@link #eachDay(Map, double)}, one lifetime for each unit. */
    public static List<SoakDay> eachDay(List<Lifetime> soaks, double confidence) {
        return eachDay(RiskTable.counted(soaks), confidence);
    }
}
