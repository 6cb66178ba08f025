package org.benchwright.present.internal.printed;

import org.benchwright.engine.plan.Move;

/** Where something leads, as the second half of a sentence. */
final class MoveText {

    private final Numbering numbering;

    MoveText(Numbering numbering) {
        this.numbering = numbering;
    }

    String of(Move move) {
        if (move instanceof Move.Conclude conclude) {
            return conclude.reason().isBlank() ? PrintedWords.MOVE_CONCLUDE.text(conclude.verdict().word())
                    : PrintedWords.MOVE_CONCLUDE_WHY.text(conclude.verdict().word(), conclude.reason());
        } else if (move instanceof Move.GoTo goTo) {
            String there = PrintedWords.MOVE_GO.text(numbering.of(goTo));
            return goTo.bound().map(bound -> bounded(there, bound)).orElse(there);
        } else if (move instanceof Move.BeginAgain again) {
            return bounded(PrintedWords.MOVE_AGAIN.text(), again.bound());
        } else if (move instanceof Move.ReleaseBy release) {
            return PrintedWords.MOVE_RELEASE.text(release.statement(), release.by().label());
        }
        throw new IllegalStateException("no words for " + move);
    }

    /** Where a loss of power leads during a soak: begin again means more there. */
    String afterPowerLost(Move move) {
        return move instanceof Move.BeginAgain again ? PrintedWords.MOVE_BOUND.text(PrintedWords.MOVE_POWER_UP_AGAIN.text(),
                again.bound().atMost(), afterPowerLost(again.bound().instead())) : of(move);
    }

    private String bounded(String first, Move.Bound bound) {
        return PrintedWords.MOVE_BOUND.text(first, bound.atMost(), of(bound.instead()));
    }
}
