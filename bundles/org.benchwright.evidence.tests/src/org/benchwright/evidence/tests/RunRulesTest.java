package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;

import org.benchwright.evidence.ControlChart;
import org.benchwright.evidence.RunRules;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Runs on a control chart, and how often they are false alarms. */
class RunRulesTest {

    /**
     * Mean number of points to a false alarm, Champ and Woodall 1987 (from memory): 370.40 with rule 1, 225.44 with 1 and
     * 2, 166.05 with 1 and 3, 152.73 with 1 and 4, 91.75 with all four. Simulated, so within four standard errors.
     */
    @ParameterizedTest
    @CsvSource({ "1000, 370.40", "1100, 225.44", "1010, 166.05", "1001, 152.73", "1111, 91.75" })
    void falseAlarmsOfRunRules(String which, double published) {
        Set<RunRules> rules = EnumSet.noneOf(RunRules.class);
        for (int i = 0; i < which.length(); i++) {
            if (which.charAt(i) == '1') {
                rules.add(RunRules.values()[i]);
            }
        }
        Random random = new Random(1987);
        int runs = 4000;
        double sum = 0;
        double squares = 0;
        for (int run = 0; run < runs; run++) {
            double length = lengthToAlarm(random, rules);
            sum += length;
            squares += length * length;
        }
        double mean = sum / runs;
        assertEquals(published, mean, 4 * Math.sqrt((squares / runs - mean * mean) / runs));
    }

    private static double lengthToAlarm(Random random, Set<RunRules> rules) {
        List<Double> points = new ArrayList<>();
        int before = 0;
        while (true) {
            for (int i = 0; i < 100; i++) {
                points.add(random.nextGaussian());
            }
            List<Double> window = points.subList(Math.max(0, points.size() - 110), points.size());
            List<RunRules.Signal> signals = RunRules.signals(new ControlChart(window, -3, 0, 3), rules);
            int offset = points.size() - window.size();
            int known = before;
            var first = signals.stream().mapToInt(signal -> offset + signal.place()).filter(place -> place >= known).min();
            if (first.isPresent()) {
                return first.getAsInt() + 1;
            }
            before = points.size();
        }
    }

    @Test
    void runsAreCompletedByTheirLastPoint() {
        assertEquals("[]", signals(RunRules.TWO_OF_THREE_BEYOND_TWO, 2.1, 0, 0, 2.1));
        assertEquals("[2]", signals(RunRules.TWO_OF_THREE_BEYOND_TWO, 2.1, 0, 2.1));
        assertEquals("[]", signals(RunRules.TWO_OF_THREE_BEYOND_TWO, 2.1, 0, -2.1));
        assertEquals("[4]", signals(RunRules.FOUR_OF_FIVE_BEYOND_ONE, -1.1, -1.1, 0, -1.1, -1.1));
        assertEquals("[7, 8]", signals(RunRules.EIGHT_ON_ONE_SIDE, .1, .1, .1, .1, .1, .1, .1, .1, .1));
        assertEquals("[5]", signals(RunRules.SIX_RISING_OR_FALLING, .6, .5, .4, .3, .2, .1, .1));
        assertEquals("[1]", signals(RunRules.ONE_BEYOND_THREE, 3, -3.01));
        assertEquals(List.of(), RunRules.signals(new ControlChart(List.of(1.0, 1.0), 1, 1, 1), RunRules.westernElectric()));
    }

    private static String signals(RunRules rule, double... points) {
        List<Double> list = Arrays.stream(points).boxed().toList();
        return RunRules.signals(new ControlChart(list, -3, 0, 3), EnumSet.of(rule)).stream().map(RunRules.Signal::place)
                .toList().toString();
    }
}
