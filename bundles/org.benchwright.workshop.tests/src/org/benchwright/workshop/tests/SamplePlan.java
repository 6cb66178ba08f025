package org.benchwright.workshop.tests;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.SerialMask;
import org.benchwright.core.SignalWord;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Claim;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.FaultNote;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Lamp;
import org.benchwright.engine.plan.Mode;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.ProtectedItem;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;

/** A plan put together by hand: the acceptance of a Tarn C16, with nearly everything that a step can ask. */
public final class SamplePlan {

    /** The text that stands for the procedure. */
    public static final String TEXT = "procedure c16_acceptance, put together by hand";

    private static final Move.Conclude UNTESTED = new Move.Conclude(Verdict.UNDECIDED, "The procedure could not be carried out.");
    private static final Move.GoTo TO_LOG = new Move.GoTo("read_log", "log", Optional.empty());
    private static final UnitOfMeasure VOLT = UnitOfMeasure.of("V");

    private SamplePlan() {
    }

    /** The acceptance of a C16: with preconditions, a power-up check, a start, three days of soak, and a fault log on demand. */
    public static Plan acceptance() {
        return new Plan(Plan.CURRENT_FORMAT, "c16_acceptance", "C16 acceptance on the bench", 3,
                "Decide whether a lone C16 starts work and keeps working.", Optional.empty(), Optional.empty(), family(),
                Optional.of(new Claim(Duration.ofHours(31), new BigDecimal("0.90"))), hazards(),
                List.of(new ProtectedItem("owner_program", "Owner's program")),
                List.of(new InstrumentSpec("meter", "Multimeter", Optional.of(volts("60")), Optional.of(volts("0.05")), BigDecimal.valueOf(2))),
                List.of(new Precondition("strap", "Wrist strap tested.", Optional.of(Duration.ofHours(12)), Optional.of("Tester number"),
                        Optional.empty()),
                        new Precondition("ambient", "Room temperature", Optional.empty(), Optional.empty(), Optional.of(room()))),
                UNTESTED, List.of(received(), powerUp(), soak(), readLog()), makeSafe(), new Move.Conclude(Verdict.ACCEPTED, ""));
    }

    private static UnitFamily family() {
        List<Lamp> lamps = List.of(new Lamp("pwr", "PWR", List.of(LampColour.GREEN), "Power"),
                new Lamp("flt", "FLT", List.of(LampColour.RED), "Fault"),
                new Lamp("ok", "OK", List.of(LampColour.GREEN, LampColour.RED), "Health"));
        List<FaultNote> faults = List.of(new FaultNote("W01", "Watchdog expired", List.of(lit("flt", "FLT", LampColour.RED)),
                "A scan did not finish in time.", "Oscillator or memory weak when warm.",
                "Soak again warm; if it recurs, replace the processor board."));
        return new UnitFamily("tarn_c16", "Tarn C16 modular controller",
                Optional.of(Limits.around(volts("24"), BigDecimal.valueOf(15), BigDecimal.valueOf(20))),
                Optional.of(new SerialMask("C16-######")), lamps, List.of(new Mode("run", run().shows(), Optional.empty())), faults, true);
    }

    private static List<Hazard> hazards() {
        return List.of(
                new Hazard("mains", SignalWord.DANGER, "Rack supply terminals are live while it is on.", "kill by electric shock",
                        "Fit the terminal cover; test the residual-current device."),
                new Hazard("static", SignalWord.NOTICE, "Static discharge damages the unit.", "weaken it unseen",
                        "Strap on for handling, off before mains is on."));
    }

    private static WorkStage received() {
        return new WorkStage("received", "As received", false, Optional.empty(), List.of(),
                List.of(step("plate", "Before changing anything, record what is there.", List.of(),
                        new Action.Attach("photo", "photo", "Type plate"),
                        new Action.EnterText("damage", "Visible damage, switch positions"))));
    }

    private static WorkStage powerUp() {
        Move.Conclude benchFault = new Move.Conclude(Verdict.UNDECIDED, "The bench supply is at fault; the unit was not tested.");
        Move.Conclude tooClose = new Move.Conclude(Verdict.UNDECIDED, "Too close to call.");
        Step bench = step("bench", "Measure the supply before the unit is fitted.", List.of("mains"),
                new Action.Energise("supply_on", "supply"),
                new Action.Measure("supply_volts", "meter", VOLT, supply(), DecisionRule.GUARDED_BOTH_WAYS,
                        Optional.of(new Action.Again(1, Combination.MEAN)), benchFault, tooClose),
                new Action.Isolate("supply_off", "supply"));
        Step fit = step("fit", "Supply off and plug pulled: strap on, fit the unit, strap off, cover up.", List.of("static"),
                new Action.Confirm("strap_off", "The strap is off and the cover is on.", UNTESTED));
        return new WorkStage("power_up", "Power up", false, Optional.of(Duration.ofMinutes(10)), List.of(),
                List.of(bench, fit, lamps(), asFound(), matched(), blankLog(), start()));
    }

