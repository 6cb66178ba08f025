package org.benchwright.language.internal.editing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

import org.benchwright.language.editing.Fold;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.TextPlaces;
import org.benchwright.model.Import;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/**
 * What can be folded, where it has more than one line: whatever the grammar puts between braces, from its first word on; comments, and those of
 * one line that stand below each other; imports. How the text is laid out does not matter.
 */
final class Folds {

    private final int begin;
    private final TextPlaces places;
    private final Run comments = new Run(Fold.Kind.COMMENT);
    private final List<Fold> folds = new ArrayList<>();
    /** Where the blocks begin that are not closed yet. */
    private final Deque<Integer> open = new ArrayDeque<>();
    private int lastOffset;
    private boolean lineBegins = true;

    /**
     * Begins at the beginning of a passage.
     *
     * @param begin where the passage begins in its text
     * @param text  the passage
     */
    private Folds(int begin, String text) {
        this.begin = begin;
        places = new TextPlaces(text);
    }

    /** Begins at the beginning of a file's text. */
    static Folds in(ParsedFile file) {
        return new Folds(0, file.text().text());
    }

    /**
     * Those of one step, if they are the same whatever stands around it.
     *
     * @param step the step's words, with the blanks and comments before it
     */
    static Optional<List<Fold>> ofStep(ICompositeNode step) {
        Folds own = new Folds(step.getTotalOffset(), step.getText());
        own.lineBegins = false;
        boolean whole = true;
        boolean ended = false;
        for (ILeafNode leaf : step.getLeafNodes()) {
            // A brace that closes nothing here closes something before the step.
            whole &= !own.open.isEmpty() || !leaf.getText().equals("}");
            ended = !leaf.isHidden();
            own.leaf(leaf);
        }
        whole &= ended && own.open.isEmpty() && own.folds.stream().allMatch(fold -> fold.offset() >= step.getTotalOffset());
        return whole ? Optional.of(own.folds) : Optional.empty();
    }

    /** Goes on behind a step whose folds are known. */
    void step(List<Fold> known, int end) {
        comments.end();
        folds.addAll(known);
        lastOffset = end;
        lineBegins = false;
    }

    /** All of them, the text being at its end. */
    List<Fold> all(ParsedFile file) {
        comments.end();
        while (!open.isEmpty()) {
            // A brace is missing: nobody knows where this one ends.
            add(Fold.Kind.BLOCK, open.pop(), lastOffset);
        }
        imports(file);
        folds.sort((one, other) -> Integer.compare(one.offset(), other.offset()));
        return folds;
    }

    /** Goes on with the next word, blank or comment. */
    void leaf(ILeafNode leaf) {
        if (!leaf.isHidden()) {
            comments.end();
            lastOffset = leaf.getEndOffset();
            brace(leaf);
        } else if (leaf.getText().startsWith("/*")) {
            comments.end();
            add(Fold.Kind.COMMENT, leaf.getOffset(), leaf.getEndOffset());
        } else if (leaf.getText().startsWith("//") && lineBegins) {
            // The end of its line belongs to it.
            comments.add(leaf.getOffset(), leaf.getOffset() + leaf.getText().stripTrailing().length());
        } else if (leaf.getText().contains("\n")) {
            comments.end();
        }
        lineBegins = leaf.isHidden() && (lineBegins || leaf.getText().contains("\n"));
    }

    private void brace(ILeafNode leaf) {
        if (!(leaf.getGrammarElement() instanceof Keyword keyword)) {
            return;
        }
        if (keyword.getValue().equals("{")) {
            INode block = leaf.getSemanticElement() == null ? null : NodeModelUtils.findActualNodeFor(leaf.getSemanticElement());
            open.push(block == null ? leaf.getOffset() : block.getOffset());
        } else if (keyword.getValue().equals("}") && !open.isEmpty()) {
            add(Fold.Kind.BLOCK, open.pop(), leaf.getEndOffset());
        }
    }

    private void imports(ParsedFile file) {
        List<Import> imports = file.content().getImports();
        INode first = imports.isEmpty() ? null : NodeModelUtils.findActualNodeFor(imports.get(0));
        INode last = imports.isEmpty() ? null : NodeModelUtils.findActualNodeFor(imports.get(imports.size() - 1));
        if (first != null && last != null) {
            add(Fold.Kind.IMPORTS, first.getOffset(), last.getEndOffset());
        }
    }

    private void add(Fold.Kind kind, int from, int end) {
        if (places.line(end - begin) > places.line(from - begin)) {
            folds.add(new Fold(kind, from, end - from));
        }
    }

    /** Passages that stand below each other, and so are folded together. */
    private final class Run {

        private final Fold.Kind kind;
        private int from = -1;
        private int to;

        Run(Fold.Kind kind) {
            this.kind = kind;
        }

        void add(int begin, int end) {
            from = from < 0 ? begin : from;
            to = end;
        }

        void end() {
            if (from >= 0) {
                Folds.this.add(kind, from, to);
                from = -1;
            }
        }
    }
}
