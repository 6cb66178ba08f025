package org.benchwright.engine.tests;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.Durations;
import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.instrument.InstrumentRange;
import org.benchwright.engine.instrument.InstrumentUse;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.Step;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;

/** Parts of small plans, in words close to the procedure language. */
final class Parts {

    private Parts() {
    }

    // ---- steps

    static Step step(String name, Action... actions) {
        return new Step(name, "Carry out " + name + ".", Optional.empty(), List.of(), List.of(), List.of(actions));
    }

    static Step withHazard(String hazard, Step step) {
        return new Step(step.name(), step.instruction(), step.takes(), List.of(hazard), step.reveals(), step.actions());
    }

    // ---- moves

    static Move.Conclude rejected(String reason) {
        return new Move.Conclude(Verdict.REJECTED, reason);
    }

    static Move.Conclude undecided(String reason) {
        return new Move.Conclude(Verdict.UNDECIDED, reason);
    }

    static Move.Conclude accepted() {
        return new Move.Conclude(Verdict.ACCEPTED, "");
    }

    static Move.GoTo goTo(String stage, String step) {
        return new Move.GoTo(stage, step, Optional.empty());
    }

    static Move.GoTo goTo(String stage, String step, int atMost, Move instead) {
        return new Move.GoTo(stage, step, Optional.of(new Move.Bound(atMost, instead)));
    }

    static Move releaseBy(Role role) {
        return new Move.ReleaseBy(role, "Go on all the same.");
    }

    static Move beginAgain(int atMost, Move instead) {
        return new Move.BeginAgain(new Move.Bound(atMost, instead));
    }

    // ---- actions

    static Action energise(String item) {
        return new Action.Energise(item + ".on", item);
    }

    static Action isolate(String item) {
        return new Action.Isolate(item + ".off", item);
    }

    static Action mark(String name) {
        return new Action.Mark(name, "Press as it happens.");
    }

    static Action expect(String lamp, Action.Window window, Move failed) {
        return new Action.Expect(lamp, List.of(new Action.AnyOf(List.of(steady(lamp)))), window, failed);
    }

    static Signal steady(String lamp) {
        return new Signal.LampShows(lamp, lamp.toUpperCase(Locale.ROOT), Optional.of(LampColour.GREEN), new LampPattern.Steady());
    }

    static Action.Window within(String time, String mark) {
        return new Action.Window(mark, duration(time), Duration.ZERO, true);
    }

    static Action.Window from(String time, String mark, String lasting) {
        return new Action.Window(mark, duration(time), duration(lasting), false);
    }

    static Action confirm(String id, Move failed) {
        return new Action.Confirm(id, "It is so: " + id + ".", failed);
    }

    static Action confirm(String id) {
        return confirm(id, rejected(id + " denied"));
    }

    static Action compare(String id, Move failed) {
        return new Action.Compare(id, "Type on the plate", "Type configured", failed);
    }

    static Action text(String id) {
        return new Action.EnterText(id, "Damage");
    }

    static Action faultLog(String id) {
        return new Action.EnterFaultLog(id, true);
    }

    static Action attach(String id) {
        return new Action.Attach(id, "photo", "Type plate");
    }

    static Action pause(String id, String time) {
        return new Action.Wait(id, duration(time));
    }

    static Action release(String id, Role by, Move failed) {
        return new Action.Release(id, by, "All output terminals are bare.", failed);
    }

    static Action apply(String id, String instrument) {
        return new Action.Apply(id, Quantity.of("12", "mA"), instrument);
    }

    static Action end(String id, Move.Conclude conclusion) {
        return new Action.End(id, conclusion);
    }

    static Action go(String id, Move.GoTo to) {
        return new Action.Go(id, to);
    }

    static Action choose(String id, List<Action.Choose.Item> only, List<Action.Choose.Item> spare, Move failed) {
        return new Action.Choose(id, Action.Choose.Verb.ERASE, only, spare, failed);
    }

    static Action.Choose.Item item(String name) {
        return new Action.Choose.Item(name, "The " + name, false);
    }

