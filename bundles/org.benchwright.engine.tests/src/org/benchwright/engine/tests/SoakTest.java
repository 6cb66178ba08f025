package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.beginAgain;
import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.end;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.faultLog;
import static org.benchwright.engine.tests.Parts.goTo;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.SoakAttempt;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.SoakStage;
import org.junit.jupiter.api.Test;

/** A soak of 72 h observed by looks every 24 h, 2 h of tolerance: common practice, no published source. */
class SoakTest {

    private static final Move TO_LOG = goTo("read_log", "log");
    private static final Move AGAIN = beginAgain(1, undecided("Stopped outside conditions twice."));
    private static final Optional<SoakStage.Gap> GAP = Optional
            .of(new SoakStage.Gap(Duration.ofHours(2), beginAgain(1, undecided("Too long unwitnessed."))));

    private static PlanDraft draft(Optional<SoakStage.Gap> gap) {
        return PlanDraft.plan().stage("power_up", step("on", energise("supply"), confirm("lit"))).soak("endurance", TO_LOG, AGAIN, gap)
                .onDemand("read_log", step("log", faultLog("lines"), end("stop", rejected("Stopped by itself."))));
    }

    private static Walk soaking() {
        return Walk.open(draft(GAP).build()).until("endurance.begin").good().asks("endurance.look");
    }

    private static Walk looks(Walk walk, Sight answer, boolean insideConditions) {
        return walk.tell(Answers.look(asked(walk).soak(), answer, insideConditions));
    }

    /** Somebody takes the test up again and says that power was lost: the stop is not forgotten for it. */
    @Test
    void aStopIsNotUndoneByALossOfPowerWhileItIsLookedInto() {
        Walk walk = looks(soaking().after("24 h"), Sight.NO, true).asks("log.lines");
        walk.interrupt("1 min").asks("power").tell(new Fact.PowerAnswered(false)).until("end");
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
        assertTrue(walk.run().reason().startsWith("Power was lost in stage"), walk.run().reason());
    }

    /** A good look at this very moment, due or not. */
    private static Walk look(Walk walk, String after) {
        return looks(walk.after(after), Sight.YES, true);
    }

    private static Demand.Look asked(Walk walk) {
        return assertInstanceOf(Demand.Look.class, walk.demand());
    }

    @Test
    void theFirstLookBeginsIt() {
        Walk walk = Walk.open(draft(GAP).build()).until("endurance.begin");
        assertTrue(asked(walk).begins());
        assertFalse(walk.run().onSoak());
        walk.after("5 h").good();
        assertEquals(new Derived.SoakBegun("endurance", 1, Duration.ofHours(24)), walk.last(Derived.SoakBegun.class));
        assertTrue(walk.run().onSoak());
        assertEquals(Duration.ZERO, walk.run().witnessed());
        assertEquals(walk.moment(), asked(walk).since());
    }

    @Test
    void timeBetweenGoodLooksIsWitnessedWhereAStopStays() {
        Walk walk = look(soaking(), "24 h");
        assertEquals(new Derived.SoakWitnessed("endurance", Duration.ofHours(24), Duration.ofHours(24)), walk.last(Derived.SoakWitnessed.class));
        look(walk, "24 h");
        assertEquals(Duration.ofHours(48), walk.run().witnessed());
        look(walk, "23 h 59 min").asks("endurance.look");
        assertEquals(Duration.ofMinutes(1), asked(walk).due());
        look(walk, "1 min").asks("off.supply.off");
        Derived.SoakEnded ended = walk.last(Derived.SoakEnded.class);
        assertEquals(Outcome.CONFORMS, ended.outcome());
        // 72 h / -ln(1 - 0.9) = 31.27 h, rounded down: chi-square with no failure, NIST/SEMATECH e-Handbook 8.3.1.2 (from memory).
        assertEquals("72 h without a stop: would have revealed, with 90 % probability, any fault that stops a unit at least once in 31 h "
                + "on average", ended.words());
        walk.good();
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
        assertTrue(walk.departures().isEmpty());
    }

    @Test
    void aLookThatWasASlipStopsNothing() {
        Walk walk = looks(look(soaking(), "24 h").after("1 h"), Sight.NO, true).asks("log.lines");
        walk.strike().asks("endurance.look");
        SoakAttempt going = new SoakAttempt("endurance", true, Duration.ofHours(24), Optional.empty(), false, Optional.empty(), Optional.empty());
        assertEquals(List.of(going), SoakAttempt.of(walk.run()));
    }

