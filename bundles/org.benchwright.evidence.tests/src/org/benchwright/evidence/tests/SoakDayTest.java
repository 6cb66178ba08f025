package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.SoakDay;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a stretch of the soak finds and costs. */
class SoakDayTest {

    /** 200 units: 20 stop in the first day, 10 in the second, 5 in the third; by hand. */
    @Test
    void whatTheThirdDayFinds() {
        List<Lifetime> soaks = new ArrayList<>(Collections.nCopies(20, Lifetime.failedAt(12)));
        soaks.addAll(Collections.nCopies(10, Lifetime.failedAt(36)));
        soaks.addAll(Collections.nCopies(5, Lifetime.failedAt(60)));
        soaks.addAll(Collections.nCopies(165, Lifetime.aliveAt(72)));
        SoakDay third = SoakDay.of(soaks, 48, 72, 0.95);
        assertEquals(170, third.reached());
        assertEquals(5, third.stopped());
        assertEquals(1000 * 5 / 170.0, third.foundPer1000(), 1e-9);
        assertEquals((165 * 24 + 5 * 12) / 5.0, third.stationHoursEach(), 1e-9);
        assertTrue(third.least() < third.foundPer1000() && third.foundPer1000() < third.most());
        List<SoakDay> days = SoakDay.eachDay(soaks, 0.95);
        assertEquals(3, days.size());
        assertEquals(third, days.get(2));
        assertEquals(100, days.get(0).foundPer1000(), 1e-9);
    }

    /** Nothing found: zero, but not more than 1 - 0.025^(1/n) (Clopper and Pearson). */
    @Test
    void aDayThatFindsNothingStillHasALimit() {
        SoakDay none = SoakDay.of(Collections.nCopies(30, Lifetime.aliveAt(72)), 48, 72, 0.95);
        assertEquals(0, none.foundPer1000());
        assertEquals(115.70331, none.most(), 1e-5);
        assertEquals(Double.POSITIVE_INFINITY, none.stationHoursEach());
        List<Lifetime> tooShort = Collections.nCopies(30, Lifetime.aliveAt(60));
        assertThrows(IllegalArgumentException.class, () -> SoakDay.of(tooShort, 48, 72, 0.95));
        assertThrows(IllegalArgumentException.class, () -> SoakDay.of(tooShort, 60, 72, 0.95));
        assertThrows(IllegalArgumentException.class, () -> SoakDay.of(tooShort, 24, 24, 0.95));
        assertThrows(IllegalArgumentException.class, () -> SoakDay.of(tooShort, 0, 24, 1));
        assertTrue(SoakDay.eachDay(List.of(), 0.95).isEmpty());
        assertEquals(2, SoakDay.eachDay(tooShort, 0.95).size());
    }

    /** All 30 found: at least 0.025^(1/30) of all (Clopper and Pearson). Units taken off before the end might have stopped, too. */
    @Test
    void aDayThatFindsAllHasALowerLimit() {
        SoakDay all = SoakDay.of(Collections.nCopies(30, Lifetime.failedAt(12)), 0, 24, 0.95);
        assertEquals(1000, all.foundPer1000());
        assertEquals(1000 - 115.70331, all.least(), 1e-5);
        assertEquals(1000, all.most());
        List<Lifetime> someTakenOff = new ArrayList<>(Collections.nCopies(17, Lifetime.failedAt(12)));
        someTakenOff.addAll(List.of(Lifetime.failedAt(24), Lifetime.aliveAt(6), Lifetime.aliveAt(6)));
        // 18 of 20, as the R package binom has it (verified)
        assertEquals(683.0172860, SoakDay.of(someTakenOff, 0, 24, 0.95).least(), 1e-6);
    }

    /**
     * What the R package MASS prints for the treated group of Freireich 1963 (verified): of those that are left at the beginning, what is lost
     * until the end.
     */
    @ParameterizedTest
    @CsvSource({ "0, 6, 1, 0.857143", "6, 7, 0.857143, 0.806723", "6, 10, 0.857143, 0.752941", "10, 13, 0.752941, 0.690196",
        "13, 16, 0.690196, 0.627451", "16, 23, 0.627451, 0.448179" })
    void aStretchFindsWhatThePublishedCurveLosesInIt(double from, double to, double before, double after) {
        assertEquals(1000 * (1 - after / before), SoakDay.of(SurvivalTest.TREATED, from, to, 0.95).foundPer1000(), 2e-3);
    }
}
