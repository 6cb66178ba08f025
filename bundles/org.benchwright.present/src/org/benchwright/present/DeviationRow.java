package org.benchwright.present;

import java.time.Instant;
import java.util.Optional;

/**
 * A departure or a nonconformity.
 *
 * @param test          the test's id
 * @param serial        the unit's serial number
 * @param family        its family's name
 * @param procedure     by which procedure
 * @param event         number of the event that noted it
 * @param nonconformity false for a departure
 * @param place         stage and step; empty before the first
 * @param noted         when
 * @param age           how long it has waited or did wait, in words
 * @param words         what
 * @param owner         who has to act, in words; empty where nobody has to
 * @param waiting       true if an auditor has to decide
 * @param decision      what was decided, if something was
 */
public record DeviationRow(String test, String serial, String family, String procedure, long event, boolean nonconformity, String place,
        Instant noted, String age, String words, String owner, boolean waiting, Optional<Decision> decision) {

    /**
     * What was decided.
     *
     * @param word    the decision
     * @param reason  why
     * @param by      who signed
     * @param instant when
     */
    public record Decision(String word, String reason, String by, Instant instant) {
    }
}