    @Test
    void anEarlyLookCountsAndMovesTheNextOne() {
        Walk walk = look(soaking(), "6 h");
        assertEquals(Duration.ofHours(6), walk.run().witnessed());
        assertEquals(Duration.ofHours(24), asked(walk).due());
        assertTrue(walk.departures().isEmpty());
    }

    @Test
    void aLookLaterThanItsToleranceIsADepartureWhateverItShows() {
        assertTrue(look(soaking(), "26 h").departures().isEmpty());
        Walk late = look(soaking(), "26 h 1 s");
        assertEquals(List.of(DepartureKind.LATE_LOOK), late.departures());
        assertEquals(Duration.ofHours(26).plusSeconds(1), late.run().witnessed(), "a late look costs no evidence where a stop stays");
        Walk stopped = looks(soaking().after("30 h"), Sight.NO, true);
        assertEquals(List.of(DepartureKind.LATE_LOOK), stopped.departures());
    }

    @Test
    void aLookThatNobodyTookIsADepartureHoweverTheSoakEnds() {
        Walk inTime = soaking().after("25 h").interrupt("1 h").tell(new Fact.PowerAnswered(false));
        assertTrue(inTime.departures().isEmpty());
        Walk powerLost = soaking().after("60 h").interrupt("1 h").tell(new Fact.PowerAnswered(false));
        assertEquals(List.of(DepartureKind.LATE_LOOK), powerLost.departures());
        assertEquals("no look was taken, 37 h later than one was due; tolerance 2 h", powerLost.last(Derived.DepartureNoted.class).words());
        Walk abandoned = soaking().after("60 h").tell(new Fact.Abandoned("bench needed"));
        assertEquals(List.of(DepartureKind.ABANDONED, DepartureKind.LATE_LOOK), abandoned.departures());
    }

