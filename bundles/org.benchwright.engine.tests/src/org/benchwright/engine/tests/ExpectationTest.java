package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.expect;
import static org.benchwright.engine.tests.Parts.from;
import static org.benchwright.engine.tests.Parts.mark;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.releaseBy;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.benchwright.engine.tests.Parts.within;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Fact.ToneGiven.Tone;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.junit.jupiter.api.Test;

/** Deadlines count from a mark: a tone, then the question. */
class ExpectationTest {

    private static final Move DARK = rejected("it stayed dark");

    private static Walk lamps(Action... expectations) {
        Action[] actions = new Action[expectations.length + 2];
        actions[0] = energise("supply");
        actions[1] = mark("on");
        System.arraycopy(expectations, 0, actions, 2, expectations.length);
        return Walk.open(PlanDraft.plan().stage("power_up", step("lamps", actions), step("next", confirm("done"))).build());
    }

    private static Fact tone(String check) {
        return new Fact.ToneGiven(check, Tone.OPENS);
    }

    private static Fact closing(String check) {
        return new Fact.ToneGiven(check, Tone.CLOSES);
    }

    private static Fact seen(String check, Sight answer) {
        return new Observation.Seen(check, answer, "");
    }

    @Test
    void theMarkConfirmsTheSwitchThatComesBeforeIt() {
        Walk walk = lamps(expect("pwr", within("2 s", "on"), DARK)).asks("lamps.on");
        assertEquals(Set.of("supply"), walk.run().live());
        assertEquals(0, walk.count(Fact.Switched.class));
    }

    @Test
    void firstTheToneThenTheQuestion() {
        Walk walk = lamps(expect("pwr", within("2 s", "on"), DARK)).after("1 min").tell(new Fact.Marked("on")).asks("lamps.pwr.tone");
        Demand.AwaitTone asked = assertInstanceOf(Demand.AwaitTone.class, walk.demand());
        assertEquals(Duration.ofSeconds(2), asked.after());
        assertEquals(walk.moment(), asked.marked());
        walk.refusal(seen("pwr", Sight.YES));
        walk.after("2 s").tell(tone("pwr")).asks("lamps.pwr");
        walk.after("10 min").tell(seen("pwr", Sight.YES)).asks("next.done");
        Derived.CheckDecided decided = walk.last(Derived.CheckDecided.class);
        assertEquals(Outcome.CONFORMS, decided.outcome());
        assertEquals("PWR green steady within 2 s of on: as expected", decided.words());
    }

    @Test
    void anEarlyToneIsRefused() {
        Walk walk = lamps(expect("pwr", within("2 s", "on"), DARK)).tell(new Fact.Marked("on")).after("1.999 s");
        assertEquals("It is too early: the time has not passed.", walk.refusal(tone("pwr")));
        walk.after("1 ms").tell(tone("pwr")).asks("lamps.pwr");
    }

    @Test
    void aToneUpToOneSecondLateCountsAndALaterOneVoidsTheCheck() {
        lamps(expect("pwr", within("2 s", "on"), DARK)).tell(new Fact.Marked("on")).after("3 s").tell(tone("pwr")).asks("lamps.pwr");
        Walk late = lamps(expect("pwr", within("2 s", "on"), DARK)).tell(new Fact.Marked("on")).after("3.001 s").tell(tone("pwr"));
        // The step is carried out again, and it switches on what is live: that is switched off first.
        late.asks("lamps.supply.off");
        assertEquals(List.of(DepartureKind.REPEATED), late.departures());
        assertEquals(Outcome.UNDECIDED, late.last(Derived.CheckDecided.class).outcome());
        late.good().asks("lamps.on");
        assertEquals(2, late.last(Derived.StepOpened.class).visit());
    }

    @Test
    void notLookingVoidsAndRepeatsUpToThreeTimes() {
        Walk walk = lamps(expect("pwr", within("2 s", "on"), DARK));
        for (int repeats = 0; repeats < 3; repeats++) {
            walk.until("lamps.pwr").tell(seen("pwr", Sight.NOT_LOOKING)).asks("lamps.supply.off");
            assertEquals(repeats + 1, walk.last(Derived.Repeated.class).count());
        }
        walk.until("lamps.pwr").tell(seen("pwr", Sight.NOT_LOOKING)).asks("off.supply.off");
        walk.good();
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
        assertEquals("Step lamps could not be observed in 3 repeats.", walk.run().reason());
    }

