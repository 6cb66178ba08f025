package org.benchwright.engine.record;

import java.time.Instant;

/**
 * What an auditor decided on a deviation.
 *
 * @param sequence number of the decision's event
 * @param word     what was decided: that of a {@link DepartureDecision} or a {@link Disposition}
 * @param reason   why
 * @param person   who
 * @param instant  when
 */
public record Decision(long sequence, String word, String reason, String person, Instant instant) {
}
