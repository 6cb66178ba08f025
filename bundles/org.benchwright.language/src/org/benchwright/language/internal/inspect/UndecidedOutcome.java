package org.benchwright.language.internal.inspect;

import org.benchwright.core.Verdict;
import org.benchwright.model.Conclude;
import org.benchwright.model.Decision;
import org.benchwright.model.Procedures;

/** Whether the text says what an undecided value leads to. */
final class UndecidedOutcome {

    private UndecidedOutcome() {
    }

    /** Anything but a rejection can be meant for an undecided value; a rejection never is. */
    static boolean isSaid(Decision decision) {
        return Procedures.outcome(decision).filter(outcome -> !(outcome instanceof Conclude end) || end.getVerdict() == Verdict.UNDECIDED)
                .isPresent();
    }
}
