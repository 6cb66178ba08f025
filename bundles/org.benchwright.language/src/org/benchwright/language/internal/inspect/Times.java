package org.benchwright.language.internal.inspect;

import java.math.BigDecimal;

/** Which times a procedure can have. */
final class Times {

    /** A year; no soak comes near it, and deadlines stay within what a clock can count. */
    private static final BigDecimal LONGEST = BigDecimal.valueOf(366L * 24 * 3600);
    private static final BigDecimal SHORTEST = new BigDecimal("0.001");

    private Times() {
    }

    /** Whether so many seconds are between a millisecond and a year. */
    static boolean inRange(BigDecimal seconds) {
        return seconds.compareTo(SHORTEST) >= 0 && seconds.compareTo(LONGEST) <= 0;
    }
}
