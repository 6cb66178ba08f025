package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.beginAgain;
import static org.benchwright.engine.tests.Parts.choose;
import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.expect;
import static org.benchwright.engine.tests.Parts.go;
import static org.benchwright.engine.tests.Parts.goTo;
import static org.benchwright.engine.tests.Parts.isolate;
import static org.benchwright.engine.tests.Parts.item;
import static org.benchwright.engine.tests.Parts.mark;
import static org.benchwright.engine.tests.Parts.measure;
import static org.benchwright.engine.tests.Parts.protectedItem;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.release;
import static org.benchwright.engine.tests.Parts.releaseBy;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.benchwright.engine.tests.Parts.volts;
import static org.benchwright.engine.tests.Parts.withHazard;
import static org.benchwright.engine.tests.Parts.within;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.internal.PlanFaults;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Step;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.junit.jupiter.api.Test;

/** Plans that could ask nothing, or go round for ever, are not opened. */
class PlanFaultsTest {

    private static final Move BAD = rejected("bad");
    private static final Step OK = step("ok", confirm("x"));

    private static void fault(String words, PlanDraft draft) {
        Plan plan = draft.build();
        assertEquals(List.of(words), PlanFaults.of(plan));
        String refusal = assertThrows(RefusedException.class,
                () -> TestRun.open(plan, Walk.opening(false), Walk.TECHNICIAN, Walk.firstMoment())).getMessage();
        assertEquals("This procedure cannot be carried out: " + words + ". Correct it first.", refusal);
    }

    private static void fault(String words, Action... actions) {
        fault(words, PlanDraft.plan().stage("a", OK, step("s", actions)));
    }

    private static void sound(Action... actions) {
        assertEquals(List.of(), PlanFaults.of(PlanDraft.plan().stage("a", OK, step("s", actions)).build()));
    }

    @Test
    void aTestNeedsAStageToBeginWith() {
        fault("every stage is on demand, so that none begins", PlanDraft.plan().onDemand("log", OK));
        fault("every stage is on demand, so that none begins", PlanDraft.plan());
    }

    @Test
    void namesAreThereOnce() {
        fault("stage \"a\" is there twice", PlanDraft.plan().stage("a", OK).stage("a", step("other", confirm("x"))));
        fault("step \"ok\" is there twice", PlanDraft.plan().stage("a", OK).stage("b", OK));
        fault("step \"ok\" is there twice", PlanDraft.plan().stage("a", OK).makeSafe(OK));
        fault("precondition \"strap\" is there twice", PlanDraft.plan().precondition("strap").precondition("strap", "1 h").stage("a", OK));
        fault("action \"s.x\" is there twice", confirm("x"), confirm("x"));
        fault("item \"s.log\" is there twice", choose("erase", List.of(item("log")), List.of(item("log")), BAD));
    }

    @Test
    void whatIsReferredToIsDeclared() {
        fault("step s refers to hazard \"mains\", which is not declared",
                PlanDraft.plan().stage("a", OK, withHazard("mains", step("s", confirm("x")))));
        fault("stage a refers to hazard \"mains\", which is not declared", PlanDraft.plan().hazardStage("a", "mains", OK));
        fault("step s refers to instrument \"scope\", which is not declared", Parts.apply("load", "scope"));
        fault("step s goes to nowhere n, which is not there", confirm("x", goTo("nowhere", "n")));
        fault("step s goes to a n, which is not there", confirm("x", goTo("a", "n")));
        fault("step s goes to nowhere n, which is not there", confirm("x", goTo("a", "ok", 1, goTo("nowhere", "n"))));
    }

    @Test
    void anExpectationHasItsMarkBeforeItInItsStep() {
        fault("step s expects something counted from \"on\", but that mark is not pressed before it in the same step",
                expect("pwr", within("2 s", "on"), BAD), mark("on"));
        fault("step s expects something counted from \"on\", but that mark is not pressed before it in the same step",
                PlanDraft.plan().stage("a", step("on", mark("on")), step("s", expect("pwr", within("2 s", "on"), BAD))));
        sound(mark("on"), expect("pwr", within("2 s", "on"), BAD));
    }

    @Test
    void goingBackNeedsALimit() {
        fault("step s goes back to ok without a limit", confirm("x", goTo("a", "ok")));
        fault("step s goes back to s without a limit", confirm("x", goTo("a", "s")));
        fault("step s goes back to ok without a limit", go("on", goTo("a", "ok")));
        fault("step s repeats at most 0 times; at least 1 is needed", confirm("x", goTo("a", "ok", 0, BAD)));
        fault("step s goes back to ok without a limit", confirm("x", goTo("a", "ok", 1, goTo("a", "ok"))));
        sound(confirm("x", goTo("a", "ok", 1, BAD)));
        assertEquals(List.of(), PlanFaults.of(PlanDraft.plan().stage("a", step("s", confirm("x", goTo("b", "ok")))).stage("b", OK).build()));
    }

