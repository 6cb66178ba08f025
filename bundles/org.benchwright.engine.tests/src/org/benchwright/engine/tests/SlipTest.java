package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Answers.volts;
import static org.benchwright.engine.tests.Parts.measure;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A reading that looks like a slip of the decimal point is questioned; the question is on record and changes nothing. */
class SlipTest {

    /** Within 23.5 .. 24.5 V. */
    private static Walk reading() {
        return reading(measure("v", DecisionRule.SIMPLE, rejected("bad"), undecided("x")));
    }

    private static Walk reading(Action measure) {
        return Walk.open(PlanDraft.plan().stage("a", step("supply", measure)).build()).until("supply.v");
    }

    private static Observation.Measured entered(String raw) {
        return new Observation.Measured("v", raw, Quantity.of(raw, "V"));
    }

    @ParameterizedTest
    @CsvSource({"239, 23.9 V", "2.39, 23.9 V", "2390, 23.90 V", "0.239, 23.9 V", "24000, 24.000 V", "0.0241, 24.1 V"})
    void movedByUpToThreePlacesItWouldBeInside(String typed, String meant) {
        assertEquals(Optional.of(meant), reading().run().slipIn(entered(typed)).map(q -> q.instead().toString()));
    }

    @ParameterizedTest
    @CsvSource({"24.0", "23.5", "25.9", "22", "0", "240000", "-24"})
    void whatIsInsideOrSimplyWrongIsNoSlip(String typed) {
        assertEquals(Optional.empty(), reading().run().slipIn(entered(typed)));
    }

    /** At most 5 V: every value would be inside somewhere, so the limit tells nothing. */
    @Test
    void aLimitOnOneSideAloneTellsNothing() {
        Action atMost = new Action.Measure("v", "meter", UnitOfMeasure.of("V"), Limits.atMost(Quantity.of("5", "V")), DecisionRule.SIMPLE,
                Optional.empty(), rejected("bad"), undecided("x"));
        assertEquals(Optional.empty(), reading(atMost).run().slipIn(entered("23")));
    }

    /** At most 5 V, mean of three: the second reading is ten times the first. */
    @Test
    void earlierReadingsOfTheSameCheckTellToo() {
        Action mean = new Action.Measure("v", "meter", UnitOfMeasure.of("V"), Limits.atMost(Quantity.of("5", "V")), DecisionRule.SIMPLE,
                Optional.empty(), rejected("bad"), undecided("x"), Optional.of(new Action.Count(3)), Optional.empty());
        Walk walk = reading(mean).tell(entered("2.31"));
        assertEquals(Optional.of("2.33 V"), walk.run().slipIn(entered("23.3")).map(q -> q.instead().toString()));
        assertEquals(Optional.empty(), walk.run().slipIn(entered("4.9")));
    }

    @Test
    void aGuardedRepeatIsComparedWithItsLimits() {
        Walk walk = reading(Parts.measureAgain("v", 1, Combination.MEAN, rejected("bad"), undecided("x"))).tell(entered("24.48"));
        walk.tell(new Observation.ReasonGiven("v", "Too close.")).asks("supply.v");
        assertEquals(Optional.of("24.3 V"), walk.run().slipIn(entered("243")).map(q -> q.instead().toString()));
    }

    @Test
    void theQuestionIsOnRecordAndTheSameReadingIsTakenThen() {
        Walk walk = reading();
        Fact.Questioned question = walk.run().slipIn(entered("239")).orElseThrow();
        walk.tell(question).asks("supply.v");
        assertEquals(Optional.of(question), walk.run().questioned());
        assertEquals(Optional.empty(), walk.run().slipIn(entered("239")));
        assertEquals(Optional.of("24.1 V"), walk.run().slipIn(entered("241")).map(q -> q.instead().toString()));
        walk.tell(entered("239"));
        assertEquals(Optional.empty(), walk.run().questioned());
        assertEquals("bad", walk.run().reason());
        assertEquals(1, walk.count(Fact.Questioned.class));
    }

    @Test
    void whatWasMeantIsTakenToo() {
        Walk walk = reading();
        walk.tell(walk.run().slipIn(entered("239")).orElseThrow()).tell(volts("v", "23.9")).until("end");
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
    }

    @Test
    void aQuestionThatTheRuleDoesNotAskIsRefused() {
        Fact.Questioned madeUp = new Fact.Questioned("v", "25.9", Quantity.of("25.9", "V"), Quantity.of("23.9", "V"));
        assertEquals("25.9 V does not look like a slip.", reading().refusal(madeUp));
        Fact.Questioned other = new Fact.Questioned("v", "239", Quantity.of("239", "V"), Quantity.of("2.39", "V"));
        assertEquals("239 V does not look like a slip.", reading().refusal(other));
    }
}
