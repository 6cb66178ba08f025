package org.benchwright.evidence;

import org.benchwright.evidence.internal.Require;

/**
 * How well a normal process fits between two limits (NIST/SEMATECH e-Handbook, 6.1.6).
 *
 * @param lower the lower specification limit
 * @param upper the upper one, above it
 * @param mean of the process
 * @param standardDeviation of the process, above zero
 */
public record Capability(double lower, double upper, double mean, double standardDeviation) {

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException when one is out of range
     */
    public Capability {
        Require.finite("lower limit", lower);
        Require.finite("upper limit", upper);
        Require.finite("mean", mean);
        Require.positive("standard deviation", standardDeviation);
        if (lower >= upper) {
            throw new IllegalArgumentException("The limits leave no room: " + lower + " .. " + upper);
        }
    }

    /**
     * What could be reached in the middle.
     *
     * @return Cp = (USL - LSL)/6s
     */
    public double cp() {
        return (upper - lower) / (6 * standardDeviation);
    }

    /**
     * The room above.
     *
     * @return Cpu = (USL - m)/3s
     */
    public double cpu() {
        return (upper - mean) / (3 * standardDeviation);
    }

    /**
     * The room below.
     *
     * @return Cpl = (m - LSL)/3s
     */
    public double cpl() {
        return (mean - lower) / (3 * standardDeviation);
    }

    /**
     * What is reached.
     *
     * @return Cpk, the smaller of Cpu and Cpl; negative when the mean lies outside
     */
    public double cpk() {
        return Math.min(cpu(), cpl());
    }

    /**
     * How far off the middle the mean lies.
     *
     * @return k = |middle - m| / half the width; 0 in the middle, 1 on a limit
     */
    public double offCentre() {
        return Math.abs((upper + lower) / 2 - mean) / ((upper - lower) / 2);
    }
}
