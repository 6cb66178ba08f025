package org.benchwright.language.internal.inspect;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.RepeatRisk;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.DecisionTerms;
import org.benchwright.model.DecisionRule;
import org.benchwright.model.Instrument;
import org.benchwright.model.MeasureAgain;
import org.benchwright.model.Measurement;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Step;

/** The chance of accepting a unit just beyond a limit, with the worst instrument that the procedure tolerates. */
final class RiskInspection implements Inspection {

    /** A guard band of the whole expanded uncertainty at coverage 2 leaves 2.3 % (ILAC-G8:09/2019, Table 1); up to 5 % is common practice. */
    private static final double LARGE = 0.05;

    private final KnownRisks known;

    RiskInspection(KnownRisks known) {
        this.known = known;
    }

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        Procedures.statements(step, Measurement.class)
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
        return Written.thing(measurement.getInstrument()).map(Instrument::getCoverage).orElse(InstrumentSpec.USUAL_COVERAGE);
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
        Optional<MeasureAgain> again = Optional.ofNullable(measurement.getRepeat());
        int repeats = again.map(each -> Math.max(0, each.getTimes())).orElse(0);
        return Written.sound(() -> Optional.of(RepeatRisk.of(limits.get(), expanded.get(), coverage.doubleValue(),
                DecisionTerms.rule(measurement),
                new RepeatRisk.Taken(readings(measurement), repeats, again.map(DecisionTerms::combination).orElse(Combination.LAST)))));
    }

    /** How many make a mean; a number that makes none is remarked on elsewhere. */
    private static int readings(Measurement measurement) {
        return Math.max(1, Optional.ofNullable(measurement.getReadings()).orElse(1));
    }
}
