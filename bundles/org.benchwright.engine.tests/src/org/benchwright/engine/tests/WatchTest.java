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
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.SoakAttempt;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.WatchStanding;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.event.WatchFact.Sampled;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.SoakStage;
import org.junit.jupiter.api.Test;

/** A soak of 72 h that a watch looks at every 10 s; two bad samples are a stop, three missed ones silence. */
class WatchTest {

    private static final WatchFact.Watcher FIRST = new WatchFact.Watcher(1, false);
    private static final WatchFact.Watcher SECOND = new WatchFact.Watcher(2, false);
    private static final SoakStage.Watch EVERY_10_S = new SoakStage.Watch(Duration.ofSeconds(10), 2, 3, Optional.of("looks"));
    private static final Move TO_LOG = goTo("read_log", "log");
    private static final Move AGAIN = beginAgain(1, undecided("Stopped outside conditions twice."));
    private static final Optional<SoakStage.Gap> GAP = Optional
            .of(new SoakStage.Gap(Duration.ofHours(2), beginAgain(1, undecided("Too long unwitnessed."))));

    private Walk walk;
    private Instant began;

    private static PlanDraft draft(Optional<SoakStage.Watch> watch, Optional<SoakStage.Gap> gap) {
        SoakStage looked = PlanDraft.soakStage("endurance", Duration.ofHours(72), List.of(), gap, TO_LOG, AGAIN);
        SoakStage soak = watch.map(asked -> PlanDraft.watched(looked, asked)).orElse(looked);
        return PlanDraft.plan().stage("power_up", step("on", energise("supply"), confirm("lit"))).stage(soak)
                .onDemand("read_log", step("log", faultLog("lines"), end("stop", rejected("Stopped by itself."))));
    }

    /** A unit that restarts by itself, on soak. */
    private void restarting(Optional<SoakStage.Gap> gap) {
        on(Walk.open(draft(Optional.of(EVERY_10_S), gap).restartsByItself().build()));
    }

    private void latching() {
        on(Walk.open(draft(Optional.of(EVERY_10_S), GAP).build()));
    }

    private void on(Walk open) {
        walk = open.until("endurance.begin").good();
        began = walk.moment().instant();
    }

    // ---- what a watch tells; its clock began with the soak

    private Sampled at(Duration time) {
        return new Sampled(began.plus(time), time, Optional.empty());
    }

    private Sampled at(String time) {
        return at(Parts.duration(time));
    }

    /** The watch tells it at that time of the soak: the wall goes on, the sitting's own clock stands. */
    private void told(String time, Fact fact) {
        told(walk, Parts.duration(time), fact);
    }

    private void told(Walk at, Duration time, Fact fact) {
        at.wallTo(began.plus(time));
        at.tell(fact, Walk.WATCH);
    }

    private static Fact sees(WatchFact.Watcher by, Sampled at) {
        return new WatchFact.Sees("endurance", by, "modbus 192.0.2.7:502 unit 1", at);
    }

    private static Fact held(WatchFact.Watcher by, Sampled from, Sampled to) {
        long samples = to.offset().minus(from.offset()).toSeconds() / 10 + 1;
        return new WatchFact.Held("endurance", by, from, to, samples, 0, List.of());
    }

    private static Fact changed(WatchFact.Watcher by, Sampled lastGood, Sampled firstBad, int bad) {
        return new WatchFact.Changed("endurance", by, Optional.of(lastGood), firstBad, bad, "mode run: input 3 off");
    }

    private Fact condition(boolean inside, String before, String after, String value) {
        return new WatchFact.ConditionCrossed("endurance", FIRST, "ambient", inside, Optional.of(at(before)), at(after), Quantity.of(value, "degC"));
    }

    private static Fact silent(WatchFact.Watcher by, Sampled last) {
        return new WatchFact.Silent("endurance", by, Optional.of(last), "connection refused");
    }

    private String refused(String time, Fact fact) {
        walk.wallTo(began.plus(Parts.duration(time)));
        return walk.refusal(fact, Walk.WATCH);
    }

