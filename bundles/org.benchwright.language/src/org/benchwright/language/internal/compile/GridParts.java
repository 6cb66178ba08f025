package org.benchwright.language.internal.compile;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.plan.Action;
import org.benchwright.model.Axis;
import org.benchwright.model.Combined;
import org.benchwright.model.Constant;
import org.benchwright.model.Expression;
import org.benchwright.model.Named;
import org.benchwright.model.Sign;
import org.benchwright.model.Statement;
import org.benchwright.model.Step;
import org.benchwright.model.Value;
import org.benchwright.model.ValueReference;

/** Axes and expressions of a grid. */
final class GridParts {

    private GridParts() {
    }

    static Action.Axis axis(Axis written) {
        Optional<UnitOfMeasure> unit = Optional.ofNullable(written.getUnit()).map(UnitOfMeasure::of);
        List<Action.AxisValue> values = new ArrayList<>(numbers(written).stream().map(n -> value(n, unit)).toList());
        if (written.isUpThenDown()) {
            List<Action.AxisValue> down = new ArrayList<>(values);
            Collections.reverse(down);
            values.addAll(down);
        }
        return new Action.Axis(written.getName(), values, Optional.ofNullable(written.getInstrument()).map(Named::getName));
    }

    private static List<BigDecimal> numbers(Axis written) {
        if (written.getLast() == null) {
            return written.getValues();
        }
        List<BigDecimal> numbers = new ArrayList<>();
        for (BigDecimal n = written.getValues().get(0); n.compareTo(written.getLast()) <= 0; n = n.add(BigDecimal.ONE)) {
            numbers.add(n);
        }
        return numbers;
    }

    private static Action.AxisValue value(BigDecimal number, Optional<UnitOfMeasure> unit) {
        Optional<Quantity> quantity = unit.map(u -> new Quantity(number, u));
        return new Action.AxisValue(quantity.map(Quantity::toString).orElse(number.toPlainString()), quantity);
    }

    /** An expression; a bare number in it is in the unit of the reading. */
    static org.benchwright.engine.plan.Expression expression(Expression written, UnitOfMeasure bare) {
        if (written instanceof Combined c) {
            org.benchwright.engine.plan.Expression left = expression(c.getLeft(), bare);
            org.benchwright.engine.plan.Expression right = expression(c.getRight(), bare);
            return c.getSign() == Sign.PLUS ? new org.benchwright.engine.plan.Expression.Sum(left, right)
                    : new org.benchwright.engine.plan.Expression.Difference(left, right);
        } else if (written instanceof Constant c) {
            UnitOfMeasure unit = c.getUnit() == null ? bare : UnitOfMeasure.of(c.getUnit());
            return new org.benchwright.engine.plan.Expression.Fixed(new Quantity(c.getNumber(), unit));
        }
        Value value = ((ValueReference) written).getValue();
        // What a step measures is known under the step's name too: other steps may derive from it.
        String step = value instanceof Statement && value.eContainer() instanceof Step own ? own.getName() + "." : "";
        return new org.benchwright.engine.plan.Expression.Name(step + value.getName());
    }
}
