package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Answers.volts;
import static org.benchwright.engine.tests.Parts.branch;
import static org.benchwright.engine.tests.Parts.derive;
import static org.benchwright.engine.tests.Parts.measure;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.evidence.DecisionRule;
import org.junit.jupiter.api.Test;

/** Values that are reckoned from readings, and the uncertainty that they have from those. */
class DerivedValueTest {

    private static final Move BAD = rejected("out of limits");
    private static final Move CLOSE = undecided("Nobody can tell.");
    private static final DecisionRule SIMPLE = DecisionRule.SIMPLE;
    private static final DecisionRule BOTH_WAYS = DecisionRule.GUARDED_BOTH_WAYS;

    private static Expression less(Expression left, Expression right) {
        return new Expression.Difference(left, right);
    }

    private static Expression name(String name) {
        return new Expression.Name(name);
    }

    private static InstrumentSpec instrument(String name, String uncertainty, String unit) {
        return new InstrumentSpec(name, "Instrument", Optional.empty(), Optional.of(Quantity.of(uncertainty, unit)), BigDecimal.valueOf(2));
    }

    private static Derived.Numbers numbers(Walk walk) {
        return walk.last(Derived.CheckDecided.class).numbers().orElseThrow();
    }

    @Test
    void whatWasNotMeasuredOnThisWayLeavesItUndecided() {
        PlanDraft draft = PlanDraft.plan().stage("a",
                step("open", branch("bridged", true, Optional.empty(), Optional.empty()), measure("v", SIMPLE, BAD, CLOSE)),
                step("judge", derive("loss", "open.v", SIMPLE, BAD, CLOSE)));
        Walk passedOver = Walk.open(draft.build()).tell(new Observation.Confirmed("bridged", true));
        Derived.CheckDecided decided = passedOver.last(Derived.CheckDecided.class);
        assertEquals(Outcome.UNDECIDED, decided.outcome());
        assertEquals("loss cannot be reckoned: a value that it needs was not measured on this way", decided.words());
        assertEquals(Optional.of(Verdict.UNDECIDED), passedOver.until("end").run().verdict());
        assertEquals("Nobody can tell.", passedOver.run().reason());
        Walk measured = Walk.open(draft.build()).tell(new Observation.Confirmed("bridged", false)).good().tell(volts("v", "24"));
        assertEquals("23.5 V", numbers(measured).value());
        assertEquals(Optional.of(Verdict.ACCEPTED), measured.until("end").run().verdict());
    }

    /** Errors of two instruments have nothing to do with each other: 0.05 V and 0.12 V make 0.13 V (JCGM 100:2008, 5.1.2). */
    @Test
    void readingsOfTwoInstrumentsAddUpTheirUncertaintiesAsSquares() {
        Action before = measure("before", SIMPLE, BAD, CLOSE);
        Action after = new Action.Measure("after", "scope", UnitOfMeasure.of("V"), Parts.volts("23.5", "24.5"), SIMPLE, Optional.empty(), BAD, CLOSE);
        Action drop = new Action.Derive("drop", less(name("supply.before"), name("supply.after")), Parts.volts("-0.3", "0.3"), BOTH_WAYS, BAD, CLOSE);
        Walk walk = Walk.open(PlanDraft.plan().instrument(instrument("scope", "0.12", "V")).stage("a", step("supply", before, after, drop)).build());
        walk.good().tell(volts("before", "24.2")).good().tell(volts("after", "24.05"));
        assertEquals(new Derived.Numbers("guarded both ways", "0.15 V", "-0.3 .. 0.3 V", "0.13 V", "0.15 V"), numbers(walk));
    }

    /** 2 (v - 0.5 V) + 0.5 V: the reading counts twice, and so does its error. */
    @Test
    void aValueFromAnotherHasTheUncertaintyOfEveryReadingBehindIt() {
        Action first = derive("first", "supply.v", SIMPLE, BAD, CLOSE);
        Action second = new Action.Derive("second", new Expression.Sum(name("supply.first"), name("supply.v")), Parts.volts("47", "48"), BOTH_WAYS, BAD,
                CLOSE);
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("supply", measure("v", SIMPLE, BAD, CLOSE), first, second)).build());
        walk.good().tell(volts("v", "24"));
        assertEquals(new Derived.Numbers("guarded both ways", "47.5 V", "47 .. 48 V", "0.10 V", "0.5 V"), numbers(walk));
    }

    @Test
    void aDifferenceOfTwoTemperaturesIsInKelvin() {
        Action warm = new Action.Measure("warm", "probe", UnitOfMeasure.of("degC"), Parts.room(), SIMPLE, Optional.empty(), BAD, CLOSE);
        Action rise = new Action.Derive("rise", less(name("room.warm"), new Expression.Fixed(Quantity.of("20", "degC"))),
                Limits.atMost(Quantity.of("3", "K")), BOTH_WAYS, BAD, CLOSE);
        Walk walk = Walk.open(PlanDraft.plan().instrument(instrument("probe", "0.5", "K")).stage("a", step("room", warm, rise)).build());
        walk.good().tell(new Observation.Measured("warm", "22.8", Quantity.of("22.8", "degC")));
        assertEquals(new Derived.Numbers("guarded both ways", "2.8 K", "at most 3 K", "0.5 K", "0.2 K"), numbers(walk));
        assertEquals(Outcome.UNDECIDED, walk.last(Derived.CheckDecided.class).outcome());
    }

    @Test
    void whatWasReadInAnotherUnitIsToldInThatOfTheLimits() {
        Action loss = derive("loss", "supply.v", BOTH_WAYS, BAD, CLOSE);
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("supply", measure("v", SIMPLE, BAD, CLOSE), loss)).build()).good();
        walk.tell(new Observation.Measured("v", "24460 mV", Quantity.of("24460", "mV")));
        assertEquals(new Derived.Numbers("guarded both ways", "23.96 V", "23.0 .. 24.0 V", "0.05 V", "0.04 V"), numbers(walk));
        assertEquals("Nobody can tell.", walk.run().reason());
    }
}