    /** Somebody looks, that long after the last event of the sitting. */
    private void lookAfter(String time) {
        walk.wallTo(began).after(time);
        look();
    }

    private void look() {
        walk.tell(Answers.look(assertInstanceOf(Demand.Look.class, walk.demand()).soak(), Observation.Sight.YES, true));
    }

    private SoakAttempt attempt() {
        List<SoakAttempt> all = SoakAttempt.of(walk.run());
        return all.get(all.size() - 1);
    }

    @Test
    void aWaitBehindAStopThatAWatchToldIsCountedFromThenByTheSittingsClock() {
        SoakStage watched = (SoakStage) draft(Optional.of(EVERY_10_S), GAP).build().stages().get(1);
        on(Walk.open(PlanDraft.plan().stage("power_up", step("on", energise("supply"), confirm("lit"))).stage(watched)
                .onDemand("read_log", step("log", Parts.pause("cool", "5 min"), faultLog("lines"), end("stop", rejected("Stopped by itself.")))).build()));
        told("0 s", sees(FIRST, at("0 s")));
        told("20 h", changed(FIRST, at("19 h 59 min 40 s"), at("19 h 59 min 50 s"), 2));
        // The window was open all the time, so its own clock went on as well.
        walk.wallTo(began).after("20 h 1 min");
        Demand.AwaitTime wait = assertInstanceOf(Demand.AwaitTime.class, walk.demand());
        assertEquals(Duration.ofMinutes(1), walk.moment().since(wait.began()), "what a countdown shows");
        walk.after("3 min 59 s");
        walk.refusal(new Fact.WaitElapsed("cool"));
        walk.after("1 s").good().asks("log.lines");
    }

    // ---- what counts

    @Test
    void whatAWatchSeesIsEvidenceWithoutALatchingStop() {
        restarting(Optional.empty());
        told("10 s", sees(FIRST, at("10 s")));
        assertEquals(Duration.ZERO, walk.run().witnessed());
        told("40 h", held(FIRST, at("10 s"), at("40 h")));
        assertEquals(Duration.ofHours(40).minusSeconds(10), walk.run().witnessed());
        told("72 h 10 s", held(FIRST, at("40 h"), at("72 h 10 s")));
        Derived.SoakEnded ended = walk.last(Derived.SoakEnded.class);
        assertEquals(Outcome.CONFORMS, ended.outcome());
        assertEquals(Duration.ofHours(72), ended.witnessed());
        walk.asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
        assertTrue(walk.departures().isEmpty());
    }

    @Test
    void silenceIsNotEvidenceAndIsTold() {
        restarting(Optional.empty());
        told("0 s", sees(FIRST, at("0 s")));
        told("10 h", held(FIRST, at("0 s"), at("10 h")));
        told("10 h 30 s", silent(FIRST, at("10 h")));
        told("10 h 20 min", sees(FIRST, at("10 h 20 min")));
        told("72 h", held(FIRST, at("10 h 20 min"), at("72 h")));
        assertEquals(Duration.ofHours(72).minusMinutes(20), walk.run().witnessed());
        assertEquals(Optional.of(new SoakAttempt.Watching(Duration.ofHours(72).minusMinutes(20), Duration.ofMinutes(20))), attempt().watching());
        told("72 h 20 min", held(FIRST, at("72 h"), at("72 h 20 min")));
        assertEquals(Outcome.CONFORMS, walk.last(Derived.SoakEnded.class).outcome());
    }

    @Test
    void aLookBridgesSilenceOnlyWhereAStopStays() {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("10 h", held(FIRST, at("0 s"), at("10 h")));
        told("10 h 30 s", silent(FIRST, at("10 h")));
        lookAfter("24 h");
        assertEquals(Duration.ofHours(24), walk.run().witnessed());
        restarting(Optional.empty());
        told("0 s", sees(FIRST, at("0 s")));
        told("10 h", held(FIRST, at("0 s"), at("10 h")));
        told("10 h 30 s", silent(FIRST, at("10 h")));
        lookAfter("24 h");
        assertEquals(Duration.ofHours(10), walk.run().witnessed());
    }

