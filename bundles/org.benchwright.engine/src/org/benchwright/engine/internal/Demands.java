package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Quantity;
import org.benchwright.core.SignalWord;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;

/** What a test needs next. */
public final class Demands {

    private Demands() {
    }

    /** The one demand of this state. */
    public static Demand of(RunState s) {
        if (s.outcome().isPresent()) {
            return new Demand.Nothing(s.outcome().get(), s.reason(), s.opening().rehearsal());
        }
        if (s.powerAsked()) {
            return new Demand.TellPower(List.copyOf(s.live()));
        }
        if (s.release().isPresent()) {
            PendingRelease r = s.release().get();
            return new Demand.Release(s.place(), r.check(), r.asked().by(), r.asked().statement());
        }
        if (itemToSwitchOff(s).isPresent()) {
            return new Demand.Switch(s.place(), itemToSwitchOff(s).get(), false);
        }
        return beforeWork(s).orElseGet(() -> s.atSoak().map(soak -> (Demand) look(s, soak)).orElseGet(() -> inStep(s)));
    }

    /**
     * Preconditions and hazards: before a step or soak is begun, and in the midst of it after an interruption, since somebody else may
     * have taken it up.
     */
    private static Optional<Demand> beforeWork(RunState s) {
        if (!s.openPreconditions().isEmpty() && !s.makingSafe()) {
            String name = s.openPreconditions().get(0);
            return s.plan().preconditions().stream().filter(p -> p.name().equals(name)).findFirst().map(p -> precondition(s, p));
        }
        return hazardToShow(s).map(Demand.AcknowledgeHazard::new);
    }

    /** Its instrument is named first, where a reading is taken with one. */
    private static Demand precondition(RunState s, Precondition p) {
        return p.instrument().filter(name -> !s.memory().instruments().containsKey(name)).flatMap(s.plan()::instrument)
                .map(spec -> (Demand) new Demand.NameInstrument(spec)).orElseGet(() -> new Demand.AnswerPrecondition(p));
    }

    /** The next hazard to acknowledge: {@code danger} each time, the others once in a shift of whoever has the test. */
    static Optional<Hazard> hazardToShow(RunState s) {
        Stream<String> names = Stream.concat(s.stage().hazards().stream(), s.atStep().map(Step::hazards).orElse(List.of()).stream());
        return names.distinct().flatMap(name -> s.plan().hazard(name).stream()).filter(h -> !s.acknowledgedHere().contains(h.name()))
                .filter(h -> h.signal() == SignalWord.DANGER || !remembered(s, h.name())).findFirst();
    }

    /** Within a step nobody is asked once more because a shift has passed: a deadline may be running. */
    private static boolean remembered(RunState s, String hazard) {
        Optional<Stamp> read = Optional.ofNullable(s.memory().acknowledged().get(hazard));
        Optional<Duration> shift = s.stepOpen() ? Optional.empty() : s.opening().shift();
        return read.isPresent() && (shift.isEmpty() || s.since(read.get()).compareTo(shift.get()) <= 0);
    }

    /**
     * An item that is live and has to be switched off before anything else is asked: after a loss of power, before a step that switches it
     * on itself, and where nothing in make safe would do it.
     */
    public static Optional<String> itemToSwitchOff(RunState s) {
        if (s.stepOpen() || s.soak().begun() || s.live().isEmpty()) {
            return Optional.empty();
        }
        boolean all = s.switchOff() != SwitchOff.NOTHING;
        return s.live().stream().filter(item -> all || s.makingSafe() && !isolated(s.plan().makeSafe(), item) || switchedOnFirst(s, item))
                .findFirst();
    }

    private static boolean isolated(WorkStage stage, String item) {
        return stage.steps().stream().flatMap(step -> step.actions().stream())
                .anyMatch(a -> a instanceof Action.Isolate i && i.item().equals(item));
    }

    /** True if the step that the test is at switches the item, and on before off. */
    private static boolean switchedOnFirst(RunState s, String item) {
        return s.atStep().stream().flatMap(step -> step.actions().stream())
                .filter(a -> a instanceof Action.Energise e && e.item().equals(item) || a instanceof Action.Isolate i && i.item().equals(item))
                .findFirst().filter(Action.Energise.class::isInstance).isPresent();
    }