    @Test
    void aStopIsKnownToLieBetweenTwoLooks() {
        Walk walk = looks(look(soaking(), "24 h").after("20 h"), Sight.NO, true).asks("log.lines");
        Derived.SoakEnded ended = walk.last(Derived.SoakEnded.class);
        assertEquals(Outcome.DOES_NOT_CONFORM, ended.outcome());
        assertEquals(Duration.ofHours(24), ended.witnessed());
        assertEquals("not in mode run: it stopped between 24 h and 44 h of the soak", ended.words());
        assertEquals(List.of(new SoakAttempt("endurance", true, Duration.ofHours(24), Optional.of(Duration.ofHours(44)), false,
                Optional.of(Outcome.DOES_NOT_CONFORM), Optional.empty())), SoakAttempt.of(walk.run()));
        assertFalse(walk.run().onSoak());
        walk.good().asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.REJECTED), walk.run().verdict());
    }

    @Test
    void aStopOutsideConditionsIsNotChargedToTheUnit() {
        Walk walk = looks(soaking().after("24 h"), Sight.NO, false).asks("endurance.begin");
        assertEquals(List.of(DepartureKind.OUTSIDE_CONDITIONS), walk.departures());
        walk.good().asks("endurance.look");
        assertEquals(2, walk.last(Derived.SoakBegun.class).attempt());
        assertEquals(Duration.ZERO, walk.run().witnessed());
        looks(walk.after("24 h"), Sight.NO, false).asks("off.supply.off");
        assertEquals("Stopped outside conditions twice.", walk.run().reason());
        assertEquals(0, walk.count(Derived.NonconformityNoted.class));
        SoakAttempt notTheUnits = new SoakAttempt("endurance", true, Duration.ZERO, Optional.empty(), true,
                Optional.of(Outcome.DOES_NOT_CONFORM), Optional.empty());
        assertEquals(List.of(notTheUnits, notTheUnits), SoakAttempt.of(walk.run()), "each attempt on its own");
    }

    @Test
    void aGoodLookOutsideConditionsIsADepartureAndCounts() {
        Walk walk = looks(soaking().after("24 h"), Sight.YES, false);
        assertEquals(List.of(DepartureKind.OUTSIDE_CONDITIONS), walk.departures());
        assertEquals(Duration.ofHours(24), walk.run().witnessed());
    }

    @Test
    void aUnitThatDoesNotRunAtFirstNeverBeganAndIsNotChargedOutsideConditions() {
        Walk charged = looks(Walk.open(draft(GAP).build()).until("endurance.begin"), Sight.NO, true).asks("log.lines");
        assertEquals("the unit did not show mode run, so the soak could not begin", charged.last(Derived.SoakEnded.class).words());
        looks(Walk.open(draft(GAP).build()).until("endurance.begin"), Sight.NO, false).asks("endurance.begin");
    }

    @Test
    void aLookNeedsEyesAndReadings() {
        Walk walk = soaking();
        SoakStage soak = asked(walk).soak();
        assertEquals("A look that nobody took is no look. Look at the unit, then enter what it shows.",
                walk.refusal(Answers.look(soak, Sight.NOT_LOOKING, true)));
        walk.refusal(new Observation.Looked("endurance", Sight.YES, "", List.of()));
        walk.refusal(new Observation.Looked("endurance", Sight.YES, "",
                List.of(new Observation.ConditionReading("supply", "20", Quantity.of("20", "degC")))));
        walk.refusal(new Observation.Looked("endurance", Sight.YES, "",
                List.of(new Observation.ConditionReading("ambient", "20 V", Quantity.of("20", "V")))));
        walk.refusal(new Observation.Looked("endurance", Sight.YES, "",
                List.of(new Observation.ConditionReading("ambient", "20", Quantity.of("27", "degC")))));
        walk.refusal(new Observation.Looked("other", Sight.YES, "", List.of()));
    }

    // ---- families whose stop does not stay

    @Test
    void whereAStopDoesNotStayLooksWitnessNothingAndTheSoakEndsUndecided() {
        Walk walk = Walk.open(draft(Optional.empty()).restartsByItself().build()).until("endurance.begin").good();
        look(look(walk, "24 h"), "24 h");
        assertEquals(Duration.ZERO, walk.run().witnessed());
        assertEquals(Duration.ofHours(24), asked(walk).due());
        look(walk, "24 h").asks("off.supply.off").good();
        assertEquals(Outcome.UNDECIDED, walk.last(Derived.SoakEnded.class).outcome());
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
        assertTrue(walk.run().reason().startsWith("only 0 s of 72 h count as evidence"), walk.run().reason());
    }

    @Test
    void whereAStopDoesNotStayAGapLeadsWhereThePlanSays() {
        Walk walk = Walk.open(draft(GAP).restartsByItself().build()).until("endurance.begin").good();
        look(look(walk, "2 h").asks("endurance.look"), "2 h 1 s").asks("endurance.begin");
        look(walk.good(), "3 h").asks("off.supply.off");
        assertEquals("Too long unwitnessed.", walk.run().reason());
    }

    // ---- interruptions

    @Test
    void theProcessNeedNotRunForTimeToBeWitnessed() {
        Walk walk = soaking().after("1 h").interrupt("23 h").asks("power").tell(new Fact.PowerAnswered(true)).asks("endurance.look");
        looks(walk, Sight.YES, true);
        assertEquals(Duration.ofHours(24), walk.run().witnessed());
        assertTrue(walk.departures().isEmpty());
    }

    @Test
    void aClockThatSomebodySetsWitnessesNothing() {
        Walk walk = soaking().after("1 h").stepWallClock(Duration.ofHours(70)).interrupt("1 h").tell(new Fact.PowerAnswered(true));
        looks(walk, Sight.YES, true);
        assertEquals(Duration.ofHours(2), walk.run().witnessed());
    }

    /** Reminders and lists have the wall's time alone: a look is due by the clock that hangs there now. */
    @Test
    void aLookIsDueByTheWallClockAsItWasSet() {
        for (Duration step : List.of(Duration.ofHours(10), Duration.ofHours(-5))) {
            Walk walk = look(soaking(), "24 h").after("1 h").stepWallClock(step);
            assertEquals(walk.moment().instant().plus(Duration.ofHours(23)), due(asked(walk)));
            walk.after("2 h").interrupt("1 h").asks("power");
            assertEquals(walk.moment().instant().plus(Duration.ofHours(20)), due(walk.run().lookToCome().orElseThrow()));
            look(walk.tell(new Fact.PowerAnswered(true)), "1 h");
            assertEquals(walk.moment().instant().plus(Duration.ofHours(24)), due(asked(walk)), "a step before a look is over with it");
        }
    }

    private static Instant due(Demand.Look look) {
        return look.since().instant().plus(look.due());
    }

    /** When it was found stopped is told by the sitting's clock, too, where figures ask for it. */
    @Test
    void aClockThatSomebodySetsMovesNoStop() {
        for (Duration step : List.of(Duration.ofHours(70), Duration.ofHours(-30))) {
            Walk walk = look(soaking(), "24 h").after("30 min").stepWallClock(step).after("30 min");
            looks(walk, Sight.NO, true).asks("log.lines");
            assertEquals("not in mode run: it stopped between 24 h and 25 h of the soak", walk.last(Derived.SoakEnded.class).words());
            assertEquals(Optional.of(Duration.ofHours(25)), SoakAttempt.of(walk.run()).get(0).stoppedBy());
        }
        Walk later = look(soaking(), "24 h").after("30 min").stepWallClock(Duration.ofHours(70)).interrupt("2 h").tell(new Fact.PowerAnswered(true));
        looks(later, Sight.NO, true).asks("log.lines");
        assertEquals(Optional.of(Duration.ofHours(26).plusMinutes(30)), SoakAttempt.of(later.run()).get(0).stoppedBy());
    }

    @Test
    void afterALossOfPowerTheSoakBeginsAgainFromPowerUpWithinItsBound() {
        Walk walk = soaking().after("30 h").interrupt("1 h").tell(new Fact.PowerAnswered(false));
        assertEquals(Outcome.UNDECIDED, walk.last(Derived.SoakEnded.class).outcome());
        walk.asks("on.supply.off").good().asks("on.supply.on").good().good().asks("endurance.begin").good();
        assertEquals(2, walk.last(Derived.SoakBegun.class).attempt());
        walk.interrupt("1 h").tell(new Fact.PowerAnswered(false)).asks("off.supply.off");
        assertEquals("Too long unwitnessed.", walk.run().reason());
    }

    @Test
    void withoutAWordAboutGapsALossOfPowerLeavesTheTestUndecided() {
        Walk walk = Walk.open(draft(Optional.empty()).build()).until("endurance.begin").good().after("30 h").interrupt("1 h");
        walk.tell(new Fact.PowerAnswered(false)).asks("off.supply.off");
        assertEquals("power was lost after 0 s of the soak", walk.run().reason());
    }

    @Test
    void aGapNeverLeadsToAStageThatAssumesALiveUnit() {
        Optional<SoakStage.Gap> toLog = Optional.of(new SoakStage.Gap(Duration.ofHours(2), TO_LOG));
        Walk walk = Walk.open(draft(toLog).build()).until("endurance.begin").good().interrupt("1 h").tell(new Fact.PowerAnswered(false));
        walk.asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
    }

    @Test
    void aSoakAsksForPowerEvenWhereThePlanSwitchedNothing() {
        Walk walk = Walk.open(PlanDraft.plan().soak("endurance", rejected("stopped"), rejected("stopped"), Optional.empty()).build()).good();
        walk.interrupt("1 h").asks("power").tell(new Fact.PowerAnswered(true)).asks("endurance.look");
    }

    @Test
    void abandoningItEndsItUndecided() {
        Walk walk = soaking().after("10 h").tell(new Fact.Abandoned("bench needed"));
        assertEquals(Outcome.UNDECIDED, walk.last(Derived.SoakEnded.class).outcome());
        assertFalse(walk.run().onSoak());
        walk.asks("off.supply.off");
    }

    @Test
    void goingToASoakBeginsItAnew() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("on", energise("supply")))
                .soak("endurance", rejected("stopped"), rejected("stopped"), Optional.empty())
                .stage("b", step("check", confirm("x", goTo("endurance", "", 1, undecided("twice"))))).build());
        walk.until("check.x").tell(new Observation.Confirmed("x", false)).asks("endurance.begin").good();
        assertEquals(2, walk.last(Derived.SoakBegun.class).attempt());
        walk.until("check.x").tell(new Observation.Confirmed("x", false)).asks("off.supply.off");
    }
}
