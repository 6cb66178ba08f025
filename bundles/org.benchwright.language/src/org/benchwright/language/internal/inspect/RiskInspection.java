package org.benchwright.language.internal.inspect;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalDouble;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.RepeatRisk;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.DecisionRule;
import org.benchwright.model.Instrument;
import org.benchwright.model.Measurement;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;

/**
 * The chance of accepting a unit just beyond a limit, with the worst instrument that the procedure tolerates. How much of its error
 * all readings share is not known; half of the variance is assumed, so that repeats are neither worthless nor independent.
 */
final class RiskInspection implements Inspection {

    private static final double COMMON_SHARE = 0.5;
    private static final BigDecimal USUAL_COVERAGE = BigDecimal.valueOf(2);
    /** A guard band of the whole expanded uncertainty at coverage 2 leaves 2.3 % (ILAC-G8:09/2019, Table 1); up to 5 % is common practice. */
    private static final double LARGE = 0.05;
    private static final int MOST_REPEATS = 19;

    private final KnownRisks known;

    RiskInspection(KnownRisks known) {
        this.known = known;
    }

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        Procedures.statements(procedure, Measurement.class)
                .forEach(measurement -> risk(measurement).ifPresent(risk -> measurement(measurement, risk, remarks)));
    }

    private void measurement(Measurement measurement, RepeatRisk risk, Remarks remarks) {
        double all = known.worst(risk);
        double once = known.worst(risk.withoutRepeats());
        Optional<Double> stated = Written.share(measurement.getRisk());
        if (stated.isPresent()) {
            if (stated.get() <= 0 || stated.get() >= 1) {
                remarks.on(measurement, Literals.MEASUREMENT__RISK, RemarkCode.LEVEL_OUT_OF_RANGE);
            } else if (all > stated.get()) {
                remarks.on(measurement, Literals.MEASUREMENT__RISK, RemarkCode.RISK_EXCEEDED, percent(all));
            }
        } else if (measurement.getRule() != DecisionRule.SIMPLE && once > LARGE) {
            remarks.on(measurement, RemarkCode.GUARD_BAND_THIN, percent(once), coverage(measurement).toPlainString());
        } else if (measurement.getRepeat() != null && all > LARGE && all > 2 * once) {
            remarks.on(measurement.getRepeat(), RemarkCode.REPEATS_RAISE_RISK, percent(all), percent(once));
        }
    }

    private static BigDecimal coverage(Measurement measurement) {
        return Written.thing(measurement.getInstrument()).map(Instrument::getCoverage).orElse(USUAL_COVERAGE);
    }

    /** Rounded up, so that no risk looks smaller than it is. */
    private static String percent(double share) {
        return BigDecimal.valueOf(share * 100).setScale(1, RoundingMode.CEILING).toPlainString();
    }

    private static Optional<RepeatRisk> risk(Measurement measurement) {
        Optional<Limits> limits = Written.limits(measurement.getLimits());
        Optional<Quantity> expanded = Written.thing(measurement.getInstrument()).map(Instrument::getUncertainty).flatMap(Written::quantity);
        BigDecimal coverage = coverage(measurement);
        if (limits.isEmpty() || expanded.isEmpty() || coverage.signum() <= 0 || expanded.get().value().signum() <= 0) {
            return Optional.empty();
        }
        return Written.sound(() -> Optional.of(risk(measurement, limits.get(), expanded.get(), coverage.doubleValue())));
    }

    private static RepeatRisk risk(Measurement measurement, Limits limits, Quantity expanded, double coverage) {
        UnitOfMeasure unit = limits.unit();
        double uncertainty = expanded.in(unit.forDifferences());
        boolean repeats = measurement.getRepeat() != null && measurement.getRepeat().getTimes() >= 1
                && measurement.getRule() == DecisionRule.GUARDED_BOTH_WAYS;
        int readings = repeats ? 1 + Math.min(measurement.getRepeat().getTimes(), MOST_REPEATS) : 1;
        double band = measurement.getRule() == DecisionRule.SIMPLE ? 0 : uncertainty;
        return new RepeatRisk(side(limits.lower(), unit), side(limits.upper(), unit), band, uncertainty / coverage, COMMON_SHARE, readings,
                repeats ? combination(measurement) : Combination.LAST);
    }

    private static OptionalDouble side(Optional<Quantity> side, UnitOfMeasure unit) {
        return side.map(value -> OptionalDouble.of(value.in(unit))).orElseGet(OptionalDouble::empty);
    }

    private static Combination combination(Measurement measurement) {
        return switch (measurement.getRepeat().getCombination()) {
            case MEAN -> Combination.MEAN;
            case BOTH_INSIDE -> Combination.BOTH_INSIDE;
            case LAST -> Combination.LAST;
        };
    }
}
