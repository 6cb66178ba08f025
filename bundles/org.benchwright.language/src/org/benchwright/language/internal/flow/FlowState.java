package org.benchwright.language.internal.flow;

import java.util.HashSet;
import java.util.Set;

/**
 * What is known at a place, whichever way led there.
 *
 * @param mayBeOn      on some way the supply is on
 * @param hazardShown  on every way a hazard to people was shown
 * @param recorded     names of the kept items that were entered on every way
 */
public record FlowState(boolean mayBeOn, boolean hazardShown, Set<String> recorded) {

    /** Before the test: everything off, nothing shown, nothing recorded. */
    public static final FlowState START = new FlowState(false, false, Set.of());

    public FlowState {
        recorded = Set.copyOf(recorded);
    }

    /** What is known where two ways meet. */
    public FlowState join(FlowState other) {
        Set<String> both = new HashSet<>(recorded);
        both.retainAll(other.recorded);
        return new FlowState(mayBeOn || other.mayBeOn, hazardShown && other.hazardShown, both);
    }

    FlowState on() {
        return new FlowState(true, hazardShown, recorded);
    }

    FlowState off() {
        return new FlowState(false, hazardShown, recorded);
    }

    FlowState withHazard() {
        return new FlowState(mayBeOn, true, recorded);
    }

    FlowState withRecord(String item) {
        Set<String> more = new HashSet<>(recorded);
        more.add(item);
        return new FlowState(mayBeOn, hazardShown, more);
    }
}
