package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.Standing;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.engine.revision.ReviewPlan;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.LedgerReport;
import org.junit.jupiter.api.Test;

/** Tests that the sampling plan draws for a review. */
class DrawnReviewsTest extends WithSealedTests {

    private List<String> due() throws Exception {
        try (Fleet fleet = Fleet.of(tests.file(), Progress.none(), Cancellation.never())) {
            return fleet.reviewsDue().stream().map(Fleet.ReviewDue::test).toList();
        }
    }

    @Test
    void whatIsDrawnIsListedUntilASecondAuditorHasReviewedIt() throws Exception {
        String before = tests.accepted();
        tests.reviewAll();
        String test = tests.accepted();
        assertEquals(Standing.SEALED, tests.record(before).standing(), "a plan is for tests that are opened after it");
        assertEquals(Standing.REVIEW_DUE, tests.record(test).standing());
        assertEquals(List.of(test), due());
        LedgerReport report = tests.report();
        assertTrue(report.sound(), report.toString());
        assertEquals(List.of(test), report.reviewsDue());
        String refusal = assertThrows(RefusedException.class, () -> tests.sign(test, "KM", new RecordFact.HandedOver("the owner", test + "/1"))).getMessage();
        assertTrue(refusal.contains("drawn for a review"), refusal);
        tests.sign(test, "MJ", new RecordFact.Reviewed(true, ""));
        assertEquals(List.of(), due());
        tests.sign(test, "KM", new RecordFact.HandedOver("the owner", test + "/1"));
        report = tests.report();
        assertTrue(report.sound(), report.toString());
        assertEquals(List.of(), report.reviewsDue());
        tests.endReviews();
        assertEquals(Standing.SEALED, tests.record(tests.accepted()).standing());
    }

    @Test
    void aRehearsalIsNeverDrawn() throws Exception {
        tests.reviewAll();
        assertFalse(tests.record(tests.rehearsal()).drawn());
        assertEquals(List.of(), due());
    }

    @Test
    void onlyAnAuditorPlans() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            String refusal = assertThrows(RefusedException.class, () -> ledger.approvals(time.benchTime()).planReviews(100, new BigDecimal("1.0"), "few",
                    Approved.by("KM"))).getMessage();
            assertTrue(refusal.contains("KM may not plan reviews"), refusal);
        }
    }

    /** Nobody chooses: whoever has plan and seal comes to the same. */
    @Test
    void eachIsDrawnByThePlanThatHeldAndItsOwnSeal() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            ledger.approvals(time.benchTime()).planReviews(8, new BigDecimal("6.5"), "every other", Approved.by("MJ"));
        }
        ReviewPlan plan = ReviewPlan.of(8, new BigDecimal("6.5"));
        for (int i = 0; i < 6; i++) {
            String test = tests.accepted();
            TestRecord record = tests.record(test);
            try (Ledger ledger = SqliteLedger.openReadOnly(tests.file())) {
                LedgerEntry seal = ledger.entries(new TestId(test)).stream().filter(entry -> entry.kind().equals("sealed")).findFirst().orElseThrow();
                assertEquals(plan.draws(test, seal.link().digest()), record.drawn());
            }
        }
    }
}
