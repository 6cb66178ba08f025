package org.benchwright.workshop;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.revision.ReviewPlan;
import org.benchwright.engine.revision.Revision;
import org.benchwright.engine.revision.RevisionBook;
import org.benchwright.engine.revision.RevisionEvent;
import org.benchwright.engine.revision.RevisionFact;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKeyStore;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.PeopleKeys;
import org.benchwright.workshop.internal.PlanCodec;
import org.benchwright.workshop.internal.RevisionCodec;
import org.benchwright.workshop.internal.RevisionHistory;
import org.benchwright.workshop.internal.UndecodableException;

/**
 * Which revisions of which procedures were prepared, approved and withdrawn in a bench's ledger. Text and plan of what is prepared are kept
 * in the ledger; tests are opened by approved revisions alone.
 */
public final class Approvals {

    private final Ledger ledger;
    private final Signer benchKey;
    private final PersonKeyStore keys;
    private final BenchTime time;
    private final RevisionCodec codec = new RevisionCodec();
    private final PlanCodec plans = new PlanCodec();

    Approvals(Ledger ledger, Signer benchKey, PersonKeyStore keys, BenchTime time) {
        this.ledger = ledger;
        this.benchKey = benchKey;
        this.keys = keys;
        this.time = time;
    }

    /** In which role somebody signs what. */
    private record Act(RevisionFact fact, List<Role> roles) {
    }

    /**
     * Signs a revision as prepared.
     *
     * @throws RefusedException   if the person may not, the password is not taken, or the revision's number is used up
     * @throws OvertakenException if somebody else signed something in the same moment
     */
    public Revision prepare(CompiledProcedure procedure, SigningPerson by) throws RefusedException, OvertakenException, StoreException {
        Plan plan = procedure.plan();
        RevisionFact fact = new RevisionFact.Prepared(key(plan), plan.title(), plan.revision(), textDigest(procedure), planDigest(procedure));
        RevisionBook book = sign(new Act(fact, List.of(Role.ENGINEER)), by, procedure);
        return book.find(key(plan), plan.revision()).orElseThrow();
    }

    /**
     * Approves a revision that another person prepared: from now on its text and plan don't change, and tests are opened by it.
     *
     * @param procedure what the approver has looked at; it has to be what was prepared
     * @throws RefusedException   if the person may not, the password is not taken, or it is not what was prepared
     * @throws OvertakenException if somebody else signed something in the same moment
     */
    public Revision approve(CompiledProcedure procedure, SigningPerson by) throws RefusedException, OvertakenException, StoreException {
        Plan plan = procedure.plan();
        Revision prepared = history().now().find(key(plan), plan.revision())
                .orElseThrow(() -> new RefusedException(Message.NOT_PREPARED.text(plan.title(), String.valueOf(plan.revision()))));
        RevisionFact fact = new RevisionFact.Approved(prepared.prepared().event(), textDigest(procedure), planDigest(procedure));
        RevisionBook book = sign(new Act(fact, List.of(Role.SUPERVISOR, Role.ENGINEER)), by, procedure);
        return book.find(key(plan), plan.revision()).orElseThrow();
    }

    /**
     * Withdraws a revision, whether it is prepared or approved already. Its number is used up if it was approved.
     *
     * @param procedure the procedure's name with that of its family, see {@link #key}
     * @throws RefusedException   if there is no such revision, the person may not, or the password is not taken
     * @throws OvertakenException if somebody else signed something in the same moment
     */
    public Revision withdraw(String procedure, int number, String reason, SigningPerson by)
            throws RefusedException, OvertakenException, StoreException {
        Revision revision = history().now().find(procedure, number)
                .orElseThrow(() -> new RefusedException(Message.NOT_PREPARED.text(procedure, String.valueOf(number))));
        RevisionFact fact = new RevisionFact.Withdrawn(revision.approved().orElse(revision.prepared()).event(), reason);
        RevisionBook book = sign(new Act(fact, List.of(Role.SUPERVISOR, Role.ENGINEER)), by, Optional.empty());
        return book.find(procedure, number).orElseThrow();
    }

    /**
     * Plans how many of the tests that are opened from now on are drawn for a review.
     *
     * @param lot     for how many tests the sample is looked up, at least 2
     * @param quality acceptable quality level in percent, one of the tables'
     * @throws RefusedException   if the tables have no such plan, the person may not, or the password is not taken
     * @throws OvertakenException if somebody else signed something in the same moment
     */
    public ReviewPlan planReviews(int lot, BigDecimal quality, String reason, SigningPerson by)
            throws RefusedException, OvertakenException, StoreException {
        ReviewPlan plan = RevisionBook.reviewPlan(lot, quality);
        RevisionFact fact = new RevisionFact.ReviewsPlanned(lot, quality, plan.sample(), reason);
        return sign(new Act(fact, List.of(Role.AUDITOR)), by, Optional.empty()).reviews().orElseThrow();
    }