    @Test
    void aLampThatDidNotShowLeadsWhereThePlanSays() {
        Walk walk = lamps(expect("pwr", within("2 s", "on"), DARK)).until("lamps.pwr").tell(new Observation.Seen("pwr", Sight.NO, "red"));
        walk.asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.REJECTED), walk.run().verdict());
        assertEquals("PWR green steady within 2 s of on: not as expected; seen: red", walk.last(Derived.CheckDecided.class).words());
        assertEquals(1, walk.count(Derived.NonconformityNoted.class));
    }

    @Test
    void expectationsOfAStepRunTogetherAndTheirTonesComeInTheOrderOfTheirDeadlines() {
        Walk walk = lamps(expect("ok", within("10 s", "on"), DARK), expect("pwr", within("2 s", "on"), DARK),
                expect("flt", from("5 s", "on", "7 s"), DARK)).tell(new Fact.Marked("on"));
        walk.asks("lamps.pwr.tone").after("2 s").tell(tone("pwr"));
        walk.asks("lamps.flt.tone").after("3 s").tell(tone("flt"));
        walk.asks("lamps.ok.tone");
        // The answer to a tone that has sounded is taken while the others are still to come.
        walk.tell(seen("pwr", Sight.YES)).asks("lamps.ok.tone");
        walk.refusal(seen("pwr", Sight.NO));
        walk.refusal(seen("flt", Sight.YES));
        walk.after("5 s").tell(tone("ok")).asks("lamps.flt.tone").after("2 s").tell(closing("flt")).asks("lamps.ok");
        walk.tell(seen("flt", Sight.YES)).tell(seen("ok", Sight.YES)).asks("next.done");
    }

    @Test
    void whatLastsHasTwoTonesTheClosingOneNotEarly() {
        Walk walk = lamps(expect("flt", from("10 s", "on", "5 s"), DARK)).tell(new Fact.Marked("on")).after("10 s");
        walk.refusal(closing("flt"));
        walk.tell(tone("flt")).asks("lamps.flt.tone").after("4 s");
        walk.refusal(closing("flt"));
        walk.after("1 s").tell(closing("flt")).asks("lamps.flt");
    }

    @Test
    void deadlinesOfSeveralMarksComeInTheOrderInWhichTheyFallDue() {
        Walk walk = Walk.open(PlanDraft.plan().stage("start", step("turn", mark("first"), mark("second"),
                expect("b", within("5 s", "second"), DARK), expect("a", within("6 s", "first"), DARK))).build());
        walk.tell(new Fact.Marked("first")).after("4 s").tell(new Fact.Marked("second"));
        walk.asks("turn.a.tone").after("2 s").tell(tone("a")).asks("turn.b.tone").after("3 s").tell(tone("b")).asks("turn.b");
    }

    @Test
    void everyFailureOfAGroupLeadsWhereThePlanSaysAlsoAfterARelease() {
        Walk walk = lamps(expect("a", within("2 s", "on"), releaseBy(Role.SUPERVISOR)), expect("b", within("2 s", "on"), DARK));
        walk.until("lamps.a").tell(seen("a", Sight.NO)).tell(seen("b", Sight.NO)).asks("lamps.a.release");
        walk.good().asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.REJECTED), walk.run().verdict());
        assertEquals("it stayed dark", walk.run().reason());
    }

    @Test
    void aReleasedFailureDoesNotMakeAnUnseenCheckSeen() {
        Walk walk = lamps(expect("a", within("2 s", "on"), releaseBy(Role.SUPERVISOR)), expect("b", within("2 s", "on"), DARK));
        walk.until("lamps.a").tell(seen("a", Sight.NO)).tell(seen("b", Sight.NOT_LOOKING)).asks("lamps.a.release");
        walk.good().asks("lamps.supply.off");
        assertEquals("b", walk.all(Derived.CheckDecided.class).stream().filter(d -> d.outcome() == Outcome.UNDECIDED).findFirst()
                .orElseThrow().check());
    }

    @Test
    void afterReleasesOfAllFailuresTheStepGoesOn() {
        Walk walk = lamps(expect("a", within("2 s", "on"), releaseBy(Role.SUPERVISOR)),
                expect("b", within("2 s", "on"), releaseBy(Role.SECOND_PERSON)));
        walk.until("lamps.a").tell(seen("a", Sight.NO)).tell(seen("b", Sight.NO));
        walk.asks("lamps.a.release").good().asks("lamps.b.release").good().asks("next.done");
        assertEquals(Outcome.RELEASED, walk.last(Derived.StepDecided.class).outcome());
        assertEquals(List.of(DepartureKind.RELEASED, DepartureKind.RELEASED), walk.departures());
    }

    @Test
    void deadlinesCountByTheMonotonicClock() {
        Walk walk = lamps(expect("pwr", within("2 s", "on"), undecided("x"))).tell(new Fact.Marked("on"));
        walk.stepWallClock(Duration.ofHours(3));
        assertEquals("It is too early: the time has not passed.", walk.refusal(tone("pwr")));
        walk.after("2 s").tell(tone("pwr")).asks("lamps.pwr");
        assertTrue(walk.departures().contains(DepartureKind.CLOCK_CHANGED));
    }
}
