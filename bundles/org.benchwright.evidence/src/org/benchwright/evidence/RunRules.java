package org.benchwright.evidence;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Runs on a control chart that a process that does not change hardly ever shows, after the Western Electric handbook of
 * 1956 (NIST/SEMATECH e-Handbook, 6.3.2). The standard deviation is a third of the distance from the centre to the upper
 * limit. Each rule more raises more false alarms: a signal on average every 370 points with the first rule alone, every 92
 * with the first four (Champ and Woodall 1987). Assumes independent normal points.
 */
public enum RunRules {
    /** A point beyond three standard deviations. */
    ONE_BEYOND_THREE(1, 1, 3),
    /** Two of three points in a row beyond two, on one side. */
    TWO_OF_THREE_BEYOND_TWO(2, 3, 2),
    /** Four of five points in a row beyond one, on one side. */
    FOUR_OF_FIVE_BEYOND_ONE(4, 5, 1),
    /** Eight points in a row on one side of the centre. */
    EIGHT_ON_ONE_SIDE(8, 8, 0),
    /** Six points in a row, each above the one before or each below. */
    SIX_RISING_OR_FALLING(6, 6, Double.NaN);

    private final int needed;
    private final int window;
    private final double beyond;

    RunRules(int needed, int window, double beyond) {
        this.needed = needed;
        this.window = window;
        this.beyond = beyond;
    }

    /**
     * A rule that a point completes.
     *
     * @param place of the point, from 0
     * @param rule which
     */
    public record Signal(int place, RunRules rule) {
    }

    /** The first four rules, which belong together. */
    public static Set<RunRules> westernElectric() {
        return EnumSet.of(ONE_BEYOND_THREE, TWO_OF_THREE_BEYOND_TWO, FOUR_OF_FIVE_BEYOND_ONE, EIGHT_ON_ONE_SIDE);
    }

    /**
     * All signals of a chart.
     *
     * @param chart its points, in their order
     * @param rules which to apply
     * @return the signals, by place; none on a chart whose points are all alike
     */
    public static List<Signal> signals(ControlChart chart, Set<RunRules> rules) {
        double deviation = (chart.upper() - chart.centre()) / 3;
        double[] places = chart.points().stream()
                .mapToDouble(point -> deviation == 0 ? 0 : (point - chart.centre()) / deviation).toArray();
        List<Signal> signals = new ArrayList<>();
        for (int i = 0; i < places.length; i++) {
            for (RunRules rule : rules) {
                if (rule.completedBy(places, i)) {
                    signals.add(new Signal(i, rule));
                }
            }
        }
        return signals;
    }

    /**
     * Whether a point completes this rule.
     *
     * @param places points in standard deviations from the centre
     * @param last the place of the point, from 0
     * @return true when the point itself and enough before it fulfil the rule
     */
    boolean completedBy(double[] places, int last) {
        return this == SIX_RISING_OR_FALLING ? monotone(places, last) : beyond(places, last, 1) || beyond(places, last, -1);
    }

    private boolean beyond(double[] places, int last, int side) {
        if (side * places[last] <= beyond) {
            return false;
        }
        int found = 0;
        for (int i = Math.max(0, last - window + 1); i <= last; i++) {
            found += side * places[i] > beyond ? 1 : 0;
        }
        return found >= needed;
    }

    private boolean monotone(double[] places, int last) {
        if (last + 1 < window) {
            return false;
        }
        boolean rising = true;
        boolean falling = true;
        for (int i = last - window + 2; i <= last; i++) {
            rising &= places[i] > places[i - 1];
            falling &= places[i] < places[i - 1];
        }
        return rising || falling;
    }
}
