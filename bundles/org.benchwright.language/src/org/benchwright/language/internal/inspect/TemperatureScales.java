package org.benchwright.language.internal.inspect;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.Combined;
import org.benchwright.model.Constant;
import org.benchwright.model.Derive;
import org.benchwright.model.Expression;
import org.benchwright.model.Limits;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Sign;
import org.benchwright.model.ValueReference;

/**
 * Whether a sum of temperatures means anything: two points on a scale have a difference and no sum, and a difference lies between limits in
 * kelvin only. 1 K as 1 degC would be a point far away.
 */
final class TemperatureScales {

    /** What a value is. */
    private enum Kind {
        /** A point on a scale whose zero is not nothing. */
        POINT,
        /** The distance of two such points. */
        DIFFERENCE,
        /** Anything else. */
        PLAIN
    }

    private final Remarks remarks;
    private final Set<Derive> open = new HashSet<>();

    private TemperatureScales(Remarks remarks) {
        this.remarks = remarks;
    }

    /** Looks at an expression and the limits that its value is held against. */
    static void look(Expression expression, Limits limits, Remarks remarks) {
        Kind kind = new TemperatureScales(remarks).kind(expression, true);
        if (kind == Kind.DIFFERENCE && isPoint(limits.getUnit())) {
            remarks.on(limits, Literals.LIMITS__UNIT, RemarkCode.OFFSET_UNIT_IN_TOLERANCE, limits.getUnit());
        }
    }

    private static boolean isPoint(String word) {
        return Written.unit(word).filter(UnitOfMeasure::hasOffset).isPresent();
    }

    /** @param here whether the expression stands where it is looked at, and not in what that refers to */
    private Kind kind(Expression expression, boolean here) {
        if (expression instanceof Combined combined) {
            return kind(combined, here);
        } else if (expression instanceof Constant constant) {
            return isPoint(constant.getUnit()) ? Kind.POINT : Kind.PLAIN;
        }
        Optional<ValueReference> reference = Optional.of(expression).filter(ValueReference.class::isInstance).map(ValueReference.class::cast);
        return reference.flatMap(each -> Written.thing(each.getValue())).map(value -> value instanceof Derive derive ? kind(derive)
                : isPoint(GridInspection.unit(value)) ? Kind.POINT : Kind.PLAIN).orElse(Kind.PLAIN);
    }

    private Kind kind(Derive derive) {
        if (derive.getExpression() == null || !open.add(derive)) {
            return Kind.PLAIN;
        }
        Kind kind = kind(derive.getExpression(), false);
        open.remove(derive);
        return kind;
    }

    private Kind kind(Combined combined, boolean here) {
        if (combined.getLeft() == null || combined.getRight() == null) {
            return Kind.PLAIN;
        }
        Kind left = kind(combined.getLeft(), here);
        Kind right = kind(combined.getRight(), here);
        if (right == Kind.POINT && combined.getSign() == Sign.PLUS) {
            if (here) {
                remarks.on(combined.getRight(), RemarkCode.OFFSET_UNIT_IN_TOLERANCE, "degC");
            }
            return Kind.POINT;
        } else if (right == Kind.POINT) {
            return left == Kind.POINT ? Kind.DIFFERENCE : Kind.PLAIN;
        }
        // A number of kelvin to which a difference is added, or from which one is taken, is a difference too.
        return right == Kind.DIFFERENCE && left == Kind.PLAIN ? Kind.DIFFERENCE : left;
    }
}
