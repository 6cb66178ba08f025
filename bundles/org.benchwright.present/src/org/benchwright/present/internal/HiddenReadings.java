package org.benchwright.present.internal;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.engine.Demand;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.plan.Action;

/**
 * What nobody is to see while a reading is entered blind: earlier values of the same kind of quantity in this test, and everything that was
 * said about them. It is shown again once the reading is on record.
 */
final class HiddenReadings {

    private final Optional<Action.Measure> asked;
    private final Set<String> told = new HashSet<>();

    private HiddenReadings(Optional<Action.Measure> asked) {
        this.asked = asked;
    }

    /** What is to be hidden as the test stands. */
    static HiddenReadings of(TestRun run) {
        HiddenReadings hidden = new HiddenReadings(readNext(run.demand()).filter(Action.Measure::blind));
        run.events().stream().map(TestEvent::body).flatMap(HiddenReadings::values).filter(hidden::alike).map(Quantity::toString).forEach(hidden.told::add);
        run.events().stream().map(TestEvent::body).filter(body -> body instanceof Derived.CheckDecided && hidden.covers(body))
                .map(body -> ((Derived.CheckDecided) body).words()).forEach(hidden.told::add);
        return hidden;
    }

    /** The measurement whose reading comes next; that is so, too, while a reason is owed for taking it again. */
    private static Optional<Action.Measure> readNext(Demand demand) {
        if (demand instanceof Demand.GiveReason owed) {
            return owed.place().step().actions().stream().filter(action -> action instanceof Action.Measure m && m.id().equals(owed.check()))
                    .map(Action.Measure.class::cast).findFirst();
        }
        return demand instanceof Demand.TakeMeasurement m ? Optional.of(m.measure()) : Optional.empty();
    }

    /** Whether this is to be hidden. */
    boolean covers(EventBody body) {
        return asked.isPresent() && (values(body).anyMatch(this::alike) || body instanceof Derived derived && EventWords.derived(derived).filter(this::tells).isPresent());
    }

    /** What is shown in its place. */
    String words() {
        return Hands.HIDDEN.text(asked.map(measure -> Questions.spaced(measure.id())).orElse(""));
    }

    /** A move, a repeat or a nonconformity tells the value that led to it. */
    private boolean tells(String words) {
        return told.stream().anyMatch(value -> ValueInWords.tells(words, value));
    }

    private boolean alike(Quantity value) {
        return asked.filter(measure -> value.unit().sameDimension(measure.unit())).isPresent();
    }

    private static Stream<Quantity> values(EventBody body) {
        if (body instanceof Observation.Measured f) {
            return Stream.of(f.value());
        } else if (body instanceof Fact.Questioned f) {
            return Stream.of(f.value(), f.instead());
        } else if (body instanceof Observation.CellRead f) {
            return Stream.of(f.value());
        } else if (body instanceof Observation.PreconditionAnswered f) {
            return f.reading().stream();
        } else if (body instanceof Observation.Looked f) {
            return f.readings().stream().map(Observation.ConditionReading::value);
        } else if (body instanceof WatchFact.Held f) {
            return f.conditions().stream().flatMap(range -> Stream.of(range.low(), range.high()));
        } else if (body instanceof WatchFact.ConditionCrossed f) {
            return Stream.of(f.value());
        }
        return body instanceof Derived.CheckDecided d ? d.numbers().stream().flatMap(HiddenReadings::value) : Stream.empty();
    }

    private static Stream<Quantity> value(Derived.Numbers numbers) {
        try {
            return Stream.of(Quantity.parse(numbers.value()));
        } catch (QuantityFormatException none) {
            throw new IllegalStateException("a decision has its value as a quantity: " + numbers, none);
        }
    }
}
