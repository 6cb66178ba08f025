package org.benchwright.present;

import java.util.List;

import org.benchwright.core.Verdict;

/**
 * How a test ended.
 *
 * @param outcome   the verdict, or what it would have been
 * @param rehearsal true: {@code outcome} is no verdict
 * @param reason    why
 * @param proved    what its soaks proved, a sentence or two for each; empty without one
 * @param test      the test's id
 * @param words     all of it in one line, fixed for scripts: {@code accepted | reason | T-...}
 */
public record Ending(Verdict outcome, boolean rehearsal, String reason, List<String> proved, String test, String words) {

    /** Freezes the list. */
    public Ending {
        proved = List.copyOf(proved);
    }
}
