package org.benchwright.evidence.internal;

import java.util.OptionalDouble;

/** Refuses nonsense with words, before a formula turns it into a number that looks right. */
public final class Require {

    private static final double LARGEST_SUMMABLE = 1e100;

    private Require() {
    }

    /**
     * Refuses infinities and NaN.
     *
     * @param what the name of the number
     * @param number the number
     * @throws IllegalArgumentException when it is refused
     */
    public static void finite(String what, double number) {
        if (!Double.isFinite(number)) {
            throw refused(what, "must be a finite number", number);
        }
    }

    /**
     * Refuses infinities, NaN and numbers whose squares can't be summed up.
     *
     * @param what the name of the number
     * @param number the number
     * @throws IllegalArgumentException when it is refused
     */
    public static void summable(String what, double number) {
        finite(what, number);
        if (Math.abs(number) > LARGEST_SUMMABLE) {
            throw refused(what, "is larger than anything that is measured", number);
        }
    }

    /**
     * Refuses negative numbers, infinities and NaN.
     *
     * @param what the name of the number
     * @param number the number
     * @throws IllegalArgumentException when it is refused
     */
    public static void notNegative(String what, double number) {
        finite(what, number);
        if (number < 0) {
            throw refused(what, "must not be negative", number);
        }
    }

    /**
     * Refuses zero, negative numbers, infinities and NaN.
     *
     * @param what the name of the number
     * @param number the number
     * @throws IllegalArgumentException when it is refused
     */
    public static void positive(String what, double number) {
        finite(what, number);
        if (number <= 0) {
            throw refused(what, "must be above zero", number);
        }
    }

    /**
     * Refuses everything but numbers between 0 and 1, ends excluded.
     *
     * @param what the name of the number
     * @param number the number
     * @throws IllegalArgumentException when it is refused
     */
    public static void properFraction(String what, double number) {
        if (!(number > 0 && number < 1)) {
            throw refused(what, "must lie between 0 and 1", number);
        }
    }

    /**
     * Refuses everything but numbers from 0 to 1, ends included.
     *
     * @param what the name of the number
     * @param number the number
     * @throws IllegalArgumentException when it is none of them
     */
    public static void part(String what, double number) {
        if (!(number >= 0 && number <= 1)) {
            throw refused(what, "must be 0 to 1", number);
        }
    }

    /**
     * Refuses negative counts.
     *
     * @param what the name of the count
     * @param count the count
     * @throws IllegalArgumentException when it is refused
     */
    public static void count(String what, long count) {
        if (count < 0) {
            throw new IllegalArgumentException("The " + what + " must not be negative: " + count);
        }
    }

    /**
     * Refuses missing, inverted and undefined limits.
     *
     * @param lower the lower limit, or nothing
     * @param upper the upper limit, or nothing
     * @throws IllegalArgumentException when they are refused
     */
    public static void limits(OptionalDouble lower, OptionalDouble upper) {
        if (lower.isEmpty() && upper.isEmpty()) {
            throw new IllegalArgumentException("A lower or an upper limit is needed.");
        }
        lower.ifPresent(limit -> finite("lower limit", limit));
        upper.ifPresent(limit -> finite("upper limit", limit));
        if (lower.isPresent() && upper.isPresent() && lower.getAsDouble() > upper.getAsDouble()) {
            throw new IllegalArgumentException(
                    "The limits are inverted: " + lower.getAsDouble() + " lies above " + upper.getAsDouble());
        }
    }

    private static IllegalArgumentException refused(String what, String rule, double number) {
        return new IllegalArgumentException("The " + what + " " + rule + ": " + number);
    }
}
