package org.benchwright.engine.record;

import java.time.Instant;

/**
 * A correction that was signed after the seal.
 *
 * @param sequence number of the amendment's own event
 * @param event    number of the event that it corrects
 * @param entry    what is right, as typed
 * @param reason   why
 * @param person   who says so
 * @param instant  when
 * @param replay   what the test would have come to with this and every amendment before it
 */
public record Amendment(long sequence, long event, String entry, String reason, String person, Instant instant, Replay replay) {
}