    /** A look at the unit, which may not be what is asked for first. */
    public static Demand.Look look(RunState s, SoakStage soak) {
        SoakProgress now = s.soak();
        return new Demand.Look(soak, !now.begun(), now.lastGood().orElse(s.now()).moment(), now.begun() ? now.due(soak) : Duration.ZERO,
                now.witnessed());
    }

    private static Demand inStep(RunState s) {
        if (!s.stepOpen()) {
            throw new IllegalStateException("nothing is asked before " + s.spot());
        }
        return instrumentToName(s, s.action()).flatMap(name -> s.plan().instrument(name)).map(i -> (Demand) new Demand.NameInstrument(i))
                .orElseGet(() -> action(s, s.action()));
    }

    /** The next instrument that this action needs and that nobody has named. */
    static Optional<String> instrumentToName(RunState s, Action action) {
        return instruments(action).filter(name -> !s.memory().instruments().containsKey(name)).findFirst();
    }

    private static Stream<String> instruments(Action action) {
        if (action instanceof Action.Measure m) {
            return Stream.of(m.instrument());
        }
        if (action instanceof Action.Apply a) {
            return Stream.of(a.instrument());
        }
        if (action instanceof Action.Grid g) {
            return Stream.concat(g.instrument().stream(), g.axes().stream().flatMap(x -> x.instrument().stream())).distinct();
        }
        return Stream.empty();
    }

    private static Demand action(RunState s, Action action) {
        if (action instanceof Action.Energise e) {
            return new Demand.Switch(s.place(), e.item(), true);
        } else if (action instanceof Action.Isolate i) {
            return new Demand.Switch(s.place(), i.item(), false);
        } else if (action instanceof Action.Mark m) {
            return new Demand.PressMark(s.place(), m);
        } else if (action instanceof Action.Expect) {
            return Expectations.demand(s);
        } else if (action instanceof Action.Measure m) {
            return measurement(s, m);
        } else if (action instanceof Action.Grid g) {
            return cell(s, g);
        } else if (action instanceof Action.Choose c) {
            return item(s, c);
        } else if (action instanceof Action.Release r) {
            return new Demand.Release(s.place(), r.id(), r.by(), r.statement());
        } else if (action instanceof Action.Wait w) {
            return new Demand.AwaitTime(s.place(), w, s.age().onClockOfSitting(s.progress().waiting().orElse(s.now())));
        }
        return entry(s, action);
    }

    private static Demand entry(RunState s, Action action) {
        if (action instanceof Action.EnterText t) {
            return new Demand.EnterText(s.place(), t);
        } else if (action instanceof Action.EnterFaultLog f) {
            return new Demand.EnterFaultLog(s.place(), f);
        } else if (action instanceof Action.Confirm c) {
            return new Demand.ConfirmStatement(s.place(), c);
        } else if (action instanceof Action.Branch b) {
            return new Demand.ConfirmStatement(s.place(), Branches.question(b));
        } else if (action instanceof Action.Compare c) {
            return new Demand.CompareEntries(s.place(), c);
        } else if (action instanceof Action.Attach a) {
            return new Demand.AttachFile(s.place(), a);
        } else if (action instanceof Action.Apply a) {
            return new Demand.Apply(s.place(), a);
        }
        throw new IllegalStateException("nothing is asked for by " + action);
    }

    // ---- readings and items

    private static Demand measurement(RunState s, Action.Measure m) {
        if (s.progress().owed()) {
            return new Demand.GiveReason(s.place(), m.id(), Words.of("because.undecided"));
        }
        List<Quantity> earlier = s.progress().entries().stream().map(f -> ((Observation.Measured) f).value()).toList();
        return new Demand.TakeMeasurement(s.place(), m, earlier);
    }

    private static Demand cell(RunState s, Action.Grid g) {
        int cell = s.progress().entries().size();
        return new Demand.ReadCell(s.place(), g, cell, Cells.at(g, cell));
    }

    private static Demand item(RunState s, Action.Choose c) {
        Stream<Demand.ConfirmItem> only = c.only().stream().map(i -> new Demand.ConfirmItem(s.place(), c, i, true));
        Stream<Demand.ConfirmItem> spare = c.spare().stream().map(i -> new Demand.ConfirmItem(s.place(), c, i, false));
        return Stream.concat(only, spare).skip(s.progress().entries().size()).findFirst()
                .orElseThrow(() -> new IllegalStateException("all items are confirmed"));
    }
}
