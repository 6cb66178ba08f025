package org.benchwright.present;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import org.benchwright.engine.RefusedException;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.revision.Revision;
import org.benchwright.engine.revision.RevisionBook;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.RevisionRows;
import org.benchwright.workshop.Approvals;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.StoreException;

/** Revisions of procedures in a ledger: how they stand, and signing them. Passwords that are handed in are blanked out. */
public final class Approving {

    private final Path ledger;
    private final BenchTime time;
    private final ZoneId zone;

    /**
     * @param ledger the ledger's file
     * @param clocks the bench's clocks
     * @param zone   the zone in which times are shown
     */
    public Approving(Path ledger, Bench.Clocks clocks, ZoneId zone) {
        this.ledger = ledger;
        this.time = clocks.time();
        this.zone = zone;
    }

    /** At this machine: with the clocks that everybody's watch shows, and times by the clock on the wall. */
    public static Approving here(Path ledger) {
        return new Approving(ledger, Bench.Clocks.system(), ZoneId.systemDefault());
    }

    /**
     * All revisions that anybody ever signed, procedure by procedure; none where there is no ledger yet.
     *
     * @throws CannotStoreException if the ledger can't be read, or its books are not as they were signed
     */
    public List<RevisionRow> revisions() throws CannotStoreException {
        RevisionBook book = book();
        return book.all().stream().map(revision -> RevisionRows.row(book, revision, zone)).toList();
    }

    /**
     * The texts that were ever approved; none where there is no ledger yet.
     *
     * @throws CannotStoreException if the ledger can't be read, or its books are not as they were signed
     */
    public ApprovedTexts texts() throws CannotStoreException {
        return new ApprovedTexts(book());
    }

    /** Those of the revisions that are of this procedure, for whatever family. */
    public List<RevisionRow> ofAllFamilies(Plan plan) throws CannotStoreException {
        RevisionBook book = book();
        return book.all().stream().filter(revision -> revision.procedureName().equals(plan.name()))
                .map(revision -> RevisionRows.row(book, revision, zone)).toList();
    }

    /** Those of the revisions that are of this procedure for this family. */
    public List<RevisionRow> revisions(Plan plan) throws CannotStoreException {
        RevisionBook book = book();
        return book.of(Approvals.key(plan)).stream().map(revision -> RevisionRows.row(book, revision, zone)).toList();
    }

    /** How this text and plan stand; a revision that was signed with another text is a draft. */
    public RevisionRow standing(Plan plan, String text) throws CannotStoreException {
        return RevisionRows.standing(book(), plan, new CompiledProcedure(plan, text), zone);
    }

    /**
     * What a plan changes against the one by which new tests of this procedure are opened now.
     *
     * @throws CannotStoreException if the ledger can't be read, or its books are not as they were signed
     */
    public RevisionChange change(Plan plan, RevisionChange.Comparison comparison) throws CannotStoreException {
        Optional<Revision> current = book().current(Approvals.key(plan));
        return current.isEmpty() ? new RevisionChange(Message.CHANGE_FIRST.text(plan.title()), List.of())
                : change(current.get(), plan.title(), plan.revision(), comparison, open -> plan);
    }

    /** What a signed revision changes against the one that was approved before it. */
    public RevisionChange change(RevisionRow row, RevisionChange.Comparison comparison) throws CannotStoreException {
        RevisionBook book = book();
        Optional<Revision> before = book.of(row.key()).stream().filter(other -> other.approved().isPresent() && other.number() < row.number())
                .max(Comparator.comparingInt(Revision::number));
        Optional<Revision> revision = book.find(row.key(), row.number());
        return before.isEmpty() || revision.isEmpty() ? new RevisionChange(Message.CHANGE_BEFORE_NONE.text(row.procedure(), String.valueOf(row.number())), List.of())
                : change(before.get(), row.procedure(), row.number(), comparison, open -> open.plan(revision.get()));
    }

    @FunctionalInterface
    private interface Kept {
        Plan plan(BenchLedger open) throws StoreException;
    }

    private RevisionChange change(Revision before, String title, int number, RevisionChange.Comparison comparison, Kept after)
            throws CannotStoreException {
        return Asked.read(ledger, open -> {
            List<String> differences = comparison.differences(open.plan(before), after.plan(open));
            Message against = before.holds() ? Message.CHANGE_AGAINST : Message.CHANGE_AGAINST_EARLIER;
            return new RevisionChange(against.text(title, String.valueOf(before.number()), String.valueOf(number)),
                    differences.isEmpty() ? List.of(Message.CHANGE_NONE.text()) : differences);
        });
    }

    /** Signs as prepared. */
    public RevisionRow prepare(Plan plan, String text, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(by, approvals -> approvals.prepare(new CompiledProcedure(plan, text), by.person()));
    }

    /** Approves what somebody else prepared. */
    public RevisionRow approve(Plan plan, String text, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(by, approvals -> approvals.approve(new CompiledProcedure(plan, text), by.person()));
    }

    /** Takes a revision back. */
    public RevisionRow withdraw(Plan plan, int number, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(by, approvals -> approvals.withdraw(Approvals.key(plan), number, reason, by.person()));
    }

    /** Takes a signed revision back. */
    public RevisionRow withdraw(RevisionRow row, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(by, approvals -> approvals.withdraw(row.key(), row.number(), reason, by.person()));
    }

    @FunctionalInterface
    private interface Signature {
        Revision by(Approvals approvals) throws RefusedException, OvertakenException, StoreException, EntryRefusedException;
    }

    private RevisionRow signed(PeopleDesk.Signing by, Signature signature)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            return Asked.of(() -> {
                try (BenchLedger open = BenchLedger.openExisting(ledger)) {
                    Approvals approvals = open.approvals(time);
                    Revision revision = signature.by(approvals);
                    return RevisionRows.row(approvals.book(), revision, zone);
                }
            });
        } finally {
            Arrays.fill(by.password(), ' ');
        }
    }

    private RevisionBook book() throws CannotStoreException {
        if (!Files.exists(ledger)) {
            return RevisionBook.empty();
        }
        return Asked.read(ledger, open -> open.revisions());
    }
}
