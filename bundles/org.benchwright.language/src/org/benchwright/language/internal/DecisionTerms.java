package org.benchwright.language.internal;

import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.UnitOfMeasure;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.model.Axis;
import org.benchwright.model.Decision;
import org.benchwright.model.Grid;
import org.benchwright.model.GridReading;
import org.benchwright.model.Instrument;
import org.benchwright.model.MeasureAgain;

/** How values are decided as it is written, in the terms of the mathematics. */
public final class DecisionTerms {

    private DecisionTerms() {
    }

    /** The rule of a decision. */
    public static DecisionRule rule(Decision decision) {
        return switch (decision.getRule()) {
            case SIMPLE -> DecisionRule.SIMPLE;
            case GUARDED -> DecisionRule.GUARDED;
            case GUARDED_BOTH_WAYS -> DecisionRule.GUARDED_BOTH_WAYS;
        };
    }

    /**
     * The instrument whose uncertainty a grid is decided with: the one behind the reading, else the first of an axis that gives the same kind
     * of quantity. That of a current says nothing about a voltage.
     */
    public static Optional<Instrument> instrument(Grid grid) {
        Optional<GridReading> reading = Optional.ofNullable(grid.getReading());
        Optional<UnitOfMeasure> read = reading.map(GridReading::getUnit).flatMap(UnitOfMeasure::find);
        Stream<Instrument> ofAxes = grid.getAxes().stream().map(Axis::getInstrument).filter(DecisionTerms::isKnown)
                .filter(each -> read.flatMap(unit -> Optional.ofNullable(each.getUnit()).flatMap(UnitOfMeasure::find)
                        .map(unit::sameDimension)).orElse(false));
        return reading.map(GridReading::getInstrument).filter(DecisionTerms::isKnown).or(ofAxes::findFirst);
    }

    private static boolean isKnown(Instrument instrument) {
        return instrument != null && !instrument.eIsProxy();
    }

    /** How readings are combined. */
    public static Combination combination(MeasureAgain again) {
        return switch (again.getCombination()) {
            case MEAN -> Combination.MEAN;
            case BOTH_INSIDE -> Combination.BOTH_INSIDE;
            case LAST -> Combination.LAST;
        };
    }
}