    @Test
    void makeSafeIsNotLeft() {
        fault("make safe goes to a ok, but it is carried out to its end",
                PlanDraft.plan().stage("a", OK).makeSafe(step("off", isolate("supply"), confirm("x", goTo("a", "ok")))));
        fault("step off goes back to off without a limit",
                PlanDraft.plan().stage("a", OK).makeSafe(step("off", isolate("supply"), confirm("x", goTo("make_safe", "off")))));
        fault("step s goes to make_safe off, which is not there", confirm("x", goTo("make_safe", "off")));
    }

    @Test
    void anUnmetPreconditionConcludes() {
        fault("an unmet precondition has to lead to a conclusion",
                PlanDraft.plan().precondition("strap").unmet(releaseBy(Role.SUPERVISOR)).stage("a", OK));
    }

    @Test
    void onlyASoakBeginsAgainAndAStopIsNotReleased() {
        fault("step s begins a soak again, but is in none", confirm("x", beginAgain(1, BAD)));
        fault("soak e: a stop or gap leads to a release, but nothing follows from that; let it lead to a stage, to a new beginning or to "
                + "a conclusion", PlanDraft.plan().soak("e", beginAgain(1, releaseBy(Role.SUPERVISOR)), BAD, Optional.empty()));
        fault("step e repeats at most 0 times; at least 1 is needed", PlanDraft.plan().soak("e", beginAgain(0, BAD), BAD, Optional.empty()));
        fault("step e goes back to ok without a limit", PlanDraft.plan().stage("a", OK).soak("e", BAD, BAD,
                Optional.of(new SoakStage.Gap(Duration.ofHours(1), goTo("a", "ok")))));
        fault("soak e has to last longer than no time, and to be looked at now and then", PlanDraft.plan()
                .stage(PlanDraft.soakStage("e", Duration.ZERO, List.of(), Optional.empty(), BAD, BAD)));
    }

    @Test
    void readingsCanBeDecided() {
        Limits wrong = volts("24.5", "23.5");
        fault("step s: the limits of v are the wrong way round", new Action.Measure("v", "meter", UnitOfMeasure.of("V"), wrong,
                DecisionRule.SIMPLE, Optional.empty(), BAD, BAD));
        fault("step s repeats at most 0 times; at least 1 is needed", Parts.measureAgain("v", 0, Combination.LAST, BAD, BAD));
        Limits ampere = Limits.atMost(Quantity.of("1", "A"));
        fault("instrument meter decides on quantities of different kinds with one uncertainty", new Action.Measure("v", "meter",
                UnitOfMeasure.of("A"), ampere, DecisionRule.SIMPLE, Optional.empty(), BAD, BAD));
        fault("instrument meter: an uncertainty is a difference, not a point on a scale, and at least 0",
                PlanDraft.plan().instrument(new InstrumentSpec("meter", "Thermometer", Optional.empty(), Optional.of(Quantity.of("1", "degC")),
                        BigDecimal.valueOf(2))).stage("a", OK));
        sound(measure("v", DecisionRule.GUARDED, BAD, undecided("close")));
    }

    @Test
    void aGridHasCellsThatCanBeReckoned() {
        Action.Axis empty = new Action.Axis("channel", List.of(), Optional.empty());
        fault("step s: shown has an axis without values", gridOf(List.of(empty), new Expression.Name("shown"), Optional.of("calibrator")));
        Action.Axis channel = new Action.Axis("channel", List.of(new Action.AxisValue("1", Optional.empty())), Optional.empty());
        fault("step s: what shown judges cannot be reckoned: no value for channel", gridOf(List.of(channel),
                new Expression.Difference(new Expression.Name("shown"), new Expression.Name("channel")), Optional.of("calibrator")));
        fault("step s: shown is decided with a guard band, but no instrument with an uncertainty is named",
                gridOf(List.of(channel), new Expression.Name("shown"), Optional.empty()));
        sound(Parts.grid("shown", BAD, undecided("close")));
    }

    private static Action gridOf(List<Action.Axis> axes, Expression judged, Optional<String> instrument) {
        return new Action.Grid("shown", "shown", UnitOfMeasure.of("mA"), axes, Duration.ZERO, judged, Limits.atMost(Quantity.of("20", "mA")),
                DecisionRule.GUARDED, instrument, BAD, BAD);
    }

    @Test
    void whatIsProtectedIsNotDoneAwayWithWithoutARelease() {
        Action erase = choose("erase", List.of(protectedItem("owner_program")), List.of(), BAD);
        fault("step s does away with \"The owner_program\", which is protected, without a release before it in the same step", erase);
        fault("step s does away with \"The owner_program\", which is protected, without a release before it in the same step", erase,
                release("sure", Role.SUPERVISOR, BAD));
        sound(release("sure", Role.SUPERVISOR, BAD), erase);
        sound(choose("erase", List.of(item("log")), List.of(protectedItem("owner_program")), BAD));
        fault("step s: erase names no item", choose("erase", List.of(), List.of(), BAD));
    }

    @Test
    void allFaultsAreNamedAtOnce() {
        assertEquals(2, PlanFaults.of(PlanDraft.plan().stage("a", step("s", energise("supply"), confirm("x", goTo("a", "s")),
                confirm("y", goTo("b", "s")))).build()).size());
    }
}
