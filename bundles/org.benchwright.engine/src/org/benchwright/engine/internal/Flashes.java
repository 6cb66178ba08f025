package org.benchwright.engine.internal;

import static org.benchwright.engine.internal.Refusals.require;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.FlashRate;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Signal;

/**
 * The rate of a flashing lamp, from somebody who taps a key each time it lights up.
 *
 * <p>The rate is the number of intervals over the time from the first tap to the last, so a hand that is always late costs nothing. What is
 * left is the scatter of single taps: it must be small against an interval, and the rate farther from a limit of the band than it explains.
 */
public final class Flashes {

    /** How many taps decide, at least. */
    public static final int FEWEST_TAPS = 4;
    /** An interval may differ from the mean one by as much, in percent: more, and a tap was missed. */
    static final int MOST_UNEVEN = 30;
    /** Coverage factor of the rate's uncertainty. */
    private static final BigDecimal COVERAGE = BigDecimal.valueOf(2);
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final UnitOfMeasure HERTZ = UnitOfMeasure.of("Hz");
    private static final MathContext EXACT = MathContext.DECIMAL64;

    private Flashes() {
    }

    /** What taps come to: the rate and its uncertainty in Hz, the largest difference of an interval from the mean one in percent. */
    private record Rate(BigDecimal hertz, BigDecimal uncertainty, BigDecimal uneven) {
        Quantity quantity() {
            return new Quantity(hertz, HERTZ);
        }

        String shown() {
            return hertz.setScale(2, RoundingMode.HALF_EVEN).toPlainString();
        }
    }

    /** The rate that must be seen, where a single lamp is expected to flash, and nothing else. */
    public static Optional<FlashRate> rate(Action.Expect expect) {
        List<Signal> signals = expect.sequence().stream().flatMap(step -> step.signals().stream()).toList();
        return signals.size() == 1 && signals.get(0) instanceof Signal.LampShows lamp && lamp.pattern() instanceof LampPattern.Flashing flashing
                ? Optional.of(flashing.rate()) : Optional.empty();
    }

    /** The rate that must be seen at one of the expectations that run now. */
    static Optional<FlashRate> tappedAlong(RunState s, String check) {
        return Expectations.group(s).stream().filter(e -> e.id().equals(check)).findFirst().flatMap(Flashes::rate);
    }

    /** Refuses taps that decide nothing. */
    static void check(Optional<FlashRate> expected, Observation.Tapped tapped) throws RefusedException {
        require(expected.isPresent(), "refused.noFlash");
        List<Duration> taps = tapped.taps();
        require(taps.size() >= FEWEST_TAPS, "refused.fewTaps", FEWEST_TAPS);
        boolean inOrder = taps.get(0).isZero();
        for (int i = 1; i < taps.size(); i++) {
            inOrder &= taps.get(i).compareTo(taps.get(i - 1)) > 0;
        }
        require(inOrder, "refused.taps");
        Rate rate = rate(taps);
        require(rate.uneven().compareTo(BigDecimal.valueOf(MOST_UNEVEN)) <= 0, "refused.uneven", percent(rate), MOST_UNEVEN);
        Optional<Limits> band = expected.get().band();
        require(band.isEmpty() || !near(rate, band.get()), "refused.nearBand", rate.shown(), taps.size(), band.map(Limits::toString).orElse(""));
    }

    private static boolean near(Rate rate, Limits band) {
        return edge(rate, band.lower()) || edge(rate, band.upper());
    }

    private static boolean edge(Rate rate, Optional<Quantity> limit) {
        return limit.filter(l -> l.exactIn(HERTZ).subtract(rate.hertz()).abs().compareTo(rate.uncertainty()) < 0).isPresent();
    }

    /** The answer that good taps give. */
    static Observation.Seen answer(FlashRate expected, Observation.Tapped tapped) {
        Rate rate = rate(tapped.taps());
        String words = Words.of("flash.rate", rate.shown(), tapped.taps().size(), percent(rate));
        return new Observation.Seen(tapped.check(), expected.accepts(rate.quantity()) ? Sight.YES : Sight.NO, words);
    }

    private static String percent(Rate rate) {
        return rate.uneven().setScale(0, RoundingMode.HALF_EVEN).toPlainString();
    }

    private static Rate rate(List<Duration> taps) {
        List<BigDecimal> intervals = new ArrayList<>();
        for (int i = 1; i < taps.size(); i++) {
            intervals.add(seconds(taps.get(i).minus(taps.get(i - 1))));
        }
        BigDecimal count = BigDecimal.valueOf(intervals.size());
        BigDecimal total = intervals.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal mean = total.divide(count, EXACT);
        BigDecimal worst = intervals.stream().map(each -> each.subtract(mean).abs()).reduce(BigDecimal.ZERO, BigDecimal::max);
        BigDecimal squares = intervals.stream().map(each -> each.subtract(mean).pow(2)).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal hertz = count.divide(total, EXACT);
        // The variance of an interval is that of two taps, and so is that of the time from the first tap to the last.
        BigDecimal scatter = squares.divide(count.subtract(BigDecimal.ONE), EXACT).sqrt(EXACT);
        return new Rate(hertz, COVERAGE.multiply(scatter).divide(total, EXACT).multiply(hertz, EXACT),
                worst.multiply(HUNDRED).divide(mean, EXACT));
    }

    private static BigDecimal seconds(Duration time) {
        return BigDecimal.valueOf(time.toNanos()).movePointLeft(9);
    }
}
