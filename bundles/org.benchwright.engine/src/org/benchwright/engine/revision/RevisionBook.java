package org.benchwright.engine.revision;

import static org.benchwright.engine.internal.Refusals.refused;
import static org.benchwright.engine.internal.Refusals.require;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.revision.Revision.Hand;

/**
 * All revisions of all procedures, each for one family, as what was signed about them makes them; by what they are told apart stands at
 * {@link Revision#key}. Whoever signs is asked here whether they may; whoever verifies asks again. Immutable.
 */
public final class RevisionBook {

    private static final Set<Role> MAY_APPROVE = EnumSet.of(Role.ENGINEER, Role.SUPERVISOR);

    private final List<Revision> revisions;
    private final Optional<ReviewPlan> reviews;

    private RevisionBook(List<Revision> revisions, Optional<ReviewPlan> reviews) {
        this.revisions = List.copyOf(revisions);
        this.reviews = reviews;
    }

    /** Nothing was prepared yet. */
    public static RevisionBook empty() {
        return new RevisionBook(List.of(), Optional.empty());
    }

    /**
     * The book with one more event.
     *
     * @throws RefusedException if the person may not, or the fact does not fit
     */
    public RevisionBook with(RevisionEvent event) throws RefusedException {
        Hand hand = new Hand(event.number(), event.person(), event.instant());
        if (event.fact() instanceof RevisionFact.Prepared prepared) {
            return prepared(event, prepared, hand);
        } else if (event.fact() instanceof RevisionFact.Approved approved) {
            return approved(event, approved, hand);
        } else if (event.fact() instanceof RevisionFact.ReviewsPlanned planned) {
            return planned(event, planned);
        } else if (event.fact() instanceof RevisionFact.ReviewsEnded ended) {
            return ended(event, ended);
        }
        return withdrawn(event, (RevisionFact.Withdrawn) event.fact(), hand);
    }

    private RevisionBook prepared(RevisionEvent event, RevisionFact.Prepared fact, Hand hand) throws RefusedException {
        require(event.roles().contains(Role.ENGINEER), "revision.engineer", event.person());
        Optional<Revision> same = find(fact.procedure(), fact.revision()).filter(revision -> revision.approved().isPresent());
        if (same.isPresent()) {
            String key = same.get().isOf(fact.text(), fact.plan()) ? "revision.already" : "revision.otherText";
            throw refused(key, fact.title(), fact.revision(), same.get().approved().get().person());
        }
        OptionalInt last = lastApproved(fact.procedure());
        require(last.isEmpty() || fact.revision() > last.getAsInt(), "revision.notGreater", fact.title(), fact.revision(), last.orElse(0));
        List<Revision> next = without(revision -> revision.procedure().equals(fact.procedure()) && revision.approved().isEmpty()
                && revision.number() == fact.revision());
        next.add(new Revision(fact.procedure(), fact.title(), fact.revision(), fact.text(), fact.plan(), hand, Optional.empty(),
                Optional.empty(), ""));
        return new RevisionBook(next, reviews);
    }

    private RevisionBook approved(RevisionEvent event, RevisionFact.Approved fact, Hand hand) throws RefusedException {
        Optional<Revision> found = revisions.stream().filter(revision -> revision.prepared().event() == fact.prepared()).findFirst();
        require(found.isPresent(), "revision.notPrepared");
        Revision revision = found.get();
        require(event.roles().stream().anyMatch(MAY_APPROVE::contains), "revision.approver", event.person());
        require(!revision.prepared().person().equals(event.person()), "revision.onePerson", event.person());
        require(revision.approved().isEmpty(), "revision.already", revision.title(), revision.number(),
                revision.approved().map(Hand::person).orElse(""));
        require(revision.withdrawn().isEmpty(), "revision.withdrawn", revision.title(), revision.number(), revision.reason());
        require(revision.isOf(fact.text(), fact.plan()), "revision.changed", revision.title(), revision.number(), revision.prepared().person());
        OptionalInt last = lastApproved(revision.procedure());
        require(last.isEmpty() || revision.number() > last.getAsInt(), "revision.notGreater", revision.title(), revision.number(), last.orElse(0));
        return replaced(revision, revision.approvedBy(hand));
    }

