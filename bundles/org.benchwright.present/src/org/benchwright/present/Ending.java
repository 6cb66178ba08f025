package org.benchwright.present;

import org.benchwright.core.Verdict;

/**
 * How a test ended.
 *
 * @param outcome   the verdict, or what it would have been
 * @param rehearsal true: {@code outcome} is no verdict
 * @param reason    why
 * @param test      the test's id
 * @param words     all of it in one line, fixed for scripts: {@code accepted | reason | T-...}
 */
public record Ending(Verdict outcome, boolean rehearsal, String reason, String test, String words) {
}
