package org.benchwright.language.internal.editing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

import org.benchwright.language.editing.Fold;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.TextPlaces;
import org.benchwright.model.Import;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/**
 * What can be folded, where it has more than one line: whatever the grammar puts between braces, from its first word on; comments, and those of
 * one line that stand below each other; imports. How the text is laid out does not matter.
 */
final class Folds {

    private final TextPlaces places;
    private final List<Fold> folds = new ArrayList<>();
    /** Where the blocks begin that are not closed yet. */
    private final Deque<Integer> open = new ArrayDeque<>();
    private int lastOffset;
    private boolean lineBegins = true;

    private Folds(String text) {
        places = new TextPlaces(text);
    }

    static List<Fold> of(ParsedFile file) {
        Folds all = new Folds(file.text().text());
        Run comments = all.new Run(Fold.Kind.COMMENT);
        for (ILeafNode leaf : file.resource().getParseResult().getRootNode().getLeafNodes()) {
            all.leaf(leaf, comments);
        }
        comments.end();
        while (!all.open.isEmpty()) {
            // A brace is missing: nobody knows where this one ends.
            all.add(Fold.Kind.BLOCK, all.open.pop(), all.lastOffset);
        }
        all.imports(file);
        all.folds.sort((one, other) -> Integer.compare(one.offset(), other.offset()));
        return all.folds;
    }

    private void leaf(ILeafNode leaf, Run comments) {
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
            INode begin = leaf.getSemanticElement() == null ? null : NodeModelUtils.findActualNodeFor(leaf.getSemanticElement());
            open.push(begin == null ? leaf.getOffset() : begin.getOffset());
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
        if (places.line(end) > places.line(from)) {
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
