package org.benchwright.engine.event;

import java.time.Instant;

/**
 * The approval of a revision, as a test names it.
 *
 * @param event      number of the approval among what was signed about revisions
 * @param preparedBy who prepared the revision
 * @param approvedBy who approved it
 * @param instant    when it was approved
 */
public record Approval(long event, String preparedBy, String approvedBy, Instant instant) {
}
