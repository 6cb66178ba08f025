package org.benchwright.language.internal.flow;

import java.util.HashSet;
import java.util.Set;

import org.benchwright.model.Value;

/**
 * What is known at a place, whichever way led there.
 *
 * @param mayBeOn      on some way the supply is on
 * @param hazardShown  on every way a hazard to people was shown
 * @param recorded     names of the kept items that were entered on every way
 * @param measured     of the values that others are derived from, those that were measured on every way
 */
public record FlowState(boolean mayBeOn, boolean hazardShown, Set<String> recorded, Set<Value> measured) {

    /** Before the test: everything off, nothing shown, nothing recorded. */
    public static final FlowState START = new FlowState(false, false, Set.of(), Set.of());

    public FlowState {
        recorded = Set.copyOf(recorded);
        measured = Set.copyOf(measured);
    }

    /** What is known where two ways meet. */
    public FlowState join(FlowState other) {
        return new FlowState(mayBeOn || other.mayBeOn, hazardShown && other.hazardShown, both(recorded, other.recorded),
                both(measured, other.measured));
    }

    private static <T> Set<T> both(Set<T> one, Set<T> other) {
        if (one.equals(other)) {
            return one;
        }
        Set<T> both = new HashSet<>(one);
        both.retainAll(other);
        return both;
    }

    FlowState on() {
        return new FlowState(true, hazardShown, recorded, measured);
    }

    FlowState off() {
        return new FlowState(false, hazardShown, recorded, measured);
    }

    FlowState withHazard() {
        return new FlowState(mayBeOn, true, recorded, measured);
    }

    FlowState withRecord(String item) {
        Set<String> more = new HashSet<>(recorded);
        more.add(item);
        return new FlowState(mayBeOn, hazardShown, more, measured);
    }

    FlowState withValue(Value value) {
        Set<Value> more = new HashSet<>(measured);
        more.add(value);
        return new FlowState(mayBeOn, hazardShown, recorded, more);
    }
}
