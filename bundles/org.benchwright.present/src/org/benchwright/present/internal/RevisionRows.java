package org.benchwright.present.internal;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Digest;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.revision.Revision;
import org.benchwright.engine.revision.RevisionBook;
import org.benchwright.present.RevisionRow;
import org.benchwright.present.RevisionRow.State;
import org.benchwright.present.WallTime;
import org.benchwright.workshop.Approvals;
import org.benchwright.workshop.CompiledProcedure;

/** Revisions in words. */
public final class RevisionRows {

    private RevisionRows() {
    }

    /** A revision that was signed. */
    public static RevisionRow row(RevisionBook book, Revision revision, ZoneId zone) {
        State state = state(book, revision);
        return new RevisionRow(title(book, revision), revision.procedure(), revision.family().orElse(""), revision.number(), state,
                words(state).text(), history(revision, zone), revision.text().hex(), revision.plan().hex());
    }

    /** How a text and plan stand. */
    public static RevisionRow standing(RevisionBook book, Plan plan, CompiledProcedure procedure, ZoneId zone) {
        Digest text = Approvals.textDigest(procedure);
        Digest planDigest = Approvals.planDigest(procedure);
        Optional<Revision> signed = book.find(Approvals.key(plan), plan.revision());
        if (signed.isPresent() && signed.get().isOf(text, planDigest)) {
            return row(book, signed.get(), zone);
        }
        return new RevisionRow(plan.title(), Approvals.key(plan), plan.family().name(), plan.revision(), State.DRAFT, draft(signed),
                signed.map(revision -> history(revision, zone)).orElse(List.of()), text.hex(), planDigest.hex());
    }

    private static String draft(Optional<Revision> signed) {
        Message words = signed.map(revision -> revision.approved().isPresent() ? Message.REVISION_DRAFT_APPROVED : Message.REVISION_DRAFT_PREPARED)
                .orElse(Message.REVISION_DRAFT);
        return words.text();
    }

    private static Message words(State state) {
        return switch (state) {
            case DRAFT -> Message.REVISION_DRAFT;
            case PREPARED -> Message.REVISION_PREPARED;
            case APPROVED -> Message.REVISION_APPROVED;
            case SUPERSEDED -> Message.REVISION_SUPERSEDED;
            case WITHDRAWN -> Message.REVISION_WITHDRAWN;
        };
    }

    /** The family is told only where a procedure has revisions for several. */
    private static String title(RevisionBook book, Revision revision) {
        boolean several = book.all().stream().anyMatch(other -> other.procedureName().equals(revision.procedureName())
                && !other.family().equals(revision.family()));
        return several ? revision.family().map(family -> Message.REVISION_FOR.text(revision.title(), family)).orElse(revision.title())
                : revision.title();
    }

    private static State state(RevisionBook book, Revision revision) {
        if (revision.withdrawn().isPresent()) {
            return State.WITHDRAWN;
        } else if (revision.approved().isEmpty()) {
            return State.PREPARED;
        }
        boolean current = book.current(revision.procedure()).filter(holds -> holds.number() == revision.number()).isPresent();
        return current ? State.APPROVED : State.SUPERSEDED;
    }

    private static List<String> history(Revision revision, ZoneId zone) {
        List<String> history = new ArrayList<>();
        history.add(Message.BY_PREPARED.text(revision.prepared().person(), time(revision.prepared(), zone)));
        revision.approved().ifPresent(hand -> history.add(Message.BY_APPROVED.text(hand.person(), time(hand, zone))));
        revision.withdrawn().ifPresent(hand -> history.add(Message.BY_WITHDRAWN.text(hand.person(), time(hand, zone), revision.reason())));
        return history;
    }

    private static String time(Revision.Hand hand, ZoneId zone) {
        return new WallTime(zone).minute(hand.instant());
    }
}
