package org.benchwright.present.tests;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.LampColour;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.SignalWord;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Lamp;
import org.benchwright.engine.plan.Mode;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.workshop.tests.SamplePlan;

/** The sample plan, and a stage with every kind of action that the sample has not. */
final class EveryKind {

    private static final Move.Conclude REJECTED = new Move.Conclude(Verdict.REJECTED, "The drop is too large.");
    private static final Move.Conclude UNKNOWN = new Move.Conclude(Verdict.UNDECIDED, "The drop could not be told.");

    private EveryKind() {
    }

    static Plan plan() {
        Plan p = SamplePlan.acceptance();
        List<Stage> stages = new ArrayList<>(p.stages());
        stages.add(rest());
        stages.add(new SoakStage("second_soak", "Second soak", List.of("unattended"), Duration.ofHours(5), mode(), List.of(), Duration.ofHours(1),
                Duration.ofMinutes(7), Optional.empty(), REJECTED, UNKNOWN,
                Optional.of(new SoakStage.Watch(Duration.ofSeconds(11), 4, 6, Optional.of("all the looks")))));
        List<Hazard> hazards = new ArrayList<>(p.hazards());
        hazards.add(new Hazard("unattended", SignalWord.WARNING, "Nobody is beside it.", "start a fire unseen", "Hang the alarm above it."));
        List<InstrumentSpec> instruments = new ArrayList<>(p.instruments());
        instruments.add(new InstrumentSpec("load", "Electronic load", Optional.of(Quantity.of("12", "A")), Optional.empty(), BigDecimal.valueOf(2),
                Optional.of("gives A dc"), Optional.empty()));
        return new Plan(p.format(), p.name(), p.title(), p.revision(), p.purpose(), Optional.of("c16_receiving"), Optional.of(Duration.ofHours(13)),
                family(p.family()), p.claim(), hazards, p.protectedItems(), instruments, p.preconditions(), p.preconditionUnmet(), stages,
                p.makeSafe(), p.end());
    }

    private static UnitFamily family(UnitFamily f) {
        List<Lamp> lamps = new ArrayList<>(f.lamps());
        lamps.add(new Lamp("bat", "BAT", List.of(LampColour.YELLOW), "Cell is low"));
        List<Mode> modes = new ArrayList<>(f.modes());
        modes.add(new Mode("stopped", List.of(), Optional.of("Stopped by hand")));
        return new UnitFamily(f.name(), f.title(), f.supply(), f.serialMask(), lamps, modes, f.faults(), f.stopStays(), Optional.of("24 V dc"),
                Optional.of("somebody restarts the unit"), Optional.empty());
    }

    private static Signal.ModeShows mode() {
        return new Signal.ModeShows("second mode", List.of(new Signal.DisplayShows("code", "Status code", "r 2")));
    }

    private static WorkStage rest() {
        Move.GoTo back = new Move.GoTo("power_up", "fit", Optional.of(new Move.Bound(3, UNKNOWN)));
        Move.GoTo soak = new Move.GoTo("second_soak", "", Optional.empty());
        Limits drop = Limits.atMost(Quantity.of("0.7", "V"));
        Step asked = new Step("asked", "Look at the fan tray.", Optional.of(Duration.ofMinutes(4)), List.of(), List.of("W01", "B04"), List.of(
                new Action.Branch("fitted", "Fan tray: fitted.", true, Optional.of(back), Optional.of("fitted.fan")),
                new Action.Branch("seen", "The seal is broken.", false, Optional.empty(), Optional.empty()),
                new Action.Apply("apply", Quantity.of("10", "A"), "load"), new Action.Apply("apply-2", Quantity.of("3", "A"), ""),
                new Action.Measure("ripple", "meter", UnitOfMeasure.of("V"), Limits.atLeast(Quantity.of("0.1", "V")), DecisionRule.GUARDED,
                        Optional.of(new Action.Again(2, Combination.BOTH_INSIDE)), REJECTED, UNKNOWN, Optional.of(new Action.Count(5)), Optional.empty()),
                new Action.Derive("drop", expression(), drop, DecisionRule.GUARDED_BOTH_WAYS, REJECTED, UNKNOWN), grid(),
                new Action.Go("go", soak)));
        return new WorkStage("rest", "The rest", false, Optional.of(Duration.ofMinutes(25)), List.of(), List.of(asked));
    }

    private static Expression expression() {
        return new Expression.Difference(new Expression.Name("bench.supply_volts"),
                new Expression.Sum(new Expression.Name("asked.ripple"), new Expression.Fixed(Quantity.of("0.25", "V"))));
    }

    private static Action.Grid grid() {
        Action.Axis channel = new Action.Axis("channel", List.of(new Action.AxisValue("1", Optional.empty()), new Action.AxisValue("2", Optional.empty())),
                Optional.empty());
        Action.Axis applied = new Action.Axis("applied", List.of(new Action.AxisValue("4 mA", Optional.of(Quantity.of("4", "mA")))), Optional.of("load"));
        return new Action.Grid("shown", "shown", UnitOfMeasure.of("mA"), List.of(channel, applied), Duration.ofSeconds(2),
                new Expression.Difference(new Expression.Name("shown"), new Expression.Name("applied")),
                Limits.between(Quantity.of("-0.016", "mA"), Quantity.of("0.016", "mA")), DecisionRule.SIMPLE, Optional.of("load"),
                new Move.ReleaseBy(Role.SUPERVISOR, "The card is used as it is."), UNKNOWN);
    }
}
