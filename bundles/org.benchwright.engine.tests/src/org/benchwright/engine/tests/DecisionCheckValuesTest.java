package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.measure;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;

import org.benchwright.core.Quantity;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.evidence.MeasurementRisk;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Published risks of wrongly accepting, at the very value at which the engine stops accepting. U = 0.05 V at k = 2, so u = 0.025 V; upper
 * limit 24.5 V. The guard band of the plan is the uncertainty at the plan's coverage factor: k = 2 gives w = U, k = 1.66 gives w = 0.83 U.
 */
class DecisionCheckValuesTest {

    private static final double STANDARD_UNCERTAINTY = 0.025;

    /**
     * <ul>
     * <li>w = U: below 2.5 %, 1 - &Phi;(2) = 2.2750 % (ILAC-G8:09/2019, 4.2; seen in public laboratory pages on decision rules)
     * <li>w = 0, simple acceptance: up to 50 % (the same)
     * <li>w = 0.83 U: below 5 %, 1 - &Phi;(1.66) = 4.846 % (ILAC-G8:09/2019, Table 1, row ISO 14253-1:2017; from memory)
     * </ul>
     */
    @ParameterizedTest
    @CsvSource({ "GUARDED, 2, 24.45, 0.022750, 0.025", "SIMPLE, 2, 24.5, 0.5, 0.5", "GUARDED, 1.66, 24.4585, 0.04846, 0.05" })
    void theLastValueAcceptedHasThePublishedRisk(DecisionRule rule, BigDecimal coverage, BigDecimal last, double risk, double published) {
        assertEquals(Outcome.CONFORMS, outcome(rule, coverage, last));
        assertEquals(Outcome.DOES_NOT_CONFORM, outcome(rule, coverage, last.add(new BigDecimal("0.0001"))));
        double reckoned = MeasurementRisk.specificFalseAccept(last.doubleValue(), STANDARD_UNCERTAINTY, OptionalDouble.empty(),
                OptionalDouble.of(24.5));
        assertEquals(risk, reckoned, 1e-4);
        assertTrue(reckoned <= published);
    }

    private static Outcome outcome(DecisionRule rule, BigDecimal coverage, BigDecimal value) {
        InstrumentSpec meter = new InstrumentSpec("meter", "Multimeter", Optional.empty(), Optional.of(Quantity.of("0.05", "V")), coverage);
        Walk walk = Walk.open(PlanDraft.plan().instrument(meter)
                .stage("bench", step("supply", measure("v", rule, rejected("bad"), undecided("close")))).build());
        walk.tell(new Observation.InstrumentNamed("meter", "M-102", Optional.of(Quantity.of("0.05", "V")), BigDecimal.valueOf(2), Optional.empty()));
        walk.tell(new Observation.Measured("v", value.toPlainString(), Quantity.of(value.toPlainString(), "V")));
        return walk.last(Derived.CheckDecided.class).outcome();
    }
}
