package org.benchwright.evidence;

import org.benchwright.evidence.internal.Require;

/**
 * Acceptance limits from the test uncertainty ratio TUR = (half the tolerance's width) / (95 % expanded uncertainty). Each
 * rule answers with the part of the tolerance that is left for accepting, AL/TL: 1 means no guard band.
 */
public enum TestUncertaintyRatio {
    /**
     * The "managed risk" rule, method 6 of the handbook to ANSI/NCSL Z540.3: AL/TL = 1 - M/TUR with
     * M = 1.04 - exp(0.38 ln TUR - 0.54), which keeps the false-accept risk at or below 2 % whatever the process; no
     * guard band from a TUR of about 4.6 on.
     */
    TWO_PERCENT_RISK {
        @Override
        double rawAcceptance(double ratio) {
            return 1 - twoPercentMultiplier(ratio) / ratio;
        }
    },
    /** Root of squares: AL/TL = &radic;(1 - 1/TUR&sup2;). */
    ROOT_SUM_SQUARE {
        @Override
        double rawAcceptance(double ratio) {
            return Math.sqrt(Math.max(0, 1 - 1 / (ratio * ratio)));
        }
    },
    /** The whole expanded uncertainty: AL/TL = 1 - 1/TUR. */
    WHOLE_UNCERTAINTY {
        @Override
        double rawAcceptance(double ratio) {
            return 1 - 1 / ratio;
        }
    },
    /** NCSL RP-10: AL/TL = 1.25 - 1/TUR, no guard band from a TUR of 4 on. */
    QUARTER_ALLOWED {
        @Override
        double rawAcceptance(double ratio) {
            return 1.25 - 1 / ratio;
        }
    };

    abstract double rawAcceptance(double ratio);

    /**
     * The part of the tolerance that is left for accepting.
     *
     * @param ratio TUR, above zero
     * @return AL/TL, 0 (nothing can be accepted) to 1 (no guard band)
     * @throws IllegalArgumentException when the ratio is not above zero
     */
    public double acceptance(double ratio) {
        Require.positive("test uncertainty ratio", ratio);
        return Math.max(0, Math.min(1, rawAcceptance(ratio)));
    }

    /**
     * The multiplier M of {@link #TWO_PERCENT_RISK}: the guard band in expanded uncertainties.
     *
     * @param ratio TUR, above zero
     * @return M; negative from a TUR of about 4.6 on, where no guard band is needed
     * @throws IllegalArgumentException when the ratio is not above zero
     */
    public static double twoPercentMultiplier(double ratio) {
        Require.positive("test uncertainty ratio", ratio);
        return 1.04 - Math.exp(0.38 * Math.log(ratio) - 0.54);
    }

    /**
     * The ratio itself.
     *
     * @param toleranceHalfWidth half the distance between the tolerance limits, above zero
     * @param expandedUncertainty the 95 % expanded uncertainty (k = 2 when normal), above zero, in the same unit
     * @return TUR
     * @throws IllegalArgumentException when a number is not above zero
     */
    public static double of(double toleranceHalfWidth, double expandedUncertainty) {
        Require.positive("tolerance half-width", toleranceHalfWidth);
        Require.positive("expanded uncertainty", expandedUncertainty);
        return toleranceHalfWidth / expandedUncertainty;
    }
}
