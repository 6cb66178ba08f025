package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;

import org.benchwright.evidence.RepeatRisk;
import org.benchwright.evidence.Uncertainty;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UncertaintyTest {

    private static final Uncertainty DIFFERENCE = Uncertainty.combined(
            List.of(new Uncertainty(5.8, 24), new Uncertainty(3.9, 5), new Uncertainty(6.7, 8)));

    private static final Uncertainty END_GAUGE = Uncertainty.combined(List.of(new Uncertainty(25, 18), DIFFERENCE,
            // 50 mm: 5 nm per (1e-6/K x 0.1 K), half-width 1e-6/K; 11.5e-6/K, half-width 0.05 K
            new Uncertainty(Uncertainty.rectangular(5).standard(), 50),
            new Uncertainty(Uncertainty.rectangular(575 * 0.05).standard(), 2)));

    /**
     * JCGM 100:2008, H.1 (end gauge, nm), figures as reproduced by the Guide's uncertainty calculator of the Measurement
     * Standards Laboratory of New Zealand (verified). The Guide prints 9.7 and 25.6, 32 and 16.7.
     */
    @Test
    void endGaugeOfTheGuide() {
        assertEquals(9.68194195397, DIFFERENCE.standard(), 1e-10);
        assertEquals(25.4472507774, DIFFERENCE.degreesOfFreedom(), 1e-9);
        assertEquals(31.6637674111, END_GAUGE.standard(), 1e-9);
        assertEquals(16.7521475092, END_GAUGE.degreesOfFreedom(), 1e-9);
    }

    /** JCGM 100:2008, H.1.6: t99(16) = 2.92 and U99 = 93 nm (from memory; 92.5 without rounding on the way). */
    @Test
    void expandedUncertaintyOfTheEndGauge() {
        assertEquals(2.92, END_GAUGE.coverageFactor(0.99), 5e-3);
        assertEquals(93, END_GAUGE.expanded(0.99), 1);
    }

    /** JCGM 100:2008, Table G.2 (verified in tests of a public uncertainty calculator). */
    @ParameterizedTest
    @CsvSource({ "0.6827, 1, 1.84", "0.95, 1, 12.71", "0.90, 20, 1.72" })
    void coverageFactorsOfTheGuide(double confidence, double degreesOfFreedom, double published) {
        assertEquals(published, new Uncertainty(1, degreesOfFreedom).coverageFactor(confidence), 5e-3);
        assertEquals(published, new Uncertainty(1, degreesOfFreedom + 0.9).coverageFactor(confidence), 5e-3);
    }

    /** JCGM 100:2008, 4.3.7, 4.3.9 and H.1.3.4 (from memory). */
    @Test
    void shapesOfTheGuide() {
        assertEquals(0.577350, Uncertainty.rectangular(1).standard(), 1e-6);
        assertEquals(0.408248, Uncertainty.triangular(1).standard(), 1e-6);
        assertEquals(0.707107, Uncertainty.uShaped(1).standard(), 1e-6);
        assertEquals(0.025, Uncertainty.ofCertificate(0.05, 2).standard(), 1e-15);
        assertEquals(1.959964, Uncertainty.known(1).coverageFactor(0.95), 1e-6);
    }

    @Test
    void nothingIsLostWithTinyOrHugeNumbers() {
        for (double scale : new double[] { 1e-120, 1, 1e120 }) {
            Uncertainty combined = Uncertainty.combined(
                    List.of(new Uncertainty(3 * scale, 4), new Uncertainty(4 * scale, 4)));
            assertEquals(5 * scale, combined.standard(), 1e-14 * scale);
            assertEquals(625 * 4 / 337.0, combined.degreesOfFreedom(), 1e-12);
        }
        assertEquals(Uncertainty.known(0), Uncertainty.combined(List.of(new Uncertainty(0, 3))));
        assertEquals(Double.POSITIVE_INFINITY,
                Uncertainty.combined(List.of(Uncertainty.known(1), new Uncertainty(0, 3))).degreesOfFreedom());
    }

    @Test
    void theMeanSharesTheInstrumentsOwnError() {
        assertEquals(1, RepeatRisk.uncertaintyOfMean(1, 1, 9), 1e-15);
        assertEquals(1 / 3.0, RepeatRisk.uncertaintyOfMean(1, 0, 9), 1e-15);
        assertEquals(Math.sqrt(0.25 + 0.75 / 3), RepeatRisk.uncertaintyOfMean(1, 0.25, 3), 1e-15);
    }

    @Test
    void refusesNonsense() {
        assertThrows(IllegalArgumentException.class, () -> new Uncertainty(-1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Uncertainty(1, 0));
        assertThrows(IllegalArgumentException.class, () -> new Uncertainty(1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Uncertainty.combined(List.of()));
        assertThrows(IllegalArgumentException.class, () -> Uncertainty.rectangular(-1));
        assertThrows(IllegalArgumentException.class, () -> Uncertainty.ofCertificate(1, 0));
        assertThrows(IllegalArgumentException.class, () -> Uncertainty.known(1).coverageFactor(1));
        assertThrows(IllegalArgumentException.class, () -> RepeatRisk.uncertaintyOfMean(1, 2, 1));
        assertThrows(IllegalArgumentException.class, () -> RepeatRisk.uncertaintyOfMean(1, 0.5, 0));
    }
}
