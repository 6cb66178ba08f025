package org.benchwright.engine.revision;

import java.time.Instant;
import java.util.Optional;
import org.benchwright.core.Digest;
import org.benchwright.engine.event.Fact;

/**
 * One revision of a procedure that was prepared.
 *
 * @param procedure the procedure's name
 * @param title     what people call it
 * @param number    its revision
 * @param text      digest of its text with all that it refers to
 * @param plan      digest of its plan
 * @param prepared  who prepared it
 * @param approved  who approved it, if somebody did
 * @param withdrawn who withdrew it, if somebody did
 * @param reason    why it was withdrawn; empty if it was not
 */
public record Revision(String procedure, String title, int number, Digest text, Digest plan, Hand prepared, Optional<Hand> approved,
        Optional<Hand> withdrawn, String reason) {

    /**
     * Who did something.
     *
     * @param event   number of the event
     * @param person  who
     * @param instant when
     */
    public record Hand(long event, String person, Instant instant) {
    }

    /** Whether these are its text and plan. */
    public boolean isOf(Digest otherText, Digest otherPlan) {
        return text.equals(otherText) && plan.equals(otherPlan);
    }

    /** Whether it was approved and not withdrawn since. */
    public boolean holds() {
        return approved.isPresent() && withdrawn.isEmpty();
    }

    /** The approval, as a test that relies on it names it. */
    public Optional<Fact.Approval> approval() {
        return approved.map(hand -> new Fact.Approval(hand.event(), prepared.person(), hand.person(), hand.instant()));
    }

    Revision approvedBy(Hand hand) {
        return new Revision(procedure, title, number, text, plan, prepared, Optional.of(hand), withdrawn, reason);
    }

    Revision withdrawnBy(Hand hand, String why) {
        return new Revision(procedure, title, number, text, plan, prepared, approved, Optional.of(hand), why);
    }
}
