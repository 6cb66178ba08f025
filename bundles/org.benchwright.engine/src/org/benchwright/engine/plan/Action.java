package org.benchwright.engine.plan;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.evidence.RepeatRisk;

/** One thing that a step asks or states. Its id is unique within the step. */
public sealed interface Action {

    /** The id, unique within the step. */
    String id();

    /** The item is live from here on. The technician confirms it, by the mark where one follows at once. */
    record Energise(String id, String item) implements Action {
    }

    /** The item is switched off and isolated from here on; the technician confirms it. */
    record Isolate(String id, String item) implements Action {
    }

    /**
     * An instant from which deadlines count.
     *
     * @param id     the mark's name
     * @param prompt what to press it at
     */
    record Mark(String id, String prompt) implements Action {
    }

    /**
     * An expected indication. Expectations that follow one another run together.
     *
     * @param id       its id
     * @param sequence what must show, one after the other; mostly a single element
     * @param window   when
     * @param failed   where it leads when it did not show
     */
    record Expect(String id, List<AnyOf> sequence, Window window, Move failed) implements Action {
        public Expect {
            sequence = List.copyOf(sequence);
        }
    }

    /** One or another of these signals. */
    record AnyOf(List<Signal> signals) {
        public AnyOf {
            signals = List.copyOf(signals);
        }
    }

    /**
     * When an expectation must hold, counted from a mark.
     *
     * @param mark    the mark's name
     * @param opens   the tone at which it must show: {@code within} or {@code from}
     * @param lasting how long from there on it must stay so; zero for the instant alone
     * @param by      true: it may come earlier ({@code within}); false: the state at {@code opens} counts ({@code from})
     */
    record Window(String mark, Duration opens, Duration lasting, boolean by) {
        /** The last instant that matters. */
        public Duration closes() {
            return opens.plus(lasting);
        }
    }

    /**
     * A measurement.
     *
     * @param id         its name
     * @param instrument the instrument's name in the plan
     * @param unit       the unit that a bare number is read in
     * @param limits     where the value must lie
     * @param rule       how it is decided
     * @param again      repeats when undecided
     * @param rejected   where a rejected value leads
     * @param undecided  where an undecided value leads when no repeat is left
     * @param meanOf     how many readings, 2 or more, are taken each time and decided by their mean; one reading where empty
     * @param entry      how it is entered; with everything in sight where empty
     */
    record Measure(String id, String instrument, UnitOfMeasure unit, Limits limits, DecisionRule rule, Optional<Again> again,
            Move rejected, Move undecided, Optional<Count> meanOf, Optional<Entry> entry) implements Action {

        /** How a reading is entered. */
        public enum Entry {
            /** Limits and earlier readings are shown only once it is entered. */
            BLIND
        }

        /** A measurement of one reading. */
        public Measure(String id, String instrument, UnitOfMeasure unit, Limits limits, DecisionRule rule, Optional<Again> again,
                Move rejected, Move undecided) {
            this(id, instrument, unit, limits, rule, again, rejected, undecided, Optional.empty(), Optional.empty());
        }

        /** True if the technician must not see where the value should lie before it is entered. */
        public boolean blind() {
            return entry.filter(how -> how == Entry.BLIND).isPresent();
        }

        /** How many readings are taken each time, 1 or more. */
        public int readings() {
            return meanOf.map(Count::number).orElse(1);
        }

        /** How the readings for its decision are taken. */
        public RepeatRisk.Taken taken() {
            return new RepeatRisk.Taken(readings(), again.map(Again::atMost).orElse(0), again.map(Again::combine).orElse(Combination.LAST));
        }
    }

    /** A number of things, where none may be stated. */
    record Count(int number) {
    }

    /**
     * A value reckoned from earlier measurements of this test and decided like a measured one; it asks nothing.
     *
     * @param id        its name
     * @param value     over the keys of measurements, {@code step.measurement}, and earlier derived values
     * @param limits    where it must lie
     * @param rule      how it is decided
     * @param rejected  where a rejected value leads
     * @param undecided where an undecided value leads
     */
    record Derive(String id, Expression value, Limits limits, DecisionRule rule, Move rejected, Move undecided) implements Action {
    }

