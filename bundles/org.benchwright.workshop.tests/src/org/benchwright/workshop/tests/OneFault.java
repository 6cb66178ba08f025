package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.RecordFault;

/** A report on a ledger that was written as it should be, but for one event that does not follow from those before it. */
final class OneFault {

    private OneFault() {
    }

    /** That fault; links and signatures are sound, and its reason contains these words. */
    static RecordFault in(LedgerReport report, String words) {
        assertFalse(report.sound());
        assertEquals(List.of(), report.links());
        assertEquals(List.of(), report.signatures());
        assertEquals(1, report.decisions().size(), report.decisions().toString());
        RecordFault fault = report.decisions().get(0);
        assertTrue(fault.reason().contains(words), fault.reason());
        return fault;
    }

    /** The fault is in that test or book, at that event. */
    static void at(String place, long sequence, LedgerReport report, String words) {
        RecordFault fault = in(report, words);
        assertEquals(place, fault.test());
        assertEquals(sequence, fault.sequence());
    }
}
