package org.benchwright.present.internal;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.Digest;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.revision.Revision;
import org.benchwright.engine.revision.RevisionBook;
import org.benchwright.present.RevisionRow;
import org.benchwright.present.RevisionRow.State;
import org.benchwright.workshop.Approvals;
import org.benchwright.workshop.CompiledProcedure;

/** Revisions in words. */
public final class RevisionRows {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    private RevisionRows() {
    }

    /** A revision that was signed. */
    public static RevisionRow row(RevisionBook book, Revision revision, ZoneId zone) {
        return row(title(book, revision), revision.number(), state(book, revision), history(revision, zone), revision.text(), revision.plan());
    }

    /** How a text and plan stand. */
    public static RevisionRow standing(RevisionBook book, Plan plan, CompiledProcedure procedure, ZoneId zone) {
        Digest text = Approvals.textDigest(procedure);
        Digest planDigest = Approvals.planDigest(procedure);
        Optional<Revision> same = book.find(Approvals.key(plan), plan.revision()).filter(revision -> revision.isOf(text, planDigest));
        return same.map(revision -> row(book, revision, zone))
                .orElseGet(() -> row(plan.title(), plan.revision(), State.DRAFT, List.of(), text, planDigest));
    }

    private static RevisionRow row(String title, int number, State state, List<String> history, Digest text, Digest plan) {
        Message words = switch (state) {
            case DRAFT -> Message.REVISION_DRAFT;
            case PREPARED -> Message.REVISION_PREPARED;
            case APPROVED -> Message.REVISION_APPROVED;
            case SUPERSEDED -> Message.REVISION_SUPERSEDED;
            case WITHDRAWN -> Message.REVISION_WITHDRAWN;
        };
        return new RevisionRow(title, number, state, words.text(), history, text.hex(), plan.hex());
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
        return TIME.format(hand.instant().atZone(zone));
    }
}
