package org.benchwright.engine.internal;

import org.benchwright.engine.plan.Move;

/**
 * A release that is being waited for.
 *
 * @param check   the check that does not conform
 * @param asked   who may release it, and what then
 * @param because why it does not conform
 */
record PendingRelease(String check, Move.ReleaseBy asked, String because) {
}
