package org.benchwright.engine.record;

import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.internal.Words;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;

/** Reads what is entered in the place of an entry. */
public final class Correction {

    private static final String YES = "yes";
    private static final String NO = "no";

    private Correction() {
    }

    /** Whether an entry of that kind can be corrected. */
    public static boolean possible(Fact fact) {
        return fact instanceof Fact.Measured || fact instanceof Fact.CellRead || fact instanceof Fact.Seen || fact instanceof Fact.Confirmed
                || fact instanceof Fact.ItemConfirmed || fact instanceof Fact.TextEntered || fact instanceof Fact.Noted
                || fact instanceof Fact.InstrumentNamed;
    }

    /**
     * An entry with what is right in its place. A bare number has the unit that the plan reads it in.
     *
     * @param run      the test
     * @param sequence number of the entry's event
     * @param typed    what is right
     * @throws RefusedException if there is no such entry, it can't be corrected, or what was typed can't be read
     */
    public static Fact read(TestRun run, long sequence, String typed) throws RefusedException {
        Optional<TestEvent> event = run.events().stream().filter(each -> each.sequence() == sequence).findFirst();
        if (event.isEmpty() || !(event.get().body() instanceof Fact fact) || !possible(fact)) {
            throw new RefusedException(Words.of("amend.notAnEntry", sequence));
        } else if (run.struck().contains(sequence)) {
            throw new RefusedException(Words.of("amend.struck", sequence));
        } else if (typed.isBlank()) {
            throw new RefusedException(Words.of("amend.empty"));
        }
        return corrected(run, event.get(), fact, typed.strip());
    }

    private static Fact corrected(TestRun run, TestEvent event, Fact fact, String typed) throws RefusedException {
        if (fact instanceof Fact.Measured m) {
            return new Fact.Measured(m.check(), typed, quantity(typed, unit(run, event, m.check())));
        } else if (fact instanceof Fact.CellRead c) {
            return new Fact.CellRead(c.check(), c.cell(), typed, quantity(typed, unit(run, event, c.check())));
        } else if (fact instanceof Fact.Seen s) {
            return new Fact.Seen(s.check(), yes(typed) ? Fact.Sight.YES : Fact.Sight.NO, s.asSeen());
        } else if (fact instanceof Fact.Confirmed c) {
            return new Fact.Confirmed(c.check(), yes(typed));
        } else if (fact instanceof Fact.ItemConfirmed c) {
            return new Fact.ItemConfirmed(c.check(), c.item(), yes(typed));
        } else if (fact instanceof Fact.TextEntered t) {
            return new Fact.TextEntered(t.check(), typed);
        } else if (fact instanceof Fact.InstrumentNamed i) {
            return new Fact.InstrumentNamed(i.instrument(), typed, i.uncertainty(), i.coverage(), i.due());
        }
        return new Fact.Noted(typed);
    }

    private static boolean yes(String typed) throws RefusedException {
        if (!typed.equals(YES) && !typed.equals(NO)) {
            throw new RefusedException(Words.of("amend.yesOrNo", typed));
        }
        return typed.equals(YES);
    }

    private static Quantity quantity(String typed, UnitOfMeasure unit) throws RefusedException {
        try {
            return Quantity.parse(typed, unit);
        } catch (QuantityFormatException unread) {
            throw new RefusedException(Words.of("amend.noQuantity", typed, unit));
        }
    }

    /** The unit in which the plan reads a bare number in the step that was open then. */
    private static UnitOfMeasure unit(TestRun run, TestEvent event, String check) throws RefusedException {
        String step = run.events().subList(0, (int) event.sequence()).stream().map(TestEvent::body)
                .filter(Derived.StepOpened.class::isInstance).map(body -> ((Derived.StepOpened) body).step()).reduce("", (a, b) -> b);
        return action(run.plan(), step, check).map(action -> action instanceof Action.Grid grid ? grid.unit() : ((Action.Measure) action).unit())
                .orElseThrow(() -> new RefusedException(Words.of("amend.notAnEntry", event.sequence())));
    }

    private static Optional<Action> action(Plan plan, String step, String check) {
        return plan.steps().filter(each -> each.name().equals(step)).flatMap(each -> each.actions().stream())
                .filter(action -> action.id().equals(check) && (action instanceof Action.Measure || action instanceof Action.Grid)).findFirst();
    }
}
