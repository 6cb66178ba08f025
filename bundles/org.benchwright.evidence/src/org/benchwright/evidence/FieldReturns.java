package org.benchwright.evidence;

import java.util.List;
import java.util.Map;

import org.benchwright.evidence.internal.Require;

/**
 * Escapes: units that came back within n days of being handed over although they had been accepted. Units that have not
 * been out for n days yet count for the days they have; otherwise a growing workshop would look better than it is (Kaplan
 * and Meier). What nobody sent back is not known.
 *
 * @param days n
 * @param handedOver how many units were handed over
 * @param returned how many of them came back within n days
 * @param escaped the estimated part that comes back within n days, 0 to 1
 * @param limits confidence limits for that part
 */
public record FieldReturns(double days, int handedOver, int returned, double escaped, Proportion.Interval limits) {

    /**
     * Counts.
     *
     * @param units for each unit the days since it was handed over, ended by its return or not; above zero
     * @param days n, above zero
     * @param confidence two-sided, between 0 and 1
     * @return the escapes
     * @throws IllegalArgumentException when a number is out of range, or no unit has been out for n days or come back
     */
    public static FieldReturns within(List<Lifetime> units, double days, double confidence) {
        return within(RiskTable.counted(units), days, confidence);
    }

    /**
     * Counts units that are counted already.
     *
     * @param units how many units have been out alike, above zero each
     * @param days n, above zero
     * @param confidence two-sided, between 0 and 1
     * @return the escapes
     * @throws IllegalArgumentException as for single units
     */
    public static FieldReturns within(Map<Lifetime, Long> units, double days, double confidence) {
        Require.positive("number of days", days);
        SoakDay stretch = SoakDay.of(units, 0, days, confidence);
        long all = units.values().stream().mapToLong(Long::longValue).sum();
        return new FieldReturns(days, Math.toIntExact(all), stretch.stopped(), stretch.foundPer1000() / 1000,
                new Proportion.Interval(stretch.least() / 1000, stretch.most() / 1000));
    }
}
