package org.benchwright.present;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

import org.benchwright.engine.RefusedException;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.ReportValues;
import org.benchwright.present.internal.SoakPages;
import org.benchwright.report.HandOver;
import org.benchwright.report.Page;
import org.benchwright.report.TestReport;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.StoreException;

/** Records for paper and export. Each is derived again from its facts, and its place in the ledger is proved, before it is handed out. */
public final class HandingOver {

    private HandingOver() {
    }

    /**
     * A test as it is handed over.
     *
     * @param now when it is printed
     * @throws EntryRefusedException if there is no such test
     * @throws CannotStoreException  if the ledger can't be read, or the record is not sound
     */
    public static HandOver of(Path ledger, String test, Instant now) throws EntryRefusedException, CannotStoreException {
        return Asked.read(ledger, open -> {
            KeptTest kept = open.test(test).orElseThrow(() -> new EntryRefusedException(Message.REFUSED_NO_TEST.text(test)));
            return new HandOver(report(open, kept), now);
        });
    }

    /**
     * The course of a test's soaks as a page: the unit's state, and what was read around it, with the intervals in which they changed.
     *
     * @throws EntryRefusedException if there is no such test
     * @throws CannotStoreException  if the ledger can't be read, or the record is not sound
     */
    public static Page soaks(Path ledger, String test) throws EntryRefusedException, CannotStoreException {
        return Asked.read(ledger, open -> {
            KeptTest kept = open.test(test).orElseThrow(() -> new EntryRefusedException(Message.REFUSED_NO_TEST.text(test)));
            return SoakPages.of(kept);
        });
    }

    /**
     * All tests of a ledger for a list of them, in the order in which they were opened.
     *
     * @param rehearsals whether rehearsals are wanted too
     * @throws CannotStoreException if the ledger can't be read, or a record is not sound
     */
    public static List<TestReport> all(Path ledger, boolean rehearsals) throws CannotStoreException {
        return Asked.read(ledger, open -> {
            List<TestReport> reports = new ArrayList<>();
            for (String id : open.tests()) {
                KeptTest kept = open.test(id).orElseThrow();
                if (rehearsals || !kept.run().rehearsal()) {
                    reports.add(ReportValues.of(kept, open.signedAfterSeal(id), Optional.empty()));
                }
            }
            return List.copyOf(reports);
        });
    }

    private static TestReport report(BenchLedger open, KeptTest kept) throws StoreException {
        return ReportValues.of(kept, open.signedAfterSeal(kept.id()), proof(open, kept.id()));
    }

    /** The proof with all events; empty as long as no checkpoint tells of the test's end. */
    private static Optional<String> proof(BenchLedger open, String test) throws StoreException {
        try {
            return open.proofs().inclusion(test, OptionalLong.of(open.lastSequence(test)), true);
        } catch (RefusedException notCoveredYet) {
            return Optional.empty();
        }
    }
}
