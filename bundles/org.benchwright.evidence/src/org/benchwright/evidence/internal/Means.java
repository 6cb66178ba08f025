package org.benchwright.evidence.internal;

import java.util.List;

/** The arithmetic mean. */
public final class Means {

    private Means() {
    }

    /**
     * The mean of readings. Deviations from the first one are summed, so that leading digits shared by all don't cost any, and the mean of
     * equal readings is that reading.
     *
     * @param what     the name of the readings
     * @param readings at least one
     * @return their mean
     * @throws IllegalArgumentException when one is no finite number
     */
    public static double of(String what, List<Double> readings) {
        readings.forEach(reading -> Require.summable(what, reading));
        double first = readings.get(0);
        return first + readings.stream().mapToDouble(reading -> reading - first).sum() / readings.size();
    }
}
