package org.benchwright.engine.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

import org.benchwright.core.Quantity;
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

    /** A cell by the names of its axes: {@code channel 2, applied 12 mA}. */
    static String words(Action.Grid grid, int cell) {
        List<Action.AxisValue> at = at(grid, cell);
        return IntStream.range(0, at.size()).mapToObj(axis -> grid.axes().get(axis).name().replace('_', ' ') + " " + at.get(axis).label())
                .collect(Collectors.joining(", "));
    }

    /**
     * What is compared with the limits in a cell.
     *
     * @throws IllegalArgumentException if a name has no value, or dimensions differ
     */
    static Quantity judged(Action.Grid g, int cell, Quantity reading) {
        Map<String, Quantity> values = new HashMap<>();
        List<Action.AxisValue> at = Cells.at(g, cell);
        for (int i = 0; i < at.size(); i++) {
            String axis = g.axes().get(i).name();
            at.get(i).quantity().ifPresent(q -> values.put(axis, q));
        }
        values.put(g.reading(), reading);
        return g.judged().value(values).to(g.limits().unit());
    }
}
