package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.List;

import org.benchwright.evidence.SamplingPlan;
import org.benchwright.evidence.SamplingTable;
import org.benchwright.evidence.SamplingTable.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SamplingTest {

    /** MIL-STD-105E, single sampling, normal inspection, as the R package AQLSchemes holds it (verified). */
    @ParameterizedTest
    @CsvSource({ "2, 8, AAB, 20/0, 13/0, 5/0, 3/0", "9, 15, ABC, 20/0, 13/0, 5/0, 3/0", "16, 25, BCD, 20/0, 13/0, 5/0, 3/0",
        "26, 50, CDE, 20/0, 13/0, 5/0, 13/1", "51, 90, CEF, 20/0, 13/0, 20/1, 13/1", "91, 150, DFG, 20/0, 13/0, 20/1, 20/2",
        "151, 280, EGH, 20/0, 50/1, 32/2, 32/3", "281, 500, FHJ, 80/1, 50/1, 50/3, 50/5",
        "501, 1200, GJK, 80/1, 80/2, 80/5, 80/7", "1201, 3200, HKL, 125/2, 125/3, 125/7, 125/10",
        "3201, 10000, JLM, 200/3, 200/5, 200/10, 200/14" })
    void normalInspection(int from, int to, String letters, String at065, String at1, String at25, String at4) {
        for (int lot : new int[] { from, to }) {
            String found = List.of(Level.values()).stream()
                    .map(level -> String.valueOf(SamplingTable.codeLetter(lot, level))).reduce("", String::concat);
            assertEquals(letters, found);
            assertEquals(at065, plan(lot, "0.65"));
            assertEquals(at1, plan(lot, "1.0"));
            assertEquals(at25, plan(lot, "2.5"));
            assertEquals(at4, plan(lot, "4"));
        }
    }

    private static String plan(int lot, String acceptableQuality) {
        SamplingPlan plan = SamplingTable.plan(lot, Level.II, new BigDecimal(acceptableQuality));
        return plan.sampleSize() + "/" + plan.acceptance();
    }

    /** Corners of the master table, from memory: the arrows at its end lead back up. */
    @Test
    void cornersOfTheTable() {
        assertEquals('R', SamplingTable.codeLetter(Integer.MAX_VALUE, Level.III));
        assertEquals(new SamplingPlan(1250, 0), SamplingTable.plan(1_000_000, Level.III, new BigDecimal("0.010")));
        assertEquals(new SamplingPlan(800, 0), SamplingTable.plan(1_000_000, Level.III, new BigDecimal("0.015")));
        assertEquals(new SamplingPlan(2000, 1), SamplingTable.plan(1_000_000, Level.III, new BigDecimal("0.025")));
        assertEquals(new SamplingPlan(2, 0), SamplingTable.plan(2, Level.I, new BigDecimal("6.5")));
        assertEquals(new SamplingPlan(200, 21), SamplingTable.plan(1_000_000, Level.III, new BigDecimal("6.5")));
    }

    /** 7 CFR 42.140(c): n = 500, c = 3 accepts 26 % at 1.0 per hundred (verified). */
    @Test
    void operatingPointOfARegulation() {
        assertEquals(0.26, new SamplingPlan(500, 3).probabilityOfAcceptance(0.01), 5e-3);
    }

    /** MIL-STD-105, Table X-J, AQL 1.0 (from memory): n = 80, c = 2. */
    @ParameterizedTest
    @CsvSource({ "0.99, 0.550", "0.95, 1.03", "0.90, 1.38", "0.50, 3.33", "0.10, 6.52", "0.05, 7.66" })
    void operatingCurveOfTheStandard(double probability, double percent) {
        double quality = new SamplingPlan(80, 2).qualityAcceptedWith(probability);
        assertEquals(percent, 100 * quality, 0.01);
        assertEquals(probability, new SamplingPlan(80, 2).probabilityOfAcceptance(quality), 1e-9);
    }

    /** NIST/SEMATECH e-Handbook 6.2.3.2, n = 52, c = 3 (from memory); at .04 and .05 it is recalled as .845 and .739. */
    @ParameterizedTest
    @CsvSource({ "0.01, .998", "0.02, .980", "0.03, .930", "0.04, .846", "0.05, .738", "0.06, .620", "0.10, .223",
        "0.12, .115" })
    void operatingCurveOfNist(double nonconforming, double probability) {
        assertEquals(probability, new SamplingPlan(52, 3).probabilityOfAcceptance(nonconforming), 5.1e-4);
    }

    /** The same page's outgoing quality and total inspection for lots of 10 000 (from memory). */
    @Test
    void outgoingQualityOfNist() {
        SamplingPlan plan = new SamplingPlan(52, 3);
        assertEquals(.0099, plan.averageOutgoingQuality(10_000, 0.01), 1e-4);
        assertEquals(.0277, plan.averageOutgoingQuality(10_000, 0.03), 1e-4);
        assertEquals(.0370, plan.averageOutgoingQuality(10_000, 0.06), 1e-4);
        assertEquals(70.37, plan.averageTotalInspection(10_000, 0.01), 0.01);
        assertEquals(752.96, plan.averageTotalInspection(10_000, 0.03), 0.01);
    }

    /** Plan of an example of the R package AcceptanceSampling; values computed. */
    @ParameterizedTest
    @CsvSource({ "0.05, 250, .913862, .914026", "0.10, 500, .736099, .736138", "0.20, 1000, .375810, .375568",
        "0.30, 1500, .149308, .149044" })
    void streamAndLot(double part, int units, double stream, double lot) {
        assertEquals(stream, new SamplingPlan(10, 1).probabilityOfAcceptance(part), 1e-6);
        assertEquals(lot, new SamplingPlan(10, 1).probabilityOfAcceptance(5000, units), 1e-6);
    }

    /** C(45,8)/C(50,8), by hand. */
    @Test
    void smallLot() {
        assertEquals(0.4014933263, new SamplingPlan(8, 0).probabilityOfAcceptance(50, 5), 1e-10);
    }

    @Test
    void refusesNonsense() {
        SamplingPlan plan = new SamplingPlan(10, 1);
        BigDecimal unknown = new BigDecimal("1.1");
        assertThrows(IllegalArgumentException.class, () -> new SamplingPlan(0, 0));
        assertThrows(IllegalArgumentException.class, () -> new SamplingPlan(5, 5));
        assertThrows(IllegalArgumentException.class, () -> new SamplingPlan(5, -1));
        assertThrows(IllegalArgumentException.class, () -> plan.probabilityOfAcceptance(1.1));
        assertThrows(IllegalArgumentException.class, () -> plan.probabilityOfAcceptance(9, 0));
        assertThrows(IllegalArgumentException.class, () -> plan.probabilityOfAcceptance(20, 21));
        assertThrows(IllegalArgumentException.class, () -> plan.qualityAcceptedWith(0));
        assertThrows(IllegalArgumentException.class, () -> plan.averageOutgoingQuality(5, 0.1));
        assertThrows(IllegalArgumentException.class, () -> SamplingTable.codeLetter(1, Level.II));
        assertThrows(IllegalArgumentException.class, () -> SamplingTable.plan(100, Level.II, unknown));
    }
}
