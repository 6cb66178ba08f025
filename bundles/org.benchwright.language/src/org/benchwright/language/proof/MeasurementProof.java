package org.benchwright.language.proof;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;

/**
 * The risks of one measurement with the worst instrument that the procedure tolerates.
 *
 * @param step        the name of its step
 * @param name        its own name
 * @param limits      where the value must lie
 * @param rule        how it is decided
 * @param expanded    the largest expanded uncertainty that is tolerated; empty where the procedure says none
 * @param coverage    the coverage factor of that
 * @param readings    how many readings are taken each time and decided by their mean, 1 or more
 * @param mostTimes   how often it is measured at most, 1 or more
 * @param combination how repeats are combined; empty where there are none
 * @param cells       how many values are decided alike: of a grid its cells, else 1
 * @param risks       the risks; empty where no uncertainty is said
 */
public record MeasurementProof(String step, String name, Limits limits, DecisionRule rule, Optional<Quantity> expanded, double coverage,
        int readings, int mostTimes, Optional<Combination> combination, long cells, Optional<Risks> risks) {

    /**
     * Probabilities, each 0 to 1.
     *
     * @param acceptBeyond     specific false-accept risk at its worst: a unit just beyond a limit is accepted, repeats included
     * @param acceptBeyondOnce the same without repeats
     * @param rejectInside     specific false-reject risk at its worst: a unit just inside a limit is rejected, repeats included
     * @param accept           global false-accept risk: any unit does not conform and is accepted
     * @param reject           global false-reject risk: any unit conforms and is rejected
     * @param ratio            half the width of the limits over the 95 % expanded uncertainty; empty with one limit
     * @param middle           middle of the spread of units that the global risks assume, in the unit of the limits
     * @param deviation        its standard deviation
     */
    public record Risks(double acceptBeyond, double acceptBeyondOnce, double rejectInside, double accept, double reject, OptionalDouble ratio,
            double middle, double deviation) {
    }

    public MeasurementProof {
        Objects.requireNonNull(limits);
        Objects.requireNonNull(rule);
    }

    /** The rule, as the language writes it. */
    public String ruleWord() {
        return rule.word();
    }

    /** How repeats are combined, as the language writes it; empty where there are none. */
    public Optional<String> combinedWord() {
        return combination.map(Combination::word);
    }
}
