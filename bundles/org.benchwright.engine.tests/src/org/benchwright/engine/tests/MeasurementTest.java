package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Answers.volts;
import static org.benchwright.engine.tests.Parts.measure;
import static org.benchwright.engine.tests.Parts.measureAgain;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.releaseBy;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Measurements: the three decision rules, repeats, and the instrument that the uncertainty comes from. */
class MeasurementTest {

    private static final Move BAD = rejected("The unit's supply is out of limits.");
    private static final Move CLOSE = undecided("Too close to call.");

    private static Walk measuring(Action action) {
        return Walk.open(PlanDraft.plan().stage("bench", step("supply", action)).build());
    }

    private static Observation.InstrumentNamed meter(String uncertainty, String unit, String coverage) {
        return new Observation.InstrumentNamed("meter", "M-102", Optional.of(Quantity.of(uncertainty, unit)), new BigDecimal(coverage),
                Optional.empty());
    }

    /** Limits 23.5 .. 24.5 V with U = 0.05 V: the guard band is U (ILAC-G8:09/2019, 4.2). Values on an end belong to the better side. */
    @ParameterizedTest
    @CsvSource({
        "SIMPLE, 23.5, CONFORMS", "SIMPLE, 24.5, CONFORMS", "SIMPLE, 23.49, DOES_NOT_CONFORM", "SIMPLE, 24.51, DOES_NOT_CONFORM",
        "GUARDED, 23.55, CONFORMS", "GUARDED, 24.45, CONFORMS", "GUARDED, 23.54, DOES_NOT_CONFORM", "GUARDED, 24.46, DOES_NOT_CONFORM",
        "GUARDED_BOTH_WAYS, 23.55, CONFORMS", "GUARDED_BOTH_WAYS, 24.46, UNDECIDED", "GUARDED_BOTH_WAYS, 24.55, UNDECIDED",
        "GUARDED_BOTH_WAYS, 24.56, DOES_NOT_CONFORM", "GUARDED_BOTH_WAYS, 23.44, DOES_NOT_CONFORM", "GUARDED_BOTH_WAYS, 23.45, UNDECIDED" })
    void theThreeRules(DecisionRule rule, String value, Outcome outcome) {
        Walk walk = measuring(measure("v", rule, BAD, CLOSE)).good().tell(volts("v", value));
        Derived.CheckDecided decided = walk.last(Derived.CheckDecided.class);
        assertEquals(outcome, decided.outcome());
        assertEquals(rule.word(), decided.numbers().orElseThrow().rule());
        walk.until("end");
        assertEquals(Optional.of(switch (outcome) {
            case CONFORMS -> Verdict.ACCEPTED;
            case DOES_NOT_CONFORM -> Verdict.REJECTED;
            default -> Verdict.UNDECIDED;
        }), walk.run().verdict());
    }

    @Test
    void undecidedIsNotANonconformity() {
        Walk walk = measuring(measure("v", DecisionRule.GUARDED_BOTH_WAYS, BAD, CLOSE)).good().tell(volts("v", "24.52"));
        assertEquals(0, walk.count(Derived.NonconformityNoted.class));
        assertEquals(Outcome.UNDECIDED, walk.last(Derived.StepDecided.class).outcome());
        assertEquals("Too close to call.", walk.last(Derived.ConclusionReached.class).reason());
    }

    @Test
    void theNumbersOfADecisionAreInTheUnitOfItsLimits() {
        Walk walk = measuring(measure("v", DecisionRule.GUARDED, BAD, CLOSE)).tell(meter("20", "mV", "2"));
        walk.tell(new Observation.Measured("v", "24100 mV", Quantity.of("24100", "mV")));
        assertEquals(new Derived.Numbers("guarded", "24.1 V", "23.5 .. 24.5 V", "0.02 V", "0.4 V"),
                walk.last(Derived.CheckDecided.class).numbers().orElseThrow());
    }

    // ---- repeats