    @Test
    void watchedHoursAndLooksAreNotCountedTwice() {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("20 h", held(FIRST, at("0 s"), at("20 h")));
        lookAfter("24 h");
        assertEquals(Duration.ofHours(24), walk.run().witnessed());
        told("30 h", held(FIRST, at("24 h"), at("30 h")));
        assertEquals(Duration.ofHours(30), walk.run().witnessed());
    }

    @Test
    void noLookIsDueWhileTheWatchSees() {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("40 h", held(FIRST, at("0 s"), at("40 h")));
        Demand.Look look = assertInstanceOf(Demand.Look.class, walk.demand());
        assertEquals(Duration.ofHours(64), look.due(), "24 h after it was last seen");
        lookAfter("66 h");
        assertTrue(walk.departures().isEmpty());
    }

    @Test
    void aGapLongerThanIsBorneLeadsWhereTheProcedureSays() {
        restarting(GAP);
        told("0 s", sees(FIRST, at("0 s")));
        told("10 h", held(FIRST, at("0 s"), at("10 h")));
        told("10 h 30 s", silent(FIRST, at("10 h")));
        told("12 h 10 s", sees(FIRST, at("12 h 10 s")));
        walk.asks("endurance.begin");
        assertEquals("the watch did not see it for 2 h 10 s; at most 2 h unwitnessed are borne, and a unit of this family may stop and start "
                + "again unseen", walk.last(Derived.SoakEnded.class).words());
    }

    // ---- stops

