package org.benchwright.evidence;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;

/**
 * Normal inspection, single sampling by attributes, as MIL-STD-105E (public domain) and ISO 2859-1 arrange it: the lot
 * and the inspection level give a code letter, the letter and the acceptable quality level give the plan. The table's
 * arrows are followed; its regular build lets it be reckoned from the diagonals.
 */
public final class SamplingTable {

    /** How much is looked at in proportion to the lot. */
    public enum Level {
        /** Less discrimination. */
        I,
        /** The usual level. */
        II,
        /** More discrimination. */
        III
    }

    private static final int[] LARGEST_LOTS = { 8, 15, 25, 50, 90, 150, 280, 500, 1200, 3200, 10_000, 35_000, 150_000,
            500_000, Integer.MAX_VALUE };
    private static final List<String> LETTERS_BY_LOT = List.of("AABCCDEFGHJKLMN", "ABCDEFGHJKLMNPQ", "BCDEFGHJKLMNPQR");
    private static final String LETTERS = "ABCDEFGHJKLMNPQR";
    private static final int[] SAMPLE_SIZES = { 2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800, 1250, 2000 };
    private static final List<BigDecimal> LEVELS = Arrays.asList("6.5", "4.0", "2.5", "1.5", "1.0", "0.65", "0.40",
            "0.25", "0.15", "0.10", "0.065", "0.040", "0.025", "0.015", "0.010").stream().map(BigDecimal::new).toList();
    /** Acceptance numbers down a column from the letter with 0 on; at the two letters after it the arrows apply. */
    private static final int[] ACCEPTANCE = { 0, -1, -1, 1, 2, 3, 5, 7, 10, 14, 21 };

    private SamplingTable() {
    }

    /**
     * The code letter of a lot.
     *
     * @param lot at least 2
     * @param level the inspection level
     * @return A to R, without I and O
     * @throws IllegalArgumentException when the lot is smaller than 2
     */
    public static char codeLetter(int lot, Level level) {
        if (lot < 2) {
            throw new IllegalArgumentException("A lot has at least 2 units: " + lot);
        }
        int place = 0;
        while (LARGEST_LOTS[place] < lot) {
            place++;
        }
        return LETTERS_BY_LOT.get(level.ordinal()).charAt(place);
    }

    /**
     * The plan for a lot. A plan whose sample is at least as large as the lot means: look at every unit.
     *
     * @param lot at least 2
     * @param level the inspection level
     * @param acceptableQuality the acceptable quality level in percent nonconforming: one of the table's, 0.010 to 6.5
     * @return the plan, arrows followed
     * @throws IllegalArgumentException when the lot is smaller than 2 or the quality level is none of the table's
     */
    public static SamplingPlan plan(int lot, Level level, BigDecimal acceptableQuality) {
        int letter = LETTERS.indexOf(codeLetter(lot, level));
        int zeroLetter = columnOf(acceptableQuality);
        int down = Math.max(0, letter - zeroLetter);
        int row = switch (down) {
            case 1 -> 0;
            case 2 -> 3;
            default -> Math.min(down, ACCEPTANCE.length - 1);
        };
        // Near the end of the table an arrow down would leave it; the last plan in the column is the one above.
        int size = zeroLetter + row < SAMPLE_SIZES.length ? row : 0;
        return new SamplingPlan(SAMPLE_SIZES[zeroLetter + size], ACCEPTANCE[size]);
    }

    private static int columnOf(BigDecimal acceptableQuality) {
        for (int column = 0; column < LEVELS.size(); column++) {
            if (LEVELS.get(column).compareTo(acceptableQuality) == 0) {
                return column;
            }
        }
        throw new IllegalArgumentException("The table has no quality level of " + acceptableQuality + " %; it has "
                + LEVELS);
    }
}
