package org.benchwright.language.internal.inspect;

import java.math.BigDecimal;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.DecisionTerms;
import org.benchwright.model.Axis;
import org.benchwright.model.Combined;
import org.benchwright.model.Constant;
import org.benchwright.model.Decision;
import org.benchwright.model.Derive;
import org.benchwright.model.Expression;
import org.benchwright.model.Grid;
import org.benchwright.model.GridReading;
import org.benchwright.model.Instrument;
import org.benchwright.model.InstrumentUse;
import org.benchwright.model.Judgement;
import org.benchwright.model.Limits;
import org.benchwright.model.Measurement;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Step;
import org.benchwright.model.Value;
import org.benchwright.model.ValueReference;

/** A grid has a size that somebody can carry out, and what it judges adds up. */
final class GridInspection implements Inspection {

    /** Points that one technician enters in a day at most; bounds the plan as well. */
    private static final BigDecimal MOST_POINTS = BigDecimal.valueOf(2000);

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        Procedures.statements(step, Grid.class).forEach(grid -> grid(grid, remarks));
        Procedures.statements(step, Derive.class).forEach(derive -> derive(derive, remarks));
    }

    private static void grid(Grid grid, Remarks remarks) {
        BigDecimal points = BigDecimal.ONE;
        for (Axis axis : grid.getAxes()) {
            axis(axis, remarks);
            points = points.multiply(size(axis).max(BigDecimal.ONE));
        }
        if (points.compareTo(MOST_POINTS) > 0) {
            remarks.on(grid, RemarkCode.GRID_TOO_LARGE, MOST_POINTS.toString());
        }
        Optional.ofNullable(grid.getJudgement()).ifPresent(judgement -> judgement(judgement, remarks));
        Optional.ofNullable(grid.getReading()).ifPresent(reading -> reading(reading, grid, remarks));
    }

    private static void reading(GridReading reading, Grid grid, Remarks remarks) {
        Written.thing(reading.getInstrument()).ifPresent(instrument -> {
            if (instrument.getUse() == InstrumentUse.GIVES) {
                remarks.on(reading, Literals.GRID_READING__INSTRUMENT, RemarkCode.INSTRUMENT_ONLY_GIVES, instrument.getName());
            }
            Optional<UnitOfMeasure> read = Written.unit(instrument.getUnit());
            Written.unit(reading.getUnit()).filter(unit -> read.filter(its -> !its.sameDimension(unit)).isPresent())
                    .ifPresent(unit -> remarks.on(reading, Literals.GRID_READING__UNIT, RemarkCode.WRONG_DIMENSION, unit.word(),
                            instrument.getUnit()));
        });
        Judgement judgement = grid.getJudgement();
        if (judgement == null || judgement.getLimits() == null || !GuardBands.isGuarded(judgement)) {
            return;
        }
        DecisionTerms.instrument(grid).ifPresentOrElse(
                instrument -> new GuardBands(remarks).look(judgement.getLimits(), instrument, reading, Literals.GRID_READING__INSTRUMENT),
                () -> remarks.on(reading, RemarkCode.INSTRUMENT_NOT_SAID, String.valueOf(reading.getName())));
    }

    private static BigDecimal size(Axis axis) {
        BigDecimal once = axis.getLast() == null || axis.getValues().isEmpty() ? BigDecimal.valueOf(axis.getValues().size())
                : axis.getLast().subtract(axis.getValues().get(0)).add(BigDecimal.ONE);
        return axis.isUpThenDown() ? once.multiply(BigDecimal.valueOf(2)) : once;
    }

    private static void axis(Axis axis, Remarks remarks) {
        if (axis.getLast() != null && !axis.getValues().isEmpty() && axis.getLast().compareTo(axis.getValues().get(0)) < 0) {
            remarks.on(axis, Literals.AXIS__LAST, RemarkCode.LIMITS_INVERTED);
        } else if (axis.getLast() != null && !axis.getValues().isEmpty() && !isWhole(axis.getLast().subtract(axis.getValues().get(0)))) {
            remarks.on(axis, Literals.AXIS__LAST, RemarkCode.RANGE_NOT_REACHED,
                    axis.getValues().get(0).toPlainString(), axis.getLast().toPlainString());
        }
        Optional<Instrument> instrument = Written.thing(axis.getInstrument());
        if (instrument.isEmpty()) {
            return;
        }
        if (instrument.get().getUse() == InstrumentUse.READS) {
            remarks.on(axis, Literals.AXIS__INSTRUMENT, RemarkCode.INSTRUMENT_ONLY_READS, instrument.get().getName());
        }
        if (axis.getUnit() == null) {
            remarks.on(axis, Literals.AXIS__INSTRUMENT, RemarkCode.UNIT_NOT_SAID, String.valueOf(axis.getName()));
        }
        Optional<UnitOfMeasure> unit = Written.unit(axis.getUnit());
        Optional<UnitOfMeasure> given = Written.unit(instrument.get().getUnit());
        if (unit.isPresent() && given.isPresent() && !unit.get().sameDimension(given.get())) {
            remarks.on(axis, Literals.AXIS__UNIT, RemarkCode.WRONG_DIMENSION, unit.get().word(), given.get().word());
        } else if (unit.isPresent()) {
            within(axis, unit.get(), instrument.get(), remarks);
        }
    }

    private static boolean isWhole(BigDecimal number) {
        return number.stripTrailingZeros().scale() <= 0;
    }

    /** Each value is one that the instrument can give. */
    private static void within(Axis axis, UnitOfMeasure unit, Instrument instrument, Remarks remarks) {
        InstrumentRange range = InstrumentRange.of(instrument);
        for (int i = 0; i < axis.getValues().size(); i++) {
            if (!range.holds(new Quantity(axis.getValues().get(i), unit))) {
                remarks.on(axis, Literals.AXIS__VALUES, i, RemarkCode.LIMITS_BEYOND_INSTRUMENT, instrument.getName());
            }
        }
        if (axis.getLast() != null && !range.holds(new Quantity(axis.getLast(), unit))) {
            remarks.on(axis, Literals.AXIS__LAST, RemarkCode.LIMITS_BEYOND_INSTRUMENT, instrument.getName());
        }
    }

    private static void derive(Derive derive, Remarks remarks) {
        if (derive.getLimits() == null) {
            remarks.on(derive, RemarkCode.LIMITS_NOT_SAID, String.valueOf(derive.getName()));
        } else {
            Written.unit(derive.getLimits().getUnit()).ifPresent(unit -> expression(derive.getExpression(), unit, remarks));
            scales(derive.getExpression(), derive.getLimits(), remarks);
        }
    }

    private static void judgement(Judgement judgement, Remarks remarks) {
        Optional<UnitOfMeasure> limits = Optional.ofNullable(judgement.getLimits()).flatMap(each -> Written.unit(each.getUnit()));
        limits.ifPresent(unit -> expression(judgement.getExpression(), unit, remarks));
        if (judgement.getLimits() != null) {
            scales(judgement.getExpression(), judgement.getLimits(), remarks);
        }
    }

    private static void scales(Expression expression, Limits limits, Remarks remarks) {
        if (expression != null) {
            TemperatureScales.look(expression, limits, remarks);
        }
    }

    private static void expression(Expression expression, UnitOfMeasure limits, Remarks remarks) {
        if (expression instanceof Combined combined) {
            expression(combined.getLeft(), limits, remarks);
            expression(combined.getRight(), limits, remarks);
        } else if (expression instanceof Constant constant) {
            Written.unit(constant.getUnit()).filter(unit -> !unit.sameDimension(limits)).ifPresent(
                    unit -> remarks.on(constant, RemarkCode.WRONG_DIMENSION, unit.word(), limits.word()));
        } else if (expression instanceof ValueReference reference) {
            Written.thing(reference.getValue()).ifPresent(value -> value(reference, value, limits, remarks));
        }
    }

    /** The unit that a value is in; a measurement without one is read in that of its limits. */
    static String unit(Value value) {
        if (value instanceof Axis axis) {
            return axis.getUnit();
        } else if (value instanceof GridReading reading) {
            return reading.getUnit();
        } else if (value instanceof Measurement measurement && measurement.getUnit() != null) {
            return measurement.getUnit();
        }
        return value instanceof Decision decision && decision.getLimits() != null ? decision.getLimits().getUnit() : null;
    }

    private static void value(ValueReference reference, Value value, UnitOfMeasure limits, Remarks remarks) {
        String word = unit(value);
        if (word == null) {
            remarks.on(reference, RemarkCode.UNIT_NOT_SAID, value.getName());
        } else {
            Written.unit(word).filter(unit -> !unit.sameDimension(limits))
                    .ifPresent(unit -> remarks.on(reference, RemarkCode.WRONG_DIMENSION, unit.word(), limits.word()));
        }
    }
}
