package org.benchwright.evidence;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;

import org.benchwright.evidence.GlobalRisk.Span;
import org.benchwright.evidence.GlobalRisk.Spread;
import org.benchwright.evidence.internal.Integral;
import org.benchwright.evidence.internal.Normal;

/** Integrals over x = t + c, the true value of a unit with the error that all readings of it share; both normal. */
final class RepeatIntegral {

    private final RepeatRisk measurement;
    private final boolean undecidedRejects;
    private final double mean;
    private final double fresh;
    /** Of t + c. */
    private final double deviation;
    /** Of t, given t + c. */
    private final double left;
    /** How much of a distance of t + c from its mean is one of t. */
    private final double share;

    RepeatIntegral(Spread units, RepeatRisk measurement, boolean undecidedRejects) {
        double common = measurement.standardUncertainty() * Math.sqrt(measurement.commonShare());
        this.measurement = measurement;
        this.undecidedRejects = undecidedRejects;
        fresh = measurement.standardUncertainty() * Math.sqrt(1 - measurement.commonShare());
        if (common == 0 || fresh == 0) {
            throw new IllegalArgumentException("The common share lies above 0 and below 1 here: " + measurement.commonShare());
        }
        mean = units.mean();
        deviation = Math.hypot(units.deviation(), common);
        left = units.deviation() * common / deviation;
        share = Math.pow(units.deviation() / deviation, 2);
    }

    GlobalRisk risk() {
        double falseAccept = near(x -> accepted(x) * outside(x));
        double falseReject = near(x -> rejected(x) * (1 - outside(x)));
        return new GlobalRisk(falseAccept, falseReject, near(this::accepted) + acceptedForSure());
    }

    private double accepted(double x) {
        return measurement.acceptanceGiven(x, fresh);
    }

    private double rejected(double x) {
        return undecidedRejects ? 1 - accepted(x) : measurement.rejectionGiven(x, fresh);
    }

    /** That t lies outside the limits, given x. */
    private double outside(double x) {
        double expected = mean + share * (x - mean);
        return Normal.below((measurement.lowerLimit() - expected) / left) + Normal.above((measurement.upperLimit() - expected) / left);
    }

    /** Away from the limits nothing is decided wrongly. */
    private double near(DoubleUnaryOperator given) {
        // The decision turns within a few fresh errors; whether t lies outside, within a few times what t + c leaves open of it.
        double finest = Math.min(1, Math.min(fresh, left / share) / deviation);
        double sum = 0;
        for (Span zone : zones()) {
            double from = Math.max(-Normal.REACH, (zone.lower() - mean) / deviation);
            double to = Math.min(Normal.REACH, (zone.upper() - mean) / deviation);
            sum += from < to ? Integral.of(z -> Normal.density(z) * given.applyAsDouble(mean + deviation * z), from, to, finest) : 0;
        }
        return sum;
    }

    private List<Span> zones() {
        double wide = wide();
        double lower = measurement.lowerLimit();
        double upper = measurement.upperLimit();
        if (upper - lower <= 2 * wide) {
            return List.of(new Span(lower - wide, upper + wide));
        }
        return Stream.of(lower, upper).filter(Double::isFinite).map(limit -> new Span(limit - wide, limit + wide)).toList();
    }

    private double wide() {
        return measurement.guardBand() + Normal.REACH * measurement.standardUncertainty();
    }

    private double acceptedForSure() {
        double from = measurement.lowerLimit() + wide();
        double to = measurement.upperLimit() - wide();
        return from < to ? Normal.between((from - mean) / deviation, (to - mean) / deviation) : 0;
    }
}
