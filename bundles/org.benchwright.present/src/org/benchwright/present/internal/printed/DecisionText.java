package org.benchwright.present.internal.printed;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.Move;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.present.internal.Questions;

/** How a value is decided, and where each outcome leads. */
final class DecisionText {

    private final MoveText moves;

    DecisionText(MoveText moves) {
        this.moves = moves;
    }

    /** @param said true where the step says for all its checks where a rejected one leads */
    List<String> of(Action.Measure measure, boolean said) {
        List<String> notes = new ArrayList<>();
        measure.meanOf().ifPresent(count -> notes.add(PrintedWords.READINGS.text(count.number())));
        if (measure.blind()) {
            notes.add(PrintedWords.BLIND.text());
        }
        notes.add(rule(measure.rule()));
        measure.again().ifPresent(again -> notes.add(PrintedWords.AGAIN.text(again.atMost(), combination(again.combine()))));
        outcomes(notes, measure.rejected(), said);
        boolean canBeUndecided = measure.again().isPresent() || measure.rule() == DecisionRule.GUARDED_BOTH_WAYS;
        if (canBeUndecided) {
            notes.add(PrintedWords.UNDECIDED.text(moves.of(measure.undecided())));
        }
        return notes;
    }

    List<String> of(Action.Derive derive, boolean said) {
        List<String> notes = new ArrayList<>(List.of(rule(derive.rule())));
        outcomes(notes, derive.rejected(), said);
        notes.add(PrintedWords.NOT_RECKONED.text(moves.of(derive.undecided())));
        return notes;
    }

    List<String> of(Action.Grid grid, boolean said) {
        List<String> notes = new ArrayList<>(List.of(rule(grid.rule())));
        outcomes(notes, grid.rejected(), said);
        if (grid.rule() == DecisionRule.GUARDED_BOTH_WAYS) {
            notes.add(PrintedWords.UNDECIDED.text(moves.of(grid.undecided())));
        }
        return notes;
    }

    private void outcomes(List<String> notes, Move rejected, boolean said) {
        if (!said) {
            notes.add(PrintedWords.REJECTED.text(moves.of(rejected)));
        }
    }

    private static String rule(DecisionRule rule) {
        return switch (rule) {
            case SIMPLE -> PrintedWords.RULE_SIMPLE.text();
            case GUARDED -> PrintedWords.RULE_GUARDED.text();
            case GUARDED_BOTH_WAYS -> PrintedWords.RULE_BOTH_WAYS.text();
        };
    }

    private static String combination(Combination combination) {
        return switch (combination) {
            case MEAN -> PrintedWords.COMBINE_MEAN.text();
            case BOTH_INSIDE -> PrintedWords.COMBINE_BOTH_INSIDE.text();
            case LAST -> PrintedWords.COMBINE_LAST.text();
        };
    }

    /** A sum or difference as it is written; what is taken away together stands in parentheses. */
    static String of(Expression expression) {
        if (expression instanceof Expression.Name name) {
            return Questions.spaced(name.name().substring(name.name().lastIndexOf('.') + 1));
        } else if (expression instanceof Expression.Fixed fixed) {
            return fixed.quantity().toString();
        } else if (expression instanceof Expression.Sum sum) {
            return PrintedWords.SUM.text(of(sum.left()), of(sum.right()));
        } else if (expression instanceof Expression.Difference difference) {
            boolean single = difference.right() instanceof Expression.Name || difference.right() instanceof Expression.Fixed;
            String right = of(difference.right());
            return PrintedWords.DIFFERENCE.text(of(difference.left()), single ? right : "(" + right + ")");
        }
        throw new IllegalStateException("no words for " + expression);
    }
}
