package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.benchwright.evidence.Proportion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProportionTest {

    /** Values of the R package binom as kept in the tests of the Python package statsmodels (verified). */
    @ParameterizedTest
    @CsvSource({
        "18, 20, 0.6830172859809176, 0.9876514728297052, 0.6989663547715128, 0.972133518786232, 1e-10",
        "4, 20, 0.05733399705003284, 0.436614002996668, 0.0806576625797981, 0.4160174322518935, 1e-10",
        "4, 200, 0.005475565879556443, 0.05041360908989634, 0.00780442641634947, 0.05028708690582643, 1e-10",
        "190, 200, 0.9099724622986486, 0.975765834527891, 0.910421851861224, 0.972617354399236, 1e-10",
        "1, 30, 0.0008435709, 0.17216946, 0.00590859, 0.16670391, 1e-8",
        "0, 30, 0, 0.11570331, 0, 0.11351339, 1e-8" })
    void intervalsAt95(long hits, long of, double exactLower, double exactUpper, double scoreLower, double scoreUpper,
            double tolerance) {
        Proportion proportion = new Proportion(hits, of);
        assertEquals(exactLower, proportion.clopperPearson(0.95).lower(), tolerance);
        assertEquals(exactUpper, proportion.clopperPearson(0.95).upper(), tolerance);
        assertEquals(scoreLower, proportion.wilson(0.95).lower(), tolerance);
        assertEquals(scoreUpper, proportion.wilson(0.95).upper(), tolerance);
    }

    /** R's binom.test, kept in the same tests (verified). */
    @Test
    void exactBoundsOfR() {
        Proportion proportion = new Proportion(51, 235);
        assertEquals(0.1660633298083073, proportion.clopperPearson(0.95).lower(), 1e-12);
        assertEquals(0.2752683640289254, proportion.clopperPearson(0.95).upper(), 1e-12);
        assertEquals(0.1735252778065201, proportion.lowerBound(0.95), 1e-12);
        assertEquals(0.2659460862574313, proportion.upperBound(0.95), 1e-12);
    }

    /** Newcombe 1998, Table I: Wilson's 81/263 verified in a public test, the others from memory. */
    @ParameterizedTest
    @CsvSource({ "81, 263, 0.2527, 0.3676, 0.2553, 0.3662", "0, 20, 0, 0.1684, 0, 0.1611",
        "1, 29, 0.0009, 0.1776, 0.0061, 0.1718" })
    void intervalsOfNewcombe(long hits, long of, double exactLower, double exactUpper, double scoreLower,
            double scoreUpper) {
        intervalsAt95(hits, of, exactLower, exactUpper, scoreLower, scoreUpper, 5e-5);
    }

    /** NIST/SEMATECH e-Handbook 7.2.4.1, from memory; its last digit of the upper limit is 0.401029. */
    @Test
    void smallSampleOfNist() {
        Proportion proportion = new Proportion(4, 20);
        assertEquals(0.071354, proportion.clopperPearson(0.90).lower(), 1e-6);
        assertEquals(0.401028, proportion.clopperPearson(0.90).upper(), 1e-6);
        assertEquals(0.093118, proportion.wilson(0.90).lower(), 1e-6);
        assertEquals(0.378377, proportion.wilson(0.90).upper(), 1e-6);
    }

    @Test
    void allHitsLeaveNoRoomAbove() {
        assertEquals(1, new Proportion(30, 30).clopperPearson(0.95).upper());
        assertEquals(1, new Proportion(30, 30).wilson(0.95).upper());
        assertEquals(1 - 0.11570331, new Proportion(30, 30).clopperPearson(0.95).lower(), 1e-8);
        assertEquals(1, new Proportion(30, 30).estimate());
    }

    @Test
    void refusesNonsense() {
        assertThrows(IllegalArgumentException.class, () -> new Proportion(0, 0));
        assertThrows(IllegalArgumentException.class, () -> new Proportion(-1, 5));
        assertThrows(IllegalArgumentException.class, () -> new Proportion(6, 5));
        Proportion half = new Proportion(5, 10);
        assertThrows(IllegalArgumentException.class, () -> half.wilson(0));
        assertThrows(IllegalArgumentException.class, () -> half.clopperPearson(1));
        assertThrows(IllegalArgumentException.class, () -> half.lowerBound(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> half.upperBound(2));
    }
}
