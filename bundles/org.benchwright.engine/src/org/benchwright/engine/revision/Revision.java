package org.benchwright.engine.revision;

import java.time.Instant;
import java.util.Optional;
import org.benchwright.core.Digest;
import org.benchwright.engine.event.Approval;

/**
 * One revision of a procedure that was prepared.
 *
 * @param procedure the procedure's name with that of the family it was compiled for, see {@link #key}
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

    private static final String FOR = " for ";

    /**
     * Who did something.
     *
     * @param event   number of the event
     * @param person  who
     * @param instant when
     */
    public record Hand(long event, String person, Instant instant) {
    }

    /**
     * What revisions are counted and approved by: a procedure compiled for one family is approved for no other, even if both are like each
     * other. Neither name has a blank in it.
     *
     * @param procedure the procedure's name
     * @param family    the name of the family that it is compiled for
     * @return such as {@code tarn_acceptance for tarn_c16}
     */
    public static String key(String procedure, String family) {
        return procedure + FOR + family;
    }

    /** The procedure's name alone. */
    public String procedureName() {
        return procedureName(procedure);
    }

    /** The procedure's name alone in what its revisions are kept by. */
    public static String procedureName(String key) {
        int end = key.indexOf(FOR);
        return end < 0 ? key : key.substring(0, end);
    }

    /** The name of the family that it is for; empty in a record that was made before families were told apart. */
    public Optional<String> family() {
        int end = procedure.indexOf(FOR);
        return end < 0 ? Optional.empty() : Optional.of(procedure.substring(end + FOR.length()));
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
    public Optional<Approval> approval() {
        return approved.map(hand -> new Approval(hand.event(), prepared.person(), hand.person(), hand.instant()));
    }

    Revision approvedBy(Hand hand) {
        return new Revision(procedure, title, number, text, plan, prepared, Optional.of(hand), withdrawn, reason);
    }

    Revision withdrawnBy(Hand hand, String why) {
        return new Revision(procedure, title, number, text, plan, prepared, approved, Optional.of(hand), why);
    }
}
