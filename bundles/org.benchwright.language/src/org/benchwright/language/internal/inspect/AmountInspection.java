package org.benchwright.language.internal.inspect;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.Amount;
import org.benchwright.model.Limits;
import org.benchwright.model.Parameter;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.SupplyRating;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.emf.ecore.EStructuralFeature;

/** Units of measure that exist, are of the right dimension and can be what they are used for; limits the right way round. */
final class AmountInspection implements Inspection {

    private static final String TIME = "s";
    private static final String SHARE = "%";
    private static final Map<EReference, String> DIMENSIONS = Map.ofEntries(
            Map.entry(Literals.CLAIM__INTERVAL, TIME), Map.entry(Literals.BENCH_PROOF__VALIDITY, TIME),
            Map.entry(Literals.BENCH_NEED__WITHIN, TIME),
            Map.entry(Literals.PRECONDITION__VALIDITY, TIME), Map.entry(Literals.STAGE__LONGEST, TIME),
            Map.entry(Literals.SOAK__LENGTH, TIME), Map.entry(Literals.WATCH__EVERY, TIME), Map.entry(Literals.LOOK__EVERY, TIME),
            Map.entry(Literals.LOOK__TOLERANCE, TIME), Map.entry(Literals.GAP__LONGEST, TIME), Map.entry(Literals.STEP__TAKES, TIME),
            Map.entry(Literals.TIMING__WITHIN, TIME), Map.entry(Literals.TIMING__FROM, TIME), Map.entry(Literals.TIMING__LASTING, TIME),
            Map.entry(Literals.GRID_READING__SETTLE, TIME), Map.entry(Literals.WAIT__TIME, TIME), Map.entry(Literals.CLAIM__LEVEL, SHARE),
            Map.entry(Literals.LAMP_STATE__TOLERANCE, SHARE), Map.entry(Literals.LAMP_STATE__RATE, "Hz"),
            Map.entry(Literals.SUPPLY_RATING__NOMINAL, "V"), Map.entry(Literals.MEASUREMENT__RISK, SHARE));
    private static final Set<EReference> DIFFERENCES = Set.of(Literals.INSTRUMENT__UNCERTAINTY, Literals.SUPPLY_RATING__TOLERANCE,
            Literals.LIMITS__TOLERANCE);
    private static final Set<EStructuralFeature> UNIT_WORDS = Set.of(Literals.AMOUNT__UNIT, Literals.LIMITS__UNIT,
            Literals.LIMITS__LOWER_UNIT, Literals.INSTRUMENT__UNIT, Literals.MEASUREMENT__UNIT, Literals.AXIS__UNIT,
            Literals.GRID_READING__UNIT, Literals.CONSTANT__UNIT, Literals.PARAMETER__UNIT);

    @Override
    public void piece(EObject piece, Remarks remarks) {
        unitWords(piece, remarks);
        if (piece instanceof Amount amount) {
            amount(amount, remarks);
        } else if (piece instanceof Limits limits) {
            limits(limits, remarks);
        } else if (piece instanceof SupplyRating supply) {
            supply(supply, remarks);
        }
    }

    private static void supply(SupplyRating supply, Remarks remarks) {
        Written.quantity(supply.getNominal()).filter(nominal -> nominal.value().signum() == 0)
                .ifPresent(nothing -> remarks.on(supply.getNominal(), RemarkCode.NOMINAL_ZERO, nothing.toString()));
        Optional.ofNullable(supply.getNominal()).map(Amount::getUnit).flatMap(Written::unit)
                .ifPresent(unit -> distance(unit, supply.getTolerance(), remarks));
    }

    private static void unitWords(EObject each, Remarks remarks) {
        for (EStructuralFeature feature : UNIT_WORDS) {
            if (feature.getEContainingClass().isInstance(each) && each.eGet(feature) instanceof String word && UnitOfMeasure.find(word).isEmpty()) {
                remarks.on(each, feature, RemarkCode.UNKNOWN_UNIT, word);
            }
        }
    }

    /** A parameter stands for a quantity of its own unit. */
    private static void parameter(EObject at, EStructuralFeature part, Parameter parameter, Optional<String> expected, Remarks remarks) {
        Optional<UnitOfMeasure> unit = Written.thing(parameter).flatMap(each -> Written.unit(each.getUnit()));
        Optional<UnitOfMeasure> wanted = expected.flatMap(Written::unit);
        if (unit.isPresent() && wanted.isPresent() && !unit.get().sameDimension(wanted.get())) {
            remarks.on(at, part, RemarkCode.WRONG_DIMENSION, unit.get().word(), wanted.get().word());
        }
    }

