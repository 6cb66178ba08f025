package org.benchwright.language.internal.flow;

import java.util.BitSet;

/** The same as a {@link FlowState}, with numbers for things. Never changes. */
record Facts(boolean mayBeOn, boolean hazardShown, BitSet recorded, BitSet measured) {

    /** Before the test: everything off, nothing shown, nothing recorded. */
    static Facts start() {
        return new Facts(false, false, new BitSet(), new BitSet());
    }

    /** What is known where two ways meet; this very object where the other way takes no certainty away. */
    Facts join(Facts other) {
        BitSet bothRecorded = both(recorded, other.recorded);
        BitSet bothMeasured = both(measured, other.measured);
        boolean on = mayBeOn || other.mayBeOn;
        boolean shown = hazardShown && other.hazardShown;
        boolean same = on == mayBeOn && shown == hazardShown && bothRecorded == recorded && bothMeasured == measured;
        return same ? this : new Facts(on, shown, bothRecorded, bothMeasured);
    }

    private static BitSet both(BitSet one, BitSet other) {
        if (one == other || one.isEmpty()) {
            return one;
        }
        BitSet both = (BitSet) one.clone();
        both.and(other);
        return both.equals(one) ? one : both;
    }

    Facts on(boolean now) {
        return now == mayBeOn ? this : new Facts(now, hazardShown, recorded, measured);
    }

    Facts withHazard() {
        return hazardShown ? this : new Facts(mayBeOn, true, recorded, measured);
    }

    Facts withRecord(int item) {
        return recorded.get(item) ? this : new Facts(mayBeOn, hazardShown, with(recorded, item), measured);
    }

    Facts withValue(int value) {
        return measured.get(value) ? this : new Facts(mayBeOn, hazardShown, recorded, with(measured, value));
    }

    private static BitSet with(BitSet some, int one) {
        BitSet more = (BitSet) some.clone();
        more.set(one);
        return more;
    }
}
