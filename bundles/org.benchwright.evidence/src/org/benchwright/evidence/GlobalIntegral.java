package org.benchwright.evidence;

import java.util.stream.DoubleStream;

import org.benchwright.evidence.GlobalRisk.Shape;
import org.benchwright.evidence.GlobalRisk.Span;
import org.benchwright.evidence.GlobalRisk.Spread;
import org.benchwright.evidence.internal.Integral;
import org.benchwright.evidence.internal.Normal;

/** Integrals over true values, of their density times the probability of being measured inside or outside. */
final class GlobalIntegral {

    /** Beyond this many standard deviations a normal process has less than 10<sup>-30</sup> left. */
    private static final double REACH = 12;
    private static final double HALF_WIDTH = Math.sqrt(3);

    private final Spread units;
    private final Spread errors;
    private final Span acceptance;

    GlobalIntegral(Spread units, Spread errors, Span acceptance) {
        this.units = units;
        this.errors = errors;
        this.acceptance = acceptance;
    }

    double accepted(double from, double to) {
        return integrate(from, to, true);
    }

    double rejected(double from, double to) {
        return integrate(from, to, false);
    }

    /** In standard deviations of the units, cut where the integrand has a kink. */
    private double integrate(double from, double to, boolean accepted) {
        double reach = units.shape() == Shape.NORMAL ? REACH : HALF_WIDTH;
        double low = Math.max(-reach, (from - units.mean()) / units.deviation());
        double high = Math.min(reach, (to - units.mean()) / units.deviation());
        if (low >= high) {
            return 0;
        }
        double[] cuts = DoubleStream.concat(DoubleStream.of(low, high), kinks().filter(cut -> low < cut && cut < high))
                .sorted().toArray();
        double sum = 0;
        for (int i = 1; i < cuts.length; i++) {
            sum += Integral.of(z -> density(z) * probability(units.mean() + units.deviation() * z, accepted), cuts[i - 1],
                    cuts[i], turns(cuts[i - 1], cuts[i]) ? Math.min(1, errors.deviation() / units.deviation()) : 1);
        }
        return sum;
    }

    /** Where errors of any size begin and cease to matter; with limited ones the integrand has a kink there. */
    private DoubleStream kinks() {
        double reach = reachOfErrors();
        return limits().flatMap(limit -> DoubleStream.of(limit - reach, limit + reach));
    }

    /** Whether an error may decide between two cuts: there panels must be no coarser than errors are. */
    private boolean turns(double from, double to) {
        double reach = reachOfErrors();
        return limits().anyMatch(limit -> Math.abs((from + to) / 2 - limit) < reach);
    }

    private double reachOfErrors() {
        return (errors.shape() == Shape.NORMAL ? REACH : HALF_WIDTH) * errors.deviation() / units.deviation();
    }

    /** The acceptance limits, in standard deviations of the units. */
    private DoubleStream limits() {
        return DoubleStream.of(acceptance.lower(), acceptance.upper()).filter(Double::isFinite)
                .map(limit -> (limit - errors.mean() - units.mean()) / units.deviation());
    }

    private double density(double z) {
        return units.shape() == Shape.NORMAL ? Normal.density(z) : 1 / (2 * HALF_WIDTH);
    }

    private double probability(double trueValue, boolean accepted) {
        double low = (acceptance.lower() - trueValue - errors.mean()) / errors.deviation();
        double high = (acceptance.upper() - trueValue - errors.mean()) / errors.deviation();
        if (errors.shape() == Shape.NORMAL) {
            return accepted ? Normal.between(low, high) : Normal.below(low) + Normal.above(high);
        }
        double inside = Math.max(0, Math.min(high, HALF_WIDTH) - Math.max(low, -HALF_WIDTH)) / (2 * HALF_WIDTH);
        return accepted ? inside : 1 - inside;
    }
}