    /**
     * A question whose answer decides how the test goes on, and nothing else: neither answer is a fault.
     *
     * @param id        its id
     * @param statement what is so or not
     * @param when      the answer at which the test leaves its way
     * @param to        where it goes then; empty: the rest of the step is passed over
     * @param remembered under which key the answer holds for the whole test; asked anew each time where empty
     */
    record Branch(String id, String statement, boolean when, Optional<Move.GoTo> to, Optional<String> remembered) implements Action {
    }

    /**
     * Repeating an undecided measurement.
     *
     * @param atMost  repeats after the first reading, 1 or more
     * @param combine how the readings are combined
     */
    record Again(int atMost, Combination combine) {
    }

    /** Free text to enter. */
    record EnterText(String id, String label) implements Action {
    }

    /**
     * The unit's fault log, line by line; no line is an answer too.
     *
     * @param asFound true: as it came, before anything was changed
     * @param title   which log it is and in which condition, as people read it
     */
    record EnterFaultLog(String id, boolean asFound, Optional<String> title) implements Action {
        /** The unit's one log. */
        public EnterFaultLog(String id, boolean asFound) {
            this(id, asFound, Optional.empty());
        }
    }

    /** A statement to confirm. */
    record Confirm(String id, String statement, Move failed) implements Action {
    }

    /** Two entries that must agree; letter case and white space do not count. */
    record Compare(String id, String left, String right, Move failed) implements Action {
    }

    /** A file to attach, such as a photo. */
    record Attach(String id, String kind, String label) implements Action {
    }

    /**
     * Something that could destroy, spelled out item by item.
     *
     * @param verb  what is done
     * @param only  items it is done to
     * @param spare items it must not be done to, protected ones always among them
     */
    record Choose(String id, Verb verb, List<Item> only, List<Item> spare, Move failed) implements Action {
        public Choose {
            only = List.copyOf(only);
            spare = List.copyOf(spare);
        }

        /** What is done to the items. */
        public enum Verb {
            ERASE, LOAD
        }

        /**
         * An item to choose or to spare.
         *
         * @param name      its name
         * @param title     as people read it
         * @param protect   true if the procedure protects it
         */
        public record Item(String name, String title, boolean protect) {
        }
    }

    /** Nobody goes on without a release. */
    record Release(String id, Role by, String statement, Move failed) implements Action {
    }

    /** Waiting; never shortened but by a rehearsal's clock. */
    record Wait(String id, Duration time) implements Action {
    }

    /** A stimulus or load to apply, confirmed by the technician. */
    record Apply(String id, Quantity quantity, String instrument) implements Action {
    }

    /** The test ends here. */
    record End(String id, Move.Conclude conclusion) implements Action {
    }

    /** The test goes on elsewhere, whatever the checks before came to. */
    record Go(String id, Move.GoTo to) implements Action {
    }

    /**
     * A grid of readings: every combination of the axes, the last axis changing fastest.
     *
     * @param reading    the name of what is read in each cell
     * @param unit       the unit it is read in
     * @param axes       one or more
     * @param settle     waiting time before each reading, zero for none
     * @param judged     what is compared with the limits, over the names of the reading and the axes
     * @param instrument whose uncertainty counts; empty where none was named
     */
    record Grid(String id, String reading, UnitOfMeasure unit, List<Axis> axes, Duration settle, Expression judged, Limits limits,
            DecisionRule rule, Optional<String> instrument, Move rejected, Move undecided) implements Action {
        public Grid {
            axes = List.copyOf(axes);
        }
    }

    /**
     * An axis of a grid.
     *
     * @param name       its name
     * @param values     in the order in which they are visited
     * @param instrument what sets it, where named
     */
    record Axis(String name, List<AxisValue> values, Optional<String> instrument) {
        public Axis {
            values = List.copyOf(values);
        }
    }

    /**
     * A value of an axis.
     *
     * @param label    as shown
     * @param quantity the value with its unit; empty for a plain count such as a channel number
     */
    record AxisValue(String label, Optional<Quantity> quantity) {
    }
}