    private static void amount(Amount amount, Remarks remarks) {
        parameter(amount, Literals.AMOUNT__PARAMETER, amount.getParameter(),
                Optional.ofNullable(DIMENSIONS.get(amount.eContainmentFeature())), remarks);
        EReference role = amount.eContainmentFeature();
        String expected = DIMENSIONS.get(role);
        Optional<UnitOfMeasure> unit = Written.unit(amount.getUnit());
        if (expected != null && unit.isPresent() && !unit.get().sameDimension(UnitOfMeasure.of(expected))) {
            remarks.on(amount, RemarkCode.WRONG_DIMENSION, amount.getUnit(), expected);
        } else {
            time(amount, role, remarks);
        }
        offset(amount, role, unit, Literals.AMOUNT__UNIT, remarks);
    }

    /** Whether an amount of time can be what it is used for: the value of a parameter too, where that stands for it. */
    static void time(Amount amount, EReference role, Remarks remarks) {
        if (TIME.equals(DIMENSIONS.get(role))) {
            Written.seconds(amount).filter(seconds -> !Times.inRange(seconds) && !isZeroTolerance(role, seconds))
                    .ifPresent(seconds -> remarks.on(amount, RemarkCode.DURATION_OUT_OF_RANGE));
        }
    }

    private static boolean isZeroTolerance(EReference role, BigDecimal seconds) {
        boolean mayBeZero = role == Literals.LOOK__TOLERANCE || role == Literals.TIMING__FROM || role == Literals.GRID_READING__SETTLE;
        return mayBeZero && seconds.signum() == 0;
    }

    private static void limits(Limits limits, Remarks remarks) {
        Optional<String> other = Optional.ofNullable(limits.getUnit());
        parameter(limits, Literals.LIMITS__LOWER_OF, limits.getLowerOf(), other, remarks);
        parameter(limits, Literals.LIMITS__UPPER_OF, limits.getUpperOf(), other.or(() -> Optional.ofNullable(limits.getLowerUnit())), remarks);
        Optional<UnitOfMeasure> unit = Written.unit(limits.getUnit());
        offset(limits, limits.eContainmentFeature(), unit, Literals.LIMITS__UNIT, remarks);
        Optional<UnitOfMeasure> lowerUnit = Written.unit(limits.getLowerUnit());
        if (unit.isPresent() && lowerUnit.isPresent() && !unit.get().sameDimension(lowerUnit.get())) {
            remarks.on(limits, RemarkCode.WRONG_DIMENSION, limits.getUnit(), limits.getLowerUnit());
        } else if (limits.getNominal() != null) {
            around(limits, unit, remarks);
        } else if (inverted(limits)) {
            remarks.on(limits, RemarkCode.LIMITS_INVERTED);
        } else if (DIFFERENCES.contains(limits.eContainmentFeature()) && excludesNominal(limits)) {
            remarks.on(limits, RemarkCode.TOLERANCE_EXCLUDES_NOMINAL);
        }
    }

    private static boolean inverted(Limits limits) {
        String lowerUnit = limits.getLowerUnit() == null ? limits.getUnit() : limits.getLowerUnit();
        return Written.quantity(limits.getLower(), lowerUnit)
                .flatMap(lower -> Written.quantity(limits.getUpper(), limits.getUnit()).map(upper -> lower.compareTo(upper) > 0))
                .orElse(false);
    }

    private static boolean excludesNominal(Limits limits) {
        return limits.getLower() != null && limits.getLower().signum() > 0
                || limits.getUpper() != null && limits.getUpper().signum() < 0;
    }

    private static void around(Limits limits, Optional<UnitOfMeasure> unit, Remarks remarks) {
        unit.ifPresent(nominal -> distance(nominal, limits.getTolerance(), remarks));
        boolean percent = limits.getTolerance() != null && SHARE.equals(limits.getTolerance().getUnit());
        if (percent && unit.filter(nominal -> !nominal.hasOffset()).isPresent() && limits.getNominal().signum() == 0) {
            remarks.on(limits, Literals.LIMITS__NOMINAL, RemarkCode.NOMINAL_ZERO, limits.getNominal().toPlainString() + " " + limits.getUnit());
        }
    }

    /** How far from a nominal value: a percentage of it, or an amount of the same kind. */
    private static void distance(UnitOfMeasure nominal, Limits tolerance, Remarks remarks) {
        Optional<UnitOfMeasure> distance = Optional.ofNullable(tolerance).flatMap(range -> Written.unit(range.getUnit()));
        boolean percent = distance.filter(unit -> unit.word().equals(SHARE)).isPresent();
        if (percent && nominal.hasOffset()) {
            remarks.on(tolerance, RemarkCode.OFFSET_UNIT_IN_TOLERANCE, nominal.word());
        } else if (!percent && distance.filter(unit -> !unit.sameDimension(nominal)).isPresent()) {
            remarks.on(tolerance, RemarkCode.WRONG_DIMENSION, tolerance.getUnit(), nominal.word());
        }
    }

    private static void offset(EObject written, EReference role, Optional<UnitOfMeasure> unit, EStructuralFeature part, Remarks remarks) {
        if (DIFFERENCES.contains(role) && unit.filter(UnitOfMeasure::hasOffset).isPresent()) {
            remarks.on(written, part, RemarkCode.OFFSET_UNIT_IN_TOLERANCE, unit.get().word());
        }
    }
}