    @Test
    void aStopLiesBetweenTwoSamplesAndOpensTheFaultStage() {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("31 h", held(FIRST, at("0 s"), at("31 h")));
        told("31 h 20 s", changed(FIRST, at("31 h"), at("31 h 10 s"), 2));
        walk.asks("log.lines");
        assertEquals("not in mode run: the watch saw it stop between 31 h and 31 h 10 s of the soak", walk.last(Derived.SoakEnded.class).words());
        assertEquals(Optional.of(Duration.ofHours(31).plusSeconds(10)), attempt().stoppedBy());
        assertTrue(attempt().stopped());
        walk.after("50 h").good().asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.REJECTED), walk.run().verdict());
    }

    @Test
    void oneBadSampleIsNoStopWhereTwoAreAskedFor() {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("1 h", held(FIRST, at("0 s"), at("1 h")));
        told("1 h 20 s", changed(FIRST, at("1 h"), at("1 h 10 s"), 1));
        walk.asks("endurance.look");
        told("2 h", held(FIRST, at("1 h 20 s"), at("2 h")));
        assertEquals(Duration.ofHours(2).minusSeconds(20), walk.run().witnessed());
    }

    @Test
    void aUnitThatIsFoundStoppedAfterSilenceStoppedSometimeInIt() {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("5 h", held(FIRST, at("0 s"), at("5 h")));
        Sampled found = new Sampled(began.plus(Duration.ofHours(7)), Duration.ZERO, Optional.empty());
        told("7 h 10 s", new WatchFact.Changed("endurance", SECOND, Optional.empty(), found, 2, "mode run: input 3 off"));
        walk.asks("log.lines");
        assertEquals("not in mode run: the watch saw it stop between 5 h and 7 h of the soak", walk.last(Derived.SoakEnded.class).words());
        assertEquals(Optional.of(Duration.ofHours(7)), attempt().stoppedBy());
    }

    // ---- conditions

    @Test
    void anOrderIsClaimedOnlyWhereTheIntervalsDoNotOverlap() {
        latching();
        assertEquals("; ambient had left its limits before", stopped(condition(false, "59 min", "1 h", "31"), true));
        assertEquals("; ambient left its limits after that", stopped(condition(false, "1 h 10 s", "1 h 20 s", "31"), false));
        assertEquals("; whether ambient left its limits before or after that cannot be told",
                stopped(condition(false, "1 h", "1 h 10 s", "31"), true));
    }

    /** The unit stops between 1 h and 1 h 10 s; what is said about the condition. */
    private String stopped(Fact outside, boolean notTheUnits) {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("1 h", held(FIRST, at("0 s"), at("1 h")));
        told("1 h 20 s", outside);
        told("1 h 20 s", changed(FIRST, at("1 h"), at("1 h 10 s"), 2));
        assertEquals(notTheUnits, attempt().outside());
        walk.asks(notTheUnits ? "endurance.begin" : "log.lines");
        String words = walk.last(Derived.SoakEnded.class).words();
        return words.substring(words.indexOf("of the soak") + "of the soak".length());
    }

    @Test
    void aConditionThatCameBackBeforeTheStopExcusesNothing() {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("10 min", condition(false, "9 min", "10 min", "31"));
        told("20 min", condition(true, "19 min", "20 min", "27"));
        told("1 h", held(FIRST, at("0 s"), at("1 h")));
        told("1 h 20 s", changed(FIRST, at("1 h"), at("1 h 10 s"), 2));
        walk.asks("log.lines");
        assertEquals(List.of(DepartureKind.OUTSIDE_CONDITIONS), walk.departures());
        assertTrue(attempt().stopped());
    }

    @Test
    void aWatchThatNeverSawTheUnitSaysSoAndWhatItReadsCounts() {
        latching();
        told("30 s", new WatchFact.Silent("endurance", FIRST, Optional.empty(), "connection refused"));
        assertEquals("connection refused", WatchStanding.of(walk.run()).orElseThrow().why());
        Sampled found = at("1 h");
        told("1 h", new WatchFact.ConditionCrossed("endurance", FIRST, "ambient", false, Optional.empty(), found, Quantity.of("31", "degC")));
        told("1 h 10 s", new WatchFact.Changed("endurance", FIRST, Optional.empty(), found, 2, "mode run: input 3 off"));
        walk.asks("endurance.begin");
        assertTrue(walk.last(Derived.SoakEnded.class).words().endsWith("; whether ambient left its limits before or after that cannot be told"));
    }

    // ---- two clocks

    @Test
    void aWatchDoesNotMoveTheSittingsClock() {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("59 min", held(FIRST, at("0 s"), at("59 min")));
        walk.wallTo(began).after("1 h").interrupt("40 h").tell(new Fact.PowerAnswered(true));
        look();
        assertEquals(Duration.ofHours(41), walk.run().witnessed(), "1 h in the first sitting, 40 h by wall time");
    }

    /** The watch begins another run when somebody puts the wall clock forward by 10 h, before the sitting has noticed. */
    @Test
    void aWallClockThatIsPutForwardWitnessesNothingAndDelaysNothing() {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("1 h", held(FIRST, at("0 s"), at("1 h")));
        told("11 h", sees(SECOND, new Sampled(began.plus(Duration.ofHours(11)), Duration.ZERO, Optional.empty())));
        walk.wallTo(began).after("2 h").stepWallClock(Duration.ofHours(10));
        assertEquals(Duration.ofHours(26), assertInstanceOf(Demand.Look.class, walk.demand()).due(), "24 h from now");
        look();
        assertEquals(Duration.ofHours(2), walk.run().witnessed());
        walk.strike();
        assertEquals(Duration.ofHours(26), assertInstanceOf(Demand.Look.class, walk.demand()).due(), "after a slip, too");
        look();
        assertEquals(Duration.ofHours(2), walk.run().witnessed());
    }

    // ---- looks that nobody takes

    /** A procedure may ask for looks whether or not something watches: each is owed then. */
    private void looksAreOwed() {
        SoakStage.Watch besides = new SoakStage.Watch(Duration.ofSeconds(10), 2, 3, Optional.empty());
        on(Walk.open(draft(Optional.of(besides), GAP).build()));
        told("0 s", sees(FIRST, at("0 s")));
    }

    @Test
    void aWatchThatSawTheSoakToItsEndDoesNotHideThatNobodyLooked() {
        looksAreOwed();
        told("25 h 59 min", held(FIRST, at("0 s"), at("25 h 59 min")));
        assertTrue(walk.departures().isEmpty(), "somebody may come yet");
        told("72 h", held(FIRST, at("25 h 59 min"), at("72 h")));
        assertEquals(Outcome.CONFORMS, walk.last(Derived.SoakEnded.class).outcome());
        assertEquals(List.of(DepartureKind.LATE_LOOK), walk.departures());
        assertEquals("no look was taken, 48 h later than one was due; tolerance 2 h", walk.last(Derived.DepartureNoted.class).words());
    }

    @Test
    void aStopThatAWatchToldDoesNotHideThatNobodyLooked() {
        looksAreOwed();
        told("60 h", held(FIRST, at("0 s"), at("60 h")));
        told("60 h 20 s", changed(FIRST, at("60 h"), at("60 h 10 s"), 2));
        walk.asks("log.lines");
        assertEquals(List.of(DepartureKind.LATE_LOOK), walk.departures());
    }

    @Test
    void aLookThatWasMissedWhileTheWatchWasSilentStaysMissedOnceItSeesAgain() {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("10 h", held(FIRST, at("0 s"), at("10 h")));
        told("10 h 30 s", silent(FIRST, at("10 h")));
        told("35 h 59 min", sees(FIRST, at("35 h 59 min")));
        assertTrue(walk.departures().isEmpty(), "due at 34 h, in time until 36 h");
        told("36 h", silent(FIRST, at("35 h 59 min")));
        told("62 h", sees(FIRST, at("62 h")));
        assertEquals(List.of(DepartureKind.LATE_LOOK), walk.departures());
        told("63 h", held(FIRST, at("62 h"), at("63 h")));
        assertEquals(1, walk.departures().size(), "told once");
    }

    @Test
    void aLookThatSomebodyTakesLateIsALateOneAndNoMissedOneBesides() {
        latching();
        told("60 h", sees(FIRST, at("60 h")));
        assertTrue(walk.departures().isEmpty(), "this watch has seen no time yet, so the look is due still");
        lookAfter("60 h 10 s");
        assertEquals(List.of(DepartureKind.LATE_LOOK), walk.departures());
        latching();
        told("60 h", sees(FIRST, at("60 h")));
        told("60 h 10 min", held(FIRST, at("60 h"), at("60 h 10 min")));
        assertEquals(List.of(DepartureKind.LATE_LOOK), walk.departures());
    }

    // ---- what is refused

    @Test
    void whatDoesNotFitIsRefused() {
        latching();
        assertEquals("Watch 1 does not tell this now; the last one on record is watch 0.", refused("0 s", held(FIRST, at("0 s"), at("0 s"))));
        refused("0 s", sees(SECOND, at("0 s")));
        assertEquals("Only a watch tells what a watch saw, not technician QN.", walk.refusal(sees(FIRST, at("0 s")), Walk.TECHNICIAN));
        assertEquals("A simulated unit proves nothing. It can be watched in a rehearsal only.",
                refused("0 s", sees(new WatchFact.Watcher(1, true), at("0 s"))));
        refused("0 s", sees(FIRST, at("1 h")));
        told("0 s", sees(FIRST, at("0 s")));
        refused("1 h", sees(FIRST, at("1 h")));
        refused("1 h", held(FIRST, at("0 s"), at("2 h")));
        assertEquals("So many samples were not taken in that time.",
                refused("1 h", new WatchFact.Held("endurance", FIRST, at("0 s"), at("1 h"), 20, 0, List.of())));
        refused("1 h", new WatchFact.Held("endurance", FIRST, at("0 s"), at("1 h"), 20, 400, List.of()));
        Sampled clocksDiffer = new Sampled(began.plus(Duration.ofHours(1)), Duration.ofHours(3), Optional.empty());
        assertEquals("The times of these samples do not fit one another, or the soak.", refused("1 h", held(FIRST, at("0 s"), clocksDiffer)));
        told("1 h", held(FIRST, at("0 s"), at("1 h")));
        refused("2 h", held(FIRST, at("30 min"), at("2 h")));
        refused("1 h 20 s", changed(FIRST, at("1 h"), at("1 h 10 s"), 3));
        refused("1 h 20 s", condition(false, "1 h", "1 h 10 s", "25"));
        refused("1 h 20 s", condition(true, "1 h", "1 h 10 s", "25"));
        told("2 h", sees(SECOND, new Sampled(began.plus(Duration.ofHours(2)), Duration.ZERO, Optional.empty())));
        refused("2 h", silent(FIRST, at("2 h")));
    }

    @Test
    void nothingIsWatchedThatTheProcedureDoesNotAskFor() {
        on(Walk.open(draft(Optional.empty(), GAP).build()));
        assertEquals("The procedure asks for no watch in soak endurance.", refused("0 s", sees(FIRST, at("0 s"))));
        Walk notYet = Walk.open(draft(Optional.of(EVERY_10_S), GAP).build()).until("endurance.begin");
        assertEquals("There is nothing to watch: soak endurance is not under way.", notYet.refusal(sees(FIRST, at("0 s")), Walk.WATCH));
    }

    @Test
    void aSimulatedUnitIsWatchedInARehearsal() {
        walk = Walk.rehearse(draft(Optional.of(EVERY_10_S), GAP).build()).until("endurance.begin").good();
        began = walk.moment().instant();
        told("0 s", sees(new WatchFact.Watcher(1, true), at("0 s")));
        assertEquals("A watch of a unit does not turn into one of a simulated unit, nor the other way round.",
                refused("1 h", held(FIRST, at("0 s"), at("1 h"))));
    }

    @Test
    void aForgedRecordOfAWatchDoesNotFollow() throws Exception {
        latching();
        told("0 s", sees(FIRST, at("0 s")));
        told("71 h", held(FIRST, at("0 s"), at("71 h")));
        told("71 h 20 s", changed(FIRST, at("71 h"), at("71 h 10 s"), 2));
        List<TestEvent> record = walk.run().events();
        TestRun.fold(walk.run().plan(), record);
        int seen = indexOf(record, WatchFact.Held.class);
        // The stop is left out, and the run goes on to the end.
        forged(record, seen, held(FIRST, at("0 s"), at("72 h")));
        // A watch that nobody asked for.
        forged(record, seen, held(SECOND, at("0 s"), at("71 h")));
        int stop = indexOf(record, WatchFact.Changed.class);
        // One bad sample is no stop, so the end of the soak does not follow.
        forged(record, stop, changed(FIRST, at("71 h"), at("71 h 10 s"), 1));
        // A stop that lies before what was seen.
        forged(record, stop, changed(FIRST, at("70 h"), at("70 h 10 s"), 2));
        int witnessed = indexOf(record, Derived.SoakWitnessed.class);
        forged(record, witnessed, new Derived.SoakWitnessed("endurance", Duration.ofHours(72), Duration.ofHours(1)));
        // Told by somebody else than a watch.
        List<TestEvent> byHand = new ArrayList<>(record);
        TestEvent told = record.get(seen);
        byHand.set(seen, new TestEvent(told.sequence(), told.moment(), Walk.TECHNICIAN, told.body()));
        assertThrows(DoesNotFollowException.class, () -> TestRun.fold(walk.run().plan(), byHand));
    }

    private static int indexOf(List<TestEvent> events, Class<?> kind) {
        return events.stream().map(e -> kind.isInstance(e.body())).toList().indexOf(true);
    }

    private void forged(List<TestEvent> record, int at, EventBody other) {
        List<TestEvent> changed = new ArrayList<>(record);
        TestEvent event = record.get(at);
        changed.set(at, new TestEvent(event.sequence(), event.moment(), event.actor(), other));
        assertThrows(DoesNotFollowException.class, () -> TestRun.fold(walk.run().plan(), changed), other.toString());
    }
}
