package org.benchwright.language.internal.editing;

import java.util.List;
import java.util.Optional;

import org.benchwright.language.editing.ContentsRow;
import org.benchwright.language.editing.Fold;
import org.benchwright.language.editing.Style;

/**
 * What is shown of one step.
 *
 * @param offset where the step begins, with the blanks and comments before it; all places count with it
 * @param styles what its passages mean
 * @param folds  what can be folded in it; empty where that depends on what is around it
 * @param row    its row of the contents; empty where it stands nowhere in the text
 */
record StepView(int offset, List<Style> styles, Optional<List<Fold>> folds, Optional<ContentsRow> row) {

    StepView {
        styles = List.copyOf(styles);
        folds = folds.map(List::copyOf);
    }

    /** The same, of the same step further on or back in its text. */
    StepView at(int otherOffset) {
        int by = otherOffset - offset;
        return by == 0 ? this : new StepView(otherOffset, styles.stream()
                .map(style -> new Style(style.offset() + by, style.length(), style.meaning())).toList(),
                folds.map(all -> all.stream().map(fold -> new Fold(fold.kind(), fold.offset() + by, fold.length())).toList()),
                row.map(old -> new ContentsRow(old.kind(), old.name(), old.label(), old.offset() + by, old.length(), old.end() + by,
                        old.children())));
    }
}