    private static Step lamps() {
        Move.Conclude failed = new Move.Conclude(Verdict.REJECTED, "Power-up self-check failed; further steps would prove nothing.");
        return step("lamps", "Switch on.", List.of("mains"), new Action.Energise("supply_on", "supply"),
                new Action.Mark("on", "Press as you close the switch."),
                new Action.Expect("pwr", List.of(new Action.AnyOf(List.of(lit("pwr", "PWR", LampColour.GREEN)))),
                        new Action.Window("on", Duration.ofSeconds(2), Duration.ZERO, true), failed),
                new Action.Expect("ok", List.of(new Action.AnyOf(List.of(lit("ok", "OK", LampColour.RED))),
                        new Action.AnyOf(List.of(lit("ok", "OK", LampColour.GREEN)))),
                        new Action.Window("on", Duration.ofSeconds(10), Duration.ZERO, true), failed),
                new Action.Expect("flt", List.of(new Action.AnyOf(List.of(
                        new Signal.LampShows("flt", "FLT", Optional.empty(), new LampPattern.Off())))),
                        new Action.Window("on", Duration.ofSeconds(10), Duration.ofSeconds(5), false), failed));
    }

    private static Step asFound() {
        return step("as_found", "Take down the fault log as it came.", List.of(), new Action.EnterFaultLog("fault_log", true));
    }

    private static Step matched() {
        return step("matched", "Read the type plate and compare it with the bench configuration.", List.of(),
                new Action.Compare("same", "Type on the plate", "Type configured",
                        new Move.GoTo("power_up", "matched", Optional.of(new Move.Bound(2,
                                new Move.Conclude(Verdict.UNDECIDED, "Configuration does not fit the unit."))))));
    }

    private static Step blankLog() {
        return step("blank_log", "Erase the fault log, so that new entries stand out.", List.of(),
                new Action.Choose("erase", Action.Choose.Verb.ERASE,
                        List.of(new Action.Choose.Item("fault_log", "Processor fault log", false)),
                        List.of(new Action.Choose.Item("owner_program", "Owner's program", true)), UNTESTED));
    }

    private static Step start() {
        return step("start", "Turn the unit to run.", List.of(),
                new Action.Release("outputs_bare", Role.SECOND_PERSON, "All output terminals are bare.", UNTESTED),
                new Action.Mark("start", "Press as you turn the switch."),
                new Action.Expect("run", List.of(new Action.AnyOf(List.of(run()))),
                        new Action.Window("start", Duration.ofSeconds(30), Duration.ZERO, true), TO_LOG));
    }

    private static SoakStage soak() {
        Move.BeginAgain again = new Move.BeginAgain(new Move.Bound(1, UNTESTED));
        return new SoakStage("endurance", "Unattended endurance", List.of(), Duration.ofHours(72), run(),
                List.of(new Condition("ambient", room()), new Condition("supply", supply())), Duration.ofHours(24), Duration.ofHours(2),
                Optional.of(new SoakStage.Gap(Duration.ofHours(2), again)), TO_LOG, again,
                Optional.of(new SoakStage.Watch(Duration.ofSeconds(10), 2, 3)));
    }

    private static WorkStage readLog() {
        return new WorkStage("read_log", "Fault log", true, Optional.empty(), List.of(),
                List.of(step("log", "Enter every line of the fault log.", List.of(), new Action.EnterFaultLog("fault_log", false),
                        new Action.End("end", new Move.Conclude(Verdict.REJECTED,
                                "Stopped by itself during endurance, or never started.")))));
    }

    private static WorkStage makeSafe() {
        return new WorkStage("make_safe", "Make safe", false, Optional.empty(), List.of(),
                List.of(step("off", "Switch off, pull the plug, fit the tag.", List.of(), new Action.Isolate("supply_off", "supply")),
                        step("drain", "Wait, then prove it dead.", List.of(), new Action.Wait("wait", Duration.ofMinutes(5)),
                                new Action.Measure("residual", "meter", VOLT, Limits.atMost(volts("5")), DecisionRule.SIMPLE,
                                        Optional.empty(), new Move.ReleaseBy(Role.SUPERVISOR, "Still charged: nobody touches it."),
                                        UNTESTED))));
    }

    private static Step step(String name, String instruction, List<String> hazards, Action... actions) {
        return new Step(name, instruction, Optional.empty(), hazards, List.of(), List.of(actions));
    }

    private static Signal.ModeShows run() {
        return new Signal.ModeShows("run", List.of(lit("ok", "OK", LampColour.GREEN),
                new Signal.DisplayShows("code", "Status code", "rn")));
    }

    private static Signal lit(String lamp, String marked, LampColour colour) {
        return new Signal.LampShows(lamp, marked, Optional.of(colour), new LampPattern.Steady());
    }

    private static Limits room() {
        return Limits.between(Quantity.of("18", "degC"), Quantity.of("28", "degC"));
    }

    private static Limits supply() {
        return Limits.between(volts("23.5"), volts("24.5"));
    }

    private static Quantity volts(String number) {
        return Quantity.of(number, "V");
    }
}