    private RevisionBook withdrawn(RevisionEvent event, RevisionFact.Withdrawn fact, Hand hand) throws RefusedException {
        Optional<Revision> found = revisions.stream().filter(revision -> revision.prepared().event() == fact.event()
                || revision.approved().filter(by -> by.event() == fact.event()).isPresent()).findFirst();
        require(found.isPresent(), "revision.notPrepared");
        Revision revision = found.get();
        boolean may = event.roles().stream().anyMatch(MAY_APPROVE::contains);
        require(may, "revision.approver", event.person());
        require(revision.withdrawn().isEmpty(), "revision.withdrawn", revision.title(), revision.number(), revision.reason());
        require(!fact.reason().isBlank(), "revision.reason");
        return replaced(revision, revision.withdrawnBy(hand, fact.reason()));
    }

    private RevisionBook planned(RevisionEvent event, RevisionFact.ReviewsPlanned fact) throws RefusedException {
        require(event.roles().contains(Role.AUDITOR), "revision.auditor", event.person());
        require(!fact.reason().isBlank(), "revision.reason");
        ReviewPlan plan = reviewPlan(fact.lot(), fact.quality());
        require(plan.sample() == fact.sample(), "revision.otherSample", fact.lot(), fact.quality(), plan.sample(), fact.sample());
        return new RevisionBook(revisions, Optional.of(plan));
    }

    private RevisionBook ended(RevisionEvent event, RevisionFact.ReviewsEnded fact) throws RefusedException {
        require(event.roles().contains(Role.AUDITOR), "revision.auditor", event.person());
        require(!fact.reason().isBlank(), "revision.reason");
        require(reviews.isPresent(), "revision.noReviews");
        return new RevisionBook(revisions, Optional.empty());
    }

    /**
     * The plan by which tests are drawn for a review.
     *
     * @throws RefusedException if there is none for such a lot and level
     */
    public static ReviewPlan reviewPlan(int lot, BigDecimal quality) throws RefusedException {
        try {
            return ReviewPlan.of(lot, quality);
        } catch (IllegalArgumentException none) {
            throw refused("revision.noSample", none.getMessage());
        }
    }

    private RevisionBook replaced(Revision old, Revision now) {
        return new RevisionBook(revisions.stream().map(revision -> revision == old ? now : revision).toList(), reviews);
    }

    private List<Revision> without(Predicate<Revision> given) {
        return new ArrayList<>(revisions.stream().filter(given.negate()).toList());
    }

    /** A revision number that was approved once is used up, even when the approval was withdrawn. */
    private OptionalInt lastApproved(String procedure) {
        return of(procedure).stream().filter(revision -> revision.approved().isPresent()).mapToInt(Revision::number).max();
    }

    /** By which plan tests are drawn for a review; empty as long as nobody planned any. */
    public Optional<ReviewPlan> reviews() {
        return reviews;
    }

    /** All revisions, in the order in which they were prepared. */
    public List<Revision> all() {
        return revisions;
    }

    /** All revisions of a procedure, in the order in which they were prepared. */
    public List<Revision> of(String procedure) {
        return revisions.stream().filter(revision -> revision.procedure().equals(procedure)).toList();
    }

    /** That revision of a procedure. */
    public Optional<Revision> find(String procedure, int number) {
        return of(procedure).stream().filter(revision -> revision.number() == number).findFirst();
    }

    /** The revision by which new tests are opened: the newest that is approved and was not withdrawn. */
    public Optional<Revision> current(String procedure) {
        return of(procedure).stream().filter(Revision::holds).max(Comparator.comparingInt(Revision::number));
    }

    /**
     * The approval by which a test may be opened.
     *
     * @param text digest of the text that it would be opened with
     * @param plan digest of the plan
     * @throws RefusedException if it is a draft, or another revision holds
     */
    public Revision required(String procedure, String title, int number, Digest text, Digest plan) throws RefusedException {
        Optional<Revision> found = find(procedure, number).filter(revision -> revision.approved().isPresent());
        Optional<Revision> current = current(procedure);
        require(found.isPresent(), current.isPresent() ? "revision.draftAfter" : "revision.draft", title, number,
                current.map(Revision::number).orElse(0));
        Revision revision = found.get();
        require(revision.text().equals(text), "revision.draftChanged", title, number);
        require(revision.plan().equals(plan), "revision.otherPlan", title, number);
        require(revision.withdrawn().isEmpty(), "revision.withdrawn", title, number, revision.reason());
        require(current.isPresent() && current.get().number() == number, "revision.superseded", title, number,
                current.map(Revision::number).orElse(0));
        return revision;
    }
}