    @Test
    void measuringAgainNeedsAReasonAndKeepsEveryReading() {
        Walk walk = measuring(measureAgain("v", 1, Combination.MEAN, BAD, CLOSE)).good().tell(volts("v", "24.47"));
        walk.asks("supply.v.reason");
        assertEquals(1, walk.last(Derived.Repeated.class).count());
        walk.refusal(volts("v", "24.40"));
        assertEquals("A reason is needed. Enter it.", walk.refusal(new Observation.ReasonGiven("v", " ")));
        walk.tell(new Observation.ReasonGiven("v", "A lead was loose.")).asks("supply.v");
        assertEquals(List.of(Quantity.of("24.47", "V")), assertInstanceOf(Demand.TakeMeasurement.class, walk.demand()).earlier());
        walk.tell(volts("v", "24.41"));
        assertEquals("24.44 V", walk.last(Derived.CheckDecided.class).numbers().orElseThrow().value());
        assertEquals(Outcome.CONFORMS, walk.last(Derived.CheckDecided.class).outcome());
        assertEquals(2, walk.count(Observation.Measured.class));
        assertTrue(walk.departures().isEmpty(), "a repeat that the procedure allows is no departure");
    }

    @Test
    void aMeanIsDecidedOnceAllItsReadingsAreThere() {
        Action mean = new Action.Measure("v", "meter", UnitOfMeasure.of("V"), Parts.volts("23.5", "24.5"), DecisionRule.GUARDED_BOTH_WAYS,
                Optional.of(new Action.Again(1, Combination.LAST)), BAD, CLOSE, Optional.of(new Action.Count(3)), Optional.empty());
        Walk walk = measuring(mean).good().tell(volts("v", "24.60")).asks("supply.v").tell(volts("v", "24.40")).asks("supply.v");
        assertEquals(0, walk.count(Derived.CheckDecided.class));
        walk.tell(volts("v", "24.44"));
        assertEquals("24.48 V", walk.last(Derived.CheckDecided.class).numbers().orElseThrow().value());
        walk.asks("supply.v.reason").tell(new Observation.ReasonGiven("v", "A lead was loose."));
        walk.tell(volts("v", "24.1")).tell(volts("v", "24.2")).asks("supply.v").tell(volts("v", "24.3"));
        assertEquals("24.2 V", walk.last(Derived.CheckDecided.class).numbers().orElseThrow().value());
        assertEquals(2, walk.count(Derived.CheckDecided.class));
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.until("end").run().verdict());
    }

    /** Two readings of one meter, U = 0.05 V each, share its error: 0.1 V for their difference (JCGM 100:2008, 5.2.2). */
    @Test
    void termsReadWithOneInstrumentAddUpTheirUncertainty() {
        Action open = measure("open", DecisionRule.SIMPLE, BAD, CLOSE);
        Action loaded = measure("loaded", DecisionRule.SIMPLE, BAD, CLOSE);
        Action drop = new Action.Derive("drop", new Expression.Difference(new Expression.Name("supply.open"), new Expression.Name("supply.loaded")),
                Parts.volts("-0.3", "0.3"), DecisionRule.GUARDED_BOTH_WAYS, BAD, CLOSE);
        Walk walk = Walk.open(PlanDraft.plan().stage("bench", step("supply", open, loaded, drop)).build()).good()
                .tell(volts("open", "24.25")).tell(volts("loaded", "24.00"));
        assertEquals(new Derived.Numbers("guarded both ways", "0.25 V", "-0.3 .. 0.3 V", "0.10 V", "0.05 V"),
                walk.all(Derived.CheckDecided.class).get(2).numbers().orElseThrow());
        assertEquals("Too close to call.", walk.last(Derived.ConclusionReached.class).reason());
    }

    @Test
    void repeatsAreBounded() {
        Walk walk = measuring(measureAgain("v", 2, Combination.LAST, BAD, CLOSE)).good();
        for (int repeats = 0; repeats < 2; repeats++) {
            walk.tell(volts("v", "24.50")).tell(new Observation.ReasonGiven("v", "restless"));
        }
        walk.tell(volts("v", "24.50")).asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
    }

    @ParameterizedTest
    @CsvSource({
        // mean of 24.49 and 24.39 is 24.44, inside the guard band's inner end; the last alone too; both lie inside the limits
        "MEAN, 24.49, 24.39, CONFORMS", "LAST, 24.54, 24.40, CONFORMS", "BOTH_INSIDE, 24.49, 24.47, CONFORMS",
        "BOTH_INSIDE, 24.52, 24.40, UNDECIDED", "BOTH_INSIDE, 24.52, 24.53, DOES_NOT_CONFORM",
        "MEAN, 24.50, 24.70, DOES_NOT_CONFORM", "LAST, 24.49, 24.56, DOES_NOT_CONFORM" })
    void howReadingsCombine(Combination how, String first, String second, Outcome outcome) {
        Walk walk = measuring(measureAgain("v", 1, how, BAD, CLOSE)).good().tell(volts("v", first));
        walk.tell(new Observation.ReasonGiven("v", "restless")).tell(volts("v", second));
        assertEquals(outcome, walk.last(Derived.CheckDecided.class).outcome());
    }

    @Test
    void aRejectedReadingIsNotMeasuredAgain() {
        measuring(measureAgain("v", 3, Combination.LAST, BAD, CLOSE)).good().tell(volts("v", "25")).asks("off.supply.off");
    }

    @Test
    void aRejectedValueCanBeReleased() {
        Walk walk = measuring(measure("v", DecisionRule.SIMPLE, releaseBy(Role.SUPERVISOR), CLOSE)).good().tell(volts("v", "25"));
        walk.asks("supply.v.release").good().asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
        assertEquals(List.of(DepartureKind.RELEASED), walk.departures());
    }

    // ---- the instrument

    @Test
    void theUncertaintyComesFromTheInstrumentAtHandAtThePlansCoverageFactor() {
        Walk walk = measuring(measure("v", DecisionRule.GUARDED, BAD, CLOSE));
        assertEquals("M-102 has an uncertainty of 0.09 V (k = 3), but at most 0.05 V (k = 2) is allowed. Take a better instrument.",
                walk.refusal(meter("0.09", "V", "3")));
        walk.tell(meter("30", "mV", "3")).tell(volts("v", "24.1"));
        assertEquals("0.02 V", walk.last(Derived.CheckDecided.class).numbers().orElseThrow().uncertainty());
    }

    @Test
    void aTestNeedsEachInstrumentNamedOnce() {
        Walk walk = Walk.open(PlanDraft.plan().stage("bench", step("one", measure("v", DecisionRule.SIMPLE, BAD, CLOSE)),
                step("two", measure("w", DecisionRule.SIMPLE, BAD, CLOSE))).build());
        walk.asks("instrument.meter").good().asks("one.v").good().asks("two.w");
    }

    @Test
    void uncertaintiesThatMeanNothingAreRefused() {
        Walk walk = measuring(measure("v", DecisionRule.GUARDED, BAD, CLOSE));
        walk.refusal(meter("-0.01", "V", "2"));
        walk.refusal(meter("0.01", "V", "0"));
        walk.refusal(meter("0.01", "mA", "2"));
        walk.refusal(new Observation.InstrumentNamed("meter", "M-102", Optional.empty(), BigDecimal.valueOf(2), Optional.empty()));
        walk.refusal(new Observation.InstrumentNamed("meter", " ", Optional.of(Quantity.of("0.01", "V")), BigDecimal.valueOf(2), Optional.empty()));
    }

    @Test
    void aGuardBandIsNeverMadeFromAnUnknownUncertainty() {
        InstrumentSpec any = new InstrumentSpec("meter", "Multimeter", Optional.empty(), Optional.empty(), BigDecimal.valueOf(2));
        Fact unknown = new Observation.InstrumentNamed("meter", "M-102", Optional.empty(), BigDecimal.valueOf(2), Optional.empty());
        Walk guarded = Walk.open(PlanDraft.plan().instrument(any).stage("bench", step("supply", measure("v", DecisionRule.GUARDED, BAD, CLOSE)))
                .build());
        assertTrue(guarded.refusal(unknown).startsWith("Values read with M-102 are decided with a guard band"));
        Walk simple = Walk.open(PlanDraft.plan().instrument(any).stage("bench", step("supply", measure("v", DecisionRule.SIMPLE, BAD, CLOSE)))
                .build());
        simple.tell(unknown).asks("supply.v");
    }

    @Test
    void aTemperatureHasItsUncertaintyInKelvin() {
        InstrumentSpec probe = new InstrumentSpec("meter", "Thermometer", Optional.empty(), Optional.of(Quantity.of("1", "K")),
                BigDecimal.valueOf(2));
        Action warm = new Action.Measure("t", "meter", UnitOfMeasure.of("degC"), Parts.room(), DecisionRule.GUARDED, Optional.empty(), BAD,
                CLOSE);
        Walk walk = Walk.open(PlanDraft.plan().instrument(probe).stage("room", step("air", warm)).build());
        assertTrue(walk.refusal(meter("0.5", "degC", "2")).endsWith("Enter it in K."));
        walk.tell(meter("0.5", "K", "2")).tell(new Observation.Measured("t", "27.5", Quantity.of("27.5", "degC")));
        assertEquals(Outcome.CONFORMS, walk.last(Derived.CheckDecided.class).outcome());
    }

    @Test
    void anUncertaintyInSecondsDecidesOnLimitsInMinutes() {
        InstrumentSpec watch = new InstrumentSpec("meter", "Stop watch", Optional.empty(), Optional.of(Quantity.of("0.1", "min")),
                BigDecimal.valueOf(2));
        Action time = new Action.Measure("t", "meter", UnitOfMeasure.of("min"), Limits.atMost(Quantity.of("3", "min")), DecisionRule.GUARDED,
                Optional.empty(), BAD, CLOSE);
        Walk walk = Walk.open(PlanDraft.plan().instrument(watch).stage("room", step("boot", time)).build());
        walk.tell(meter("1", "s", "2")).tell(new Observation.Measured("t", "179 s", Quantity.of("179", "s")));
        assertEquals(Outcome.CONFORMS, walk.last(Derived.CheckDecided.class).outcome());
    }

    @Test
    void aCalibrationPastDueIsADeparture() {
        Observation.InstrumentNamed due = new Observation.InstrumentNamed("meter", "M-102", Optional.of(Quantity.of("0.05", "V")),
                BigDecimal.valueOf(2),
                Optional.of(LocalDate.parse("2026-03-01")));
        Walk walk = measuring(measure("v", DecisionRule.SIMPLE, BAD, CLOSE)).tell(due);
        assertEquals(List.of(DepartureKind.INSTRUMENT_PAST_DUE), walk.departures());
        Observation.InstrumentNamed today = new Observation.InstrumentNamed("meter", "M-102", due.uncertainty(), due.coverage(),
                Optional.of(LocalDate.parse("2026-03-02")));
        assertTrue(measuring(measure("v", DecisionRule.SIMPLE, BAD, CLOSE)).tell(today).departures().isEmpty());
    }

    @Test
    void aProcedureCanRefuseACalibrationPastDue() {
        InstrumentSpec strict = new InstrumentSpec("meter", "Multimeter", Optional.empty(), Optional.empty(), BigDecimal.valueOf(2), Optional.empty(),
                Optional.of(InstrumentSpec.PastDue.REFUSED));
        Walk walk = Walk.open(PlanDraft.plan().instrument(strict).stage("a", step("s", measure("v", DecisionRule.SIMPLE, BAD, CLOSE))).build());
        assertTrue(walk.refusal(due("2026-03-01")).startsWith("The calibration of M-102 was due on 2026-03-01, and this procedure takes none"));
        walk.tell(due("2026-03-02"));
        assertTrue(walk.departures().isEmpty(), "the day of the due date is in time");
    }

    private static Observation.InstrumentNamed due(String day) {
        return new Observation.InstrumentNamed("meter", "M-102", Optional.of(Quantity.of("0.05", "V")), BigDecimal.valueOf(2),
                Optional.of(LocalDate.parse(day)));
    }

    // ---- what is entered

    @Test
    void whatWasTypedAndWhatIsTakenFromItMustAgree() {
        Walk walk = measuring(measure("v", DecisionRule.SIMPLE, BAD, CLOSE)).good();
        assertEquals("\"27.1\" was typed, but 24.1 V was taken from it. Enter it again.",
                walk.refusal(new Observation.Measured("v", "27.1", Quantity.of("24.1", "V"))));
        walk.refusal(new Observation.Measured("v", "about 24", Quantity.of("24", "V")));
        walk.refusal(new Observation.Measured("v", "24 mA", Quantity.of("24", "mA")));
        walk.tell(new Observation.Measured("v", "24,1V", Quantity.of("24.1", "V"))).asks("off.supply.off");
    }
}
