package org.benchwright.engine.record;

import static org.benchwright.engine.internal.Refusals.refused;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.internal.Holding;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;

/** Reads what is entered in the place of an entry. */
public final class Correction {

    private static final String YES = "yes";
    private static final String NO = "no";
    private static final String NONE = "none";

    private Correction() {
    }

    /** Whether an entry of that kind can be corrected. */
    public static boolean possible(Fact fact) {
        return fact instanceof Observation.Measured || fact instanceof Observation.CellRead || fact instanceof Observation.Seen
                || fact instanceof Observation.Confirmed || fact instanceof Observation.ItemConfirmed || fact instanceof Observation.Compared
                || fact instanceof Observation.TextEntered || fact instanceof Observation.FaultLogEntered || fact instanceof Observation.Looked
                || fact instanceof Observation.InstrumentNamed || fact instanceof Fact.Noted;
    }

    /**
     * An entry with what is right in its place. A bare number has the unit that the plan reads it in; what has several parts is typed with
     * semicolons between them: a look's answer and its readings, two entries that are compared, the lines of a fault log, or {@code none}.
     *
     * @param run      the test
     * @param sequence number of the entry's event
     * @param typed    what is right
     * @throws RefusedException if there is no such entry, it can't be corrected, or what was typed can't be read
     */
    public static Fact read(TestRun run, long sequence, String typed) throws RefusedException {
        Optional<TestEvent> event = run.events().stream().filter(each -> each.sequence() == sequence).findFirst();
        if (event.isEmpty() || !(event.get().body() instanceof Fact fact) || !possible(fact)) {
            throw refused("amend.notAnEntry", sequence);
        } else if (run.struck().contains(sequence)) {
            throw refused("amend.struck", sequence);
        } else if (typed.isBlank()) {
            throw refused("amend.empty");
        }
        return corrected(run, event.get(), fact, typed.strip());
    }

    private static Fact corrected(TestRun run, TestEvent event, Fact fact, String typed) throws RefusedException {
        if (fact instanceof Observation.Measured m) {
            return new Observation.Measured(m.check(), typed, quantity(typed, unit(run, event, m.check())));
        } else if (fact instanceof Observation.CellRead c) {
            return new Observation.CellRead(c.check(), c.cell(), typed, quantity(typed, unit(run, event, c.check())));
        } else if (fact instanceof Observation.Seen s) {
            return new Observation.Seen(s.check(), yes(typed) ? Observation.Sight.YES : Observation.Sight.NO, s.asSeen());
        } else if (fact instanceof Observation.Confirmed c) {
            return new Observation.Confirmed(c.check(), yes(typed));
        } else if (fact instanceof Observation.ItemConfirmed c) {
            return new Observation.ItemConfirmed(c.check(), c.item(), yes(typed));
        } else if (fact instanceof Observation.TextEntered t) {
            return new Observation.TextEntered(t.check(), typed);
        } else if (fact instanceof Observation.InstrumentNamed i) {
            return new Observation.InstrumentNamed(i.instrument(), typed, i.uncertainty(), i.coverage(), i.due());
        } else if (fact instanceof Observation.Looked look) {
            return look(run, look, typed);
        } else if (fact instanceof Observation.Compared c) {
            List<String> both = parts(typed);
            if (both.size() != 2 || both.contains("")) {
                throw refused("amend.twoEntries", typed);
            }
            return new Observation.Compared(c.check(), both.get(0), both.get(1));
        } else if (fact instanceof Observation.FaultLogEntered log) {
            return new Observation.FaultLogEntered(log.check(), lines(typed));
        }
        return new Fact.Noted(typed);
    }

    private static List<String> parts(String typed) {
        return Arrays.stream(typed.split("[;\\n]", -1)).map(String::strip).toList();
    }

    private static List<Condition> conditions(Plan plan, String soak) {
        return plan.stages().stream().filter(SoakStage.class::isInstance).map(SoakStage.class::cast).filter(each -> each.name().equals(soak))
                .findFirst().orElseThrow().conditions();
    }

    private static Observation.Looked look(TestRun run, Observation.Looked look, String typed) throws RefusedException {
        List<Condition> conditions = conditions(run.plan(), look.stage());
        List<String> parts = parts(typed);
        if (parts.size() != conditions.size() + 1) {
            throw refused("amend.look", typed, conditions.size());
        }
        String[] seen = parts.get(0).split("\\s+", 2);
        Observation.Sight sight = yes(seen[0]) ? Observation.Sight.YES : Observation.Sight.NO;
        List<Observation.ConditionReading> readings = new ArrayList<>();
        for (int i = 0; i < conditions.size(); i++) {
            String raw = parts.get(i + 1);
            readings.add(new Observation.ConditionReading(conditions.get(i).name(), raw, quantity(raw, conditions.get(i).limits().unit())));
        }
        return new Observation.Looked(look.stage(), sight, seen.length > 1 ? seen[1] : "", readings);
    }

    private static List<Observation.FaultLine> lines(String typed) {
        List<Observation.FaultLine> lines = new ArrayList<>();
        for (String line : typed.equals(NONE) ? List.<String>of() : parts(typed)) {
            String[] words = line.split("\\s+", 2);
            if (!words[0].isEmpty()) {
                lines.add(new Observation.FaultLine(words[0], words.length > 1 ? words[1] : ""));
            }
        }
        return lines;
    }

    private static boolean yes(String typed) throws RefusedException {
        if (!typed.equals(YES) && !typed.equals(NO)) {
            throw refused("amend.yesOrNo", typed);
        }
        return typed.equals(YES);
    }

    private static Quantity quantity(String typed, UnitOfMeasure unit) throws RefusedException {
        try {
            return Quantity.parse(typed, unit);
        } catch (QuantityFormatException unread) {
            throw refused("amend.noQuantity", typed, unit);
        }
    }

    /** The unit in which the plan reads a bare number in the step that was open then. */
    private static UnitOfMeasure unit(TestRun run, TestEvent event, String check) throws RefusedException {
        String step = Holding.of(run.events().subList(0, (int) event.sequence())).stream().map(TestEvent::body)
                .filter(Derived.StepOpened.class::isInstance).map(body -> ((Derived.StepOpened) body).step()).reduce("", (a, b) -> b);
        return action(run.plan(), step, check).map(action -> action instanceof Action.Grid grid ? grid.unit() : ((Action.Measure) action).unit())
                .orElseThrow(() -> refused("amend.notAnEntry", event.sequence()));
    }

    private static Optional<Action> action(Plan plan, String step, String check) {
        return plan.steps().filter(each -> each.name().equals(step)).flatMap(each -> each.actions().stream())
                .filter(action -> action.id().equals(check) && (action instanceof Action.Measure || action instanceof Action.Grid)).findFirst();
    }
}
