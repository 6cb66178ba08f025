package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.revision.ReviewPlan;
import org.benchwright.engine.revision.RevisionBook;
import org.benchwright.engine.revision.RevisionEvent;
import org.benchwright.engine.revision.RevisionFact;
import org.benchwright.testkit.PropertyTest;
import org.junit.jupiter.api.Test;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** Which tests are drawn for a review. */
class ReviewPlanTest implements PropertyTest {

    private static final BigDecimal ONE = new BigDecimal("1.0");

    private static RevisionBook planned(RevisionBook book, Role role, RevisionFact.ReviewsPlanned fact) throws RefusedException {
        return book.with(new RevisionEvent(1, Instant.parse("2026-03-02T07:30:00Z"), "MJ", Set.of(role), fact));
    }

    private static RevisionFact.ReviewsPlanned fact(int lot, BigDecimal quality, int sample) {
        return new RevisionFact.ReviewsPlanned(lot, quality, sample, "the auditor's rule");
    }

    @Test
    void anAuditorPlansWhatTheTablesSayAndTheNextPlanTakesItsPlace() throws Exception {
        assertEquals(Optional.empty(), RevisionBook.empty().reviews());
        RevisionBook book = planned(RevisionBook.empty(), Role.AUDITOR, fact(100, ONE, 13));
        assertEquals(Optional.of(new ReviewPlan(100, ONE, 13)), book.reviews());
        book = planned(book, Role.AUDITOR, fact(2, ONE, 2));
        assertEquals(Optional.of(new ReviewPlan(2, ONE, 2)), book.reviews(), "a lot smaller than the sample is drawn whole");
        RevisionEvent ended = new RevisionEvent(3, Instant.parse("2026-04-02T07:30:00Z"), "MJ", Set.of(Role.AUDITOR),
                new RevisionFact.ReviewsEnded("enough"));
        book = book.with(ended);
        assertEquals(Optional.empty(), book.reviews());
        RevisionBook none = book;
        assertThrows(RefusedException.class, () -> none.with(ended));
    }

    @Test
    void anotherSampleAnotherRoleAndPlansOutsideTheTablesAreRefused() {
        assertTrue(refusal(Role.AUDITOR, fact(100, ONE, 12)).contains("takes a sample of 13, not of 12"));
        assertTrue(refusal(Role.SUPERVISOR, fact(100, ONE, 13)).contains("MJ may not plan reviews"));
        assertTrue(refusal(Role.AUDITOR, fact(1, ONE, 1)).startsWith("No plan for that"));
        assertTrue(refusal(Role.AUDITOR, fact(100, new BigDecimal("1.1"), 13)).startsWith("No plan for that"));
        assertTrue(refusal(Role.AUDITOR, new RevisionFact.ReviewsPlanned(100, ONE, 13, " ")).contains("reason"));
    }

    private static String refusal(Role role, RevisionFact.ReviewsPlanned fact) {
        return assertThrows(RefusedException.class, () -> planned(RevisionBook.empty(), role, fact)).getMessage();
    }

    /** As docs/record-format.md tells strangers to do it, with doubles instead of whole numbers. */
    @Property(tries = 500)
    void aStrangerDrawsTheSame(@ForAll @Size(32) byte[] seal, @ForAll @IntRange(min = 2, max = 100_000) int lot, @ForAll @IntRange(min = 1) int some)
            throws Exception {
        int sample = 1 + some % lot;
        String said = "benchwright.review/1\nT-4K7M2-QXD9R\n" + HexFormat.of().formatHex(seal) + "\n";
        byte[] hash = MessageDigest.getInstance("SHA-256").digest(said.getBytes(StandardCharsets.UTF_8));
        double share = Long.parseUnsignedLong(HexFormat.of().formatHex(hash, 0, 8), 16) / Math.pow(2, 64);
        share = share < 0 ? share + 1 : share;
        assertEquals(share < (double) sample / lot, new ReviewPlan(lot, ONE, sample).draws("T-4K7M2-QXD9R", Digest.ofResult(seal)));
    }

    @Test
    void asManyAreDrawnAsThePlanSays() {
        ReviewPlan plan = ReviewPlan.of(100, ONE);
        long drawn = IntStream.range(0, 10_000).filter(n -> plan.draws("T-4K7M2-QXD9R", seal(n))).count();
        // 1300 on average; the standard deviation of such a draw is 34.
        assertTrue(drawn > 1130 && drawn < 1470, String.valueOf(drawn));
        ReviewPlan all = ReviewPlan.of(8, ONE);
        assertTrue(IntStream.range(0, 1000).allMatch(n -> all.draws("T-4K7M2-QXD9R", seal(n))));
    }

    private static Digest seal(int number) {
        return Digest.of(("seal " + number).getBytes(StandardCharsets.UTF_8));
    }
}
