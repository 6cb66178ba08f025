package org.benchwright.language.internal.inspect;

import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.Amount;
import org.benchwright.model.Apply;
import org.benchwright.model.Decision;
import org.benchwright.model.DecisionRule;
import org.benchwright.model.Derive;
import org.benchwright.model.Instrument;
import org.benchwright.model.InstrumentUse;
import org.benchwright.model.Measurement;
import org.benchwright.model.Precondition;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;

/** What is measured or applied is within the instrument's means, and its decision can come out either way. */
final class MeasurementInspection implements Inspection {

    /** More than anybody takes by hand for one mean. */
    private static final int MOST_READINGS = 100;

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        procedure.getInstruments().forEach(instrument -> instrument(instrument, remarks));
        procedure.getPreconditions().forEach(precondition -> precondition(precondition, remarks));
    }

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        Procedures.statements(step, Measurement.class).forEach(measurement -> measurement(measurement, remarks));
        Procedures.statements(step, Decision.class).forEach(decision -> undecided(decision, remarks));
        Procedures.statements(step, Derive.class).forEach(new GuardBands(remarks)::look);
        Procedures.statements(step, Apply.class).forEach(apply -> apply(apply, remarks));
    }

    private static void instrument(Instrument instrument, Remarks remarks) {
        Optional<UnitOfMeasure> unit = Written.unit(instrument.getUnit());
        for (Amount amount : new Amount[] { instrument.getUpTo(), instrument.getUncertainty() }) {
            if (amount != null) {
                sameDimension(amount, Written.unit(amount.getUnit()), unit, remarks);
            }
        }
        if (instrument.getRange() != null) {
            sameDimension(instrument.getRange(), Written.unit(instrument.getRange().getUnit()), unit, remarks);
        }
        if (instrument.getCoverage() != null && instrument.getCoverage().signum() <= 0) {
            remarks.on(instrument, Literals.INSTRUMENT__COVERAGE, RemarkCode.COVERAGE_NOT_POSITIVE);
        }
        Written.quantity(instrument.getUpTo()).filter(most -> most.value().signum() < 0 && !most.unit().hasOffset())
                .ifPresent(most -> remarks.on(instrument, Literals.INSTRUMENT__UP_TO, RemarkCode.LIMITS_INVERTED));
        Written.quantity(instrument.getUncertainty()).filter(uncertainty -> uncertainty.value().signum() < 0)
                .ifPresent(uncertainty -> remarks.on(instrument, Literals.INSTRUMENT__UNCERTAINTY, RemarkCode.UNCERTAINTY_NEGATIVE));
    }

    private static void precondition(Precondition precondition, Remarks remarks) {
        if (precondition.isReading() && precondition.getLimits() == null) {
            remarks.on(precondition, RemarkCode.LIMITS_NOT_SAID, String.valueOf(precondition.getName()));
        } else if (!precondition.isReading() && precondition.getLimits() != null) {
            remarks.on(precondition, RemarkCode.LIMITS_WITHOUT_READING, String.valueOf(precondition.getName()));
        }
        Written.thing(precondition.getInstrument()).ifPresent(instrument -> {
            if (instrument.getUse() == InstrumentUse.GIVES) {
                remarks.on(precondition, Literals.PRECONDITION__INSTRUMENT, RemarkCode.INSTRUMENT_ONLY_GIVES, instrument.getName());
            }
            within(precondition.getLimits(), instrument, remarks);
        });
    }

    private static void measurement(Measurement measurement, Remarks remarks) {
        if (measurement.getLimits() == null) {
            remarks.on(measurement, RemarkCode.LIMITS_NOT_SAID, String.valueOf(measurement.getName()));
        }
        if (measurement.getInstrument() == null) {
            remarks.on(measurement, RemarkCode.INSTRUMENT_NOT_SAID, String.valueOf(measurement.getName()));
        }
        if (measurement.getRepeat() != null && measurement.getRepeat().getTimes() < 1) {
            remarks.on(measurement.getRepeat(), Literals.MEASURE_AGAIN__TIMES, RemarkCode.COUNT_NOT_POSITIVE);
        }
        if (measurement.getReadings() != null && (measurement.getReadings() < 2 || measurement.getReadings() > MOST_READINGS)) {
            remarks.on(measurement, Literals.MEASUREMENT__READINGS, RemarkCode.MEAN_OF_ONE, Integer.toString(MOST_READINGS));
        }
        Optional<UnitOfMeasure> limitsUnit = Optional.ofNullable(measurement.getLimits()).flatMap(limits -> Written.unit(limits.getUnit()));
        if (measurement.getUnit() != null) {
            sameDimension(measurement, Written.unit(measurement.getUnit()), limitsUnit, remarks);
        }
        Written.thing(measurement.getInstrument()).ifPresent(instrument -> {
            if (instrument.getUse() == InstrumentUse.GIVES) {
                remarks.on(measurement, Literals.MEASUREMENT__INSTRUMENT, RemarkCode.INSTRUMENT_ONLY_GIVES, instrument.getName());
            }
            within(measurement.getLimits(), instrument, remarks);
            if (GuardBands.isGuarded(measurement) && measurement.getLimits() != null) {
                new GuardBands(remarks).look(measurement.getLimits(), instrument, measurement, Literals.MEASUREMENT__INSTRUMENT);
            }
        });
    }

    private static void within(org.benchwright.model.Limits written, Instrument instrument, Remarks remarks) {
        if (written == null) {
            return;
        }
        if (sameDimension(written, Written.unit(written.getUnit()), Written.unit(instrument.getUnit()), remarks)) {
            Written.limits(written).filter(limits -> !InstrumentRange.of(instrument).holds(limits))
                    .ifPresent(limits -> remarks.on(written, RemarkCode.LIMITS_BEYOND_INSTRUMENT, instrument.getName()));
        }
    }

    private static void undecided(Decision decision, Remarks remarks) {
        boolean canBeUndecided = decision.getRule() == DecisionRule.GUARDED_BOTH_WAYS;
        if (decision.getUndecided() != null && !canBeUndecided) {
            remarks.on(decision.getUndecided(), RemarkCode.NEVER_UNDECIDED);
        } else if (decision.getUndecided() == null && canBeUndecided && !UndecidedOutcome.isSaid(decision)) {
            remarks.on(decision, RemarkCode.UNDECIDED_WITHOUT_OUTCOME);
        }
    }

    private static void apply(Apply apply, Remarks remarks) {
        Written.thing(apply.getInstrument()).ifPresent(instrument -> {
            if (instrument.getUse() == InstrumentUse.READS) {
                remarks.on(apply, Literals.APPLY__INSTRUMENT, RemarkCode.INSTRUMENT_ONLY_READS, instrument.getName());
            }
            Amount amount = apply.getAmount();
            if (amount != null && sameDimension(amount, Written.unit(amount.getUnit()), Written.unit(instrument.getUnit()), remarks)) {
                Written.quantity(amount).filter(value -> !InstrumentRange.of(instrument).holds(value))
                        .ifPresent(value -> remarks.on(amount, RemarkCode.LIMITS_BEYOND_INSTRUMENT, instrument.getName()));
            }
        });
    }

    private static boolean sameDimension(EObject at, Optional<UnitOfMeasure> unit, Optional<UnitOfMeasure> expected, Remarks remarks) {
        if (unit.isEmpty() || expected.isEmpty()) {
            return false;
        }
        if (!unit.get().sameDimension(expected.get())) {
            remarks.on(at, RemarkCode.WRONG_DIMENSION, unit.get().word(), expected.get().word());
            return false;
        }
        return true;
    }
}
