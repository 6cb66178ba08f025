package org.benchwright.present;

/**
 * A line of a fault log in plain words, by the family's fault notes.
 *
 * @param code  as the unit wrote it
 * @param known false if the family has no note on this code
 * @param title what it is
 * @param means what happened
 * @param often what is often the cause
 * @param next  the next move
 */
public record FaultExplanation(String code, boolean known, String title, String means, String often, String next) {
}
