package org.benchwright.engine.revision;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

import org.benchwright.core.Digest;
import org.benchwright.evidence.SamplingTable;

/**
 * How many of the sealed tests a second auditor has to review, and which: each is drawn, or not, by the link of its own seal, so that whoever
 * has the record can draw again and nobody can choose.
 *
 * @param lot     for how many tests the sample was looked up
 * @param quality acceptable quality level in percent of records that are not as they should be
 * @param sample  how many of {@code lot} are drawn on average, 1 to {@code lot}
 */
public record ReviewPlan(int lot, BigDecimal quality, int sample) {

    private static final String DOMAIN = "benchwright.review/1\n";
    private static final int DRAWN_BYTES = 8;

    /** @throws IllegalArgumentException if the sample is not between 1 and the lot */
    public ReviewPlan {
        if (sample < 1 || sample > lot) {
            throw new IllegalArgumentException("No sample: " + sample + " of " + lot);
        }
    }

    /**
     * The plan that the tables of ISO 2859-1 give for normal inspection at level II; a sample as large as the lot draws every test.
     *
     * @param lot     at least 2
     * @param quality one of the tables' levels, 0.010 to 6.5 percent
     * @throws IllegalArgumentException if the tables have no such lot or level
     */
    public static ReviewPlan of(int lot, BigDecimal quality) {
        return new ReviewPlan(lot, quality, Math.min(lot, SamplingTable.plan(lot, SamplingTable.Level.II, quality).sampleSize()));
    }

    /**
     * Whether a test is drawn. The first eight bytes of the SHA-256 over domain, test and link in hexadecimal digits, as a number, are less than
     * sample / lot of 2^64.
     *
     * @param test its id
     * @param seal the link of the event that sealed it
     */
    public boolean draws(String test, Digest seal) {
        byte[] hash = Digest.of((DOMAIN + test + "\n" + seal.hex() + "\n").getBytes(StandardCharsets.UTF_8)).bytes();
        BigInteger drawn = new BigInteger(1, Arrays.copyOf(hash, DRAWN_BYTES));
        return drawn.multiply(BigInteger.valueOf(lot)).compareTo(BigInteger.valueOf(sample).shiftLeft(DRAWN_BYTES * Byte.SIZE)) < 0;
    }
}
