package org.benchwright.language.internal.editing;

import java.util.List;
import java.util.Optional;

import org.benchwright.language.editing.ContentsRow;
import org.benchwright.language.editing.Fold;
import org.benchwright.language.editing.Style;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.parse.PerStep;
import org.benchwright.model.Step;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** What is shown of a file. Steps that have not changed are not looked at again, only moved. */
final class FileView {

    private final ParsedFile file;
    private final PerStep<StepView> steps;

    FileView(ParsedFile file) {
        this.file = file;
        steps = file.perStep();
    }

    /**
     * What is shown of a text.
     *
     * @param styles   the meaning of its passages
     * @param folds    what can be folded
     * @param contents its contents
     */
    record Shown(List<Style> styles, List<Fold> folds, List<ContentsRow> contents) {
    }

    Shown shown() {
        StyleRun styles = new StyleRun();
        Folds folds = Folds.in(file);
        walk(file.resource().getParseResult().getRootNode(), styles, folds);
        return new Shown(styles.all(), folds.all(file), new Outlines(this::row).of(file.content()));
    }

    private void walk(ICompositeNode node, StyleRun styles, Folds folds) {
        for (INode child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof ILeafNode leaf) {
                styles.add(leaf);
                folds.leaf(leaf);
            } else if (child instanceof ICompositeNode composite && composite.hasDirectSemanticElement()
                    && composite.getSemanticElement() instanceof Step step) {
                StepView view = view(step, composite);
                styles.addAll(view.styles());
                view.folds().ifPresentOrElse(known -> folds.step(known, composite.getEndOffset()),
                        () -> composite.getLeafNodes().forEach(folds::leaf));
            } else if (child instanceof ICompositeNode composite) {
                walk(composite, styles, folds);
            }
        }
    }

    private Optional<ContentsRow> row(Step step) {
        ICompositeNode node = NodeModelUtils.findActualNodeFor(step);
        return node == null ? Optional.empty() : view(step, node).row();
    }

    private StepView view(Step step, ICompositeNode node) {
        StepView known = steps.of(step, any -> look(step, node));
        StepView now = known.at(node.getTotalOffset());
        if (now != known) {
            steps.put(step, now);
        }
        return now;
    }

    private static StepView look(Step step, ICompositeNode node) {
        StyleRun styles = new StyleRun();
        node.getLeafNodes().forEach(styles::add);
        return new StepView(node.getTotalOffset(), styles.all(), Folds.ofStep(node), Optional.of(Outlines.step(step)));
    }
}
