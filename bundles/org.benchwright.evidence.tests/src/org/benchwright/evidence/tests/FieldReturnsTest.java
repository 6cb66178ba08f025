package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

import org.benchwright.evidence.FieldReturns;
import org.benchwright.evidence.Lifetime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What comes back of the units that were handed over. */
class FieldReturnsTest {

    /** What is left of the surviving part that the R package MASS prints for the treated group of Freireich 1963 (verified). */
    @ParameterizedTest
    @CsvSource({ "6, 3, 0.857143", "7, 4, 0.806723", "10, 5, 0.752941", "13, 6, 0.690196", "16, 7, 0.627451", "22, 8, 0.537815",
        "23, 9, 0.448179" })
    void returnsAreWhatThePublishedCurveLoses(double until, int returned, double surviving) {
        FieldReturns returns = FieldReturns.within(SurvivalTest.TREATED, until, 0.95);
        assertEquals(1 - surviving, returns.escaped(), 1e-6);
        assertEquals(returned, returns.returned());
        assertEquals(21, returns.handedOver());
    }

    /** The same output (verified): 0.620 .. 0.952 survive at 6. */
    @Test
    void returnsHaveTheLimitsOfThePublishedCurve() {
        FieldReturns returns = FieldReturns.within(SurvivalTest.TREATED, 6, 0.95);
        assertEquals(1 - 0.952, returns.limits().lower(), 5e-4);
        assertEquals(1 - 0.620, returns.limits().upper(), 5e-4);
    }

    /** Of the units out for 90 days or returned, and those out for 30: 4/100, then of 52 left after 48 dropped out 1. */
    @Test
    void unitsThatAreNotOutForLongDoNotFlatter() {
        List<Lifetime> units = new ArrayList<>(Collections.nCopies(4, Lifetime.failedAt(10)));
        units.addAll(Collections.nCopies(44, Lifetime.aliveAt(30)));
        units.add(Lifetime.failedAt(60));
        units.addAll(Collections.nCopies(51, Lifetime.aliveAt(120)));
        FieldReturns returns = FieldReturns.within(units, 90, 0.95);
        assertEquals(1 - 0.96 * (51 / 52.0), returns.escaped(), 1e-12);
        assertEquals(5, returns.returned());
        assertEquals(100, returns.handedOver());
        assertTrue(returns.escaped() > 0.05);
        assertThrows(IllegalArgumentException.class, () -> FieldReturns.within(units, 0, 0.95));
        assertThrows(IllegalArgumentException.class, () -> FieldReturns.within(List.of(), 90, 0.95));
    }
}
