package org.benchwright.engine.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

import org.benchwright.engine.plan.Action;

/** The cells of a grid in the order in which they are read: the last axis changes fastest. */
final class Cells {

    private Cells() {
    }

    static int count(Action.Grid grid) {
        return grid.axes().stream().mapToInt(a -> a.values().size()).reduce(1, Math::multiplyExact);
    }

    static List<Action.AxisValue> at(Action.Grid grid, int cell) {
        List<Action.AxisValue> values = new ArrayList<>();
        int rest = cell;
        for (int i = grid.axes().size() - 1; i >= 0; i--) {
            List<Action.AxisValue> axis = grid.axes().get(i).values();
            values.add(axis.get(rest % axis.size()));
            rest /= axis.size();
        }
        Collections.reverse(values);
        return List.copyOf(values);
    }
}