    static Action.Choose.Item protectedItem(String name) {
        return new Action.Choose.Item(name, "The " + name, true);
    }

    // ---- readings

    static Action.Measure measure(String id, DecisionRule rule, Move rejected, Move undecided) {
        return new Action.Measure(id, "meter", UnitOfMeasure.of("V"), volts("23.5", "24.5"), rule, Optional.empty(), rejected, undecided);
    }

    /** A measured value less half a volt, within limits half a volt lower. */
    static Action.Derive derive(String id, String measured, DecisionRule rule, Move rejected, Move undecided) {
        Expression less = new Expression.Difference(new Expression.Name(measured), new Expression.Fixed(Quantity.of("0.5", "V")));
        return new Action.Derive(id, less, volts("23.0", "24.0"), rule, rejected, undecided);
    }

    /** A question that leads elsewhere, or past the rest of the step, at a yes. */
    static Action.Branch branch(String id, boolean when, Optional<Move.GoTo> to, Optional<String> remembered) {
        return new Action.Branch(id, "The fan tray is fitted.", when, to, remembered);
    }

    static Action.Measure measureAgain(String id, int atMost, Combination combine, Move rejected, Move undecided) {
        return new Action.Measure(id, "meter", UnitOfMeasure.of("V"), volts("23.5", "24.5"), DecisionRule.GUARDED_BOTH_WAYS,
                Optional.of(new Action.Again(atMost, combine)), rejected, undecided);
    }

    /** Every current applied, the reading less the current judged within 0.016 mA, as of an 8 channel card with two channels. */
    static Action.Grid grid(String id, Move rejected, Move undecided) {
        return new Action.Grid(id, "shown", UnitOfMeasure.of("mA"),
                List.of(new Action.Axis("channel", List.of(count(1), count(2)), Optional.empty()),
                        new Action.Axis("applied", List.of(current("4"), current("12"), current("20")), Optional.of("calibrator"))),
                Duration.ofSeconds(2), new Expression.Difference(new Expression.Name("shown"), new Expression.Name("applied")),
                Limits.between(Quantity.of("-0.016", "mA"), Quantity.of("0.016", "mA")), DecisionRule.GUARDED_BOTH_WAYS,
                Optional.of("calibrator"), rejected, undecided);
    }

    private static Action.AxisValue count(int number) {
        return new Action.AxisValue(Integer.toString(number), Optional.empty());
    }

    private static Action.AxisValue current(String number) {
        Quantity quantity = Quantity.of(number, "mA");
        return new Action.AxisValue(quantity.toString(), Optional.of(quantity));
    }

    static InstrumentSpec meter() {
        return new InstrumentSpec("meter", "Multimeter", Optional.of(Quantity.of("60", "V")), Optional.of(Quantity.of("0.05", "V")),
                BigDecimal.valueOf(2));
    }

    static InstrumentSpec calibrator() {
        return new InstrumentSpec("calibrator", "Loop calibrator", Optional.empty(), Optional.of(Quantity.of("0.004", "mA")),
                BigDecimal.valueOf(2));
    }

    /** What a multimeter reads: 0.05 % of the reading and two digits of 0.01 V, as limits of error. */
    static InstrumentRange reads(String from, String to, String current) {
        return reads(from, to, current, Optional.empty());
    }

    /** The same, stated for a coverage factor. */
    static InstrumentRange reads(String from, String to, String current, Optional<BigDecimal> coverage) {
        return new InstrumentRange(InstrumentUse.READS, current, Quantity.of(from, "V"), Quantity.of(to, "V"), new BigDecimal("0.05"),
                BigDecimal.valueOf(2), Quantity.of("0.01", "V"), coverage);
    }

    static Limits volts(String from, String to) {
        return Limits.between(Quantity.of(from, "V"), Quantity.of(to, "V"));
    }

    static Limits room() {
        return Limits.between(Quantity.of("18", "degC"), Quantity.of("28", "degC"));
    }

    static Duration duration(String words) {
        return Durations.parse(words);
    }
}