    /**
     * From now on no test is drawn for a review.
     *
     * @throws RefusedException   if none is planned, the person may not, or the password is not taken
     * @throws OvertakenException if somebody else signed something in the same moment
     */
    public void endReviews(String reason, SigningPerson by) throws RefusedException, OvertakenException, StoreException {
        sign(new Act(new RevisionFact.ReviewsEnded(reason), List.of(Role.AUDITOR)), by, Optional.empty());
    }

    /**
     * All revisions as they stand.
     *
     * @throws StoreException if the ledger can't be read, or its books are not as they were signed
     */
    public RevisionBook book() throws StoreException {
        return history().now();
    }

    /** Digest of a procedure's text, as its approval names it. */
    public static Digest textDigest(CompiledProcedure procedure) {
        return Digest.of(text(procedure));
    }

    /** Digest of a procedure's plan, as its approval names it. */
    public static Digest planDigest(CompiledProcedure procedure) {
        return Digest.of(new PlanCodec().bytes(procedure.plan()));
    }

    static Plan plan(Ledger ledger, Revision revision) throws StoreException {
        try {
            byte[] bytes = ledger.document(revision.plan())
                    .orElseThrow(() -> new StoreException(Message.FAULT_PLAN_MISSING.text(revision.plan().hex()), new IllegalStateException()));
            return new PlanCodec().plan(bytes);
        } catch (LedgerException failure) {
            throw LedgerWork.failed(failure);
        } catch (UndecodableException unreadable) {
            throw new StoreException(Message.FAULT_PLAN_UNDECODABLE.text(unreadable.getMessage()), unreadable);
        }
    }

    /** What the revisions of a plan are kept by: the procedure's name with that of the family that the plan is for. */
    public static String key(Plan plan) {
        return Revision.key(plan.name(), plan.family().name());
    }

    private static byte[] text(CompiledProcedure procedure) {
        return procedure.text().getBytes(StandardCharsets.UTF_8);
    }

    private RevisionBook sign(Act act, SigningPerson by, CompiledProcedure procedure)
            throws RefusedException, OvertakenException, StoreException {
        return sign(act, by, Optional.of(procedure));
    }

    private RevisionBook sign(Act act, SigningPerson by, Optional<CompiledProcedure> procedure)
            throws RefusedException, OvertakenException, StoreException {
        RevisionHistory history = history();
        Person person = PeopleKeys.person(history.people(), by.id());
        Instant now = time.now().truncatedTo(ChronoUnit.MILLIS);
        long number = history.size() + 1;
        // Asked before the password is, so that nobody types one in vain.
        RevisionBook book = history.now().with(new RevisionEvent(number, now, person.id(), person.roles(), act.fact()));
        Signer signer = PeopleKeys.unlock(keys, history.people(), by);
        Role role = act.roles().stream().filter(person::may).findFirst().orElseThrow();
        Actor actor = new Actor(person.id(), role);
        EntryDraft draft = new EntryDraft(TestId.REVISIONS, now, 1, Duration.ZERO, actor, codec.kind(act.fact()), codec.payload(act.fact()));
        return LedgerWork.unlessOvertaken(Message.BOOK_OVERTAKEN, () -> {
            if (procedure.isPresent()) {
                ledger.keep(text(procedure.get()), DocumentKind.PROCEDURE_TEXT);
                ledger.keep(plans.bytes(procedure.get().plan()), DocumentKind.PLAN);
            }
            ledger.appendSigned(draft, history.size(), new Signing(signer, RevisionHistory.meaning(act.fact()), actor.toString(), benchKey), history.stand());
            return book;
        });
    }

    private RevisionHistory history() throws StoreException {
        return LedgerWork.of(() -> RevisionHistory.trusted(ledger));
    }

    /**
     * What a test is told where there is no ledger.
     *
     * @throws RefusedException always: nothing is approved there
     */
    public static void requireWhereNothingIs(CompiledProcedure procedure) throws RefusedException {
        Plan plan = procedure.plan();
        RevisionBook.empty().required(key(plan), plan.title(), plan.revision(), textDigest(procedure), planDigest(procedure));
    }
}
