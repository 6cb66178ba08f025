package org.benchwright.ui.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.Emphasis;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.StrongEmphasis;
import org.commonmark.node.Text;

/** The words of a paragraph, a heading or a cell; of a picture among them what stands for it. */
final class Runs extends AbstractVisitor {

    private final List<Run> runs = new ArrayList<>();
    private Run.Face face = Run.Face.PLAIN;
    private Optional<String> link = Optional.empty();

    private Runs() {
    }

    static List<Run> of(Node node) {
        Runs visitor = new Runs();
        visitor.visitChildren(node);
        return visitor.runs;
    }

    /** What runs say together. */
    static String words(List<Run> runs) {
        return runs.stream().map(Run::words).collect(Collectors.joining());
    }

    @Override
    public void visit(Text text) {
        add(text.getLiteral(), face);
    }

    @Override
    public void visit(Code code) {
        add(code.getLiteral(), Run.Face.CODE);
    }

    @Override
    public void visit(SoftLineBreak ended) {
        add(" ", face);
    }

    @Override
    public void visit(HardLineBreak ended) {
        add(" ", face);
    }

    @Override
    public void visit(HtmlInline html) {
        if (!html.getLiteral().startsWith("<!--")) {
            add(html.getLiteral(), face);
        }
    }

    @Override
    public void visit(Emphasis stressed) {
        stressed(stressed);
    }

    @Override
    public void visit(StrongEmphasis stressed) {
        stressed(stressed);
    }

    private void stressed(Node node) {
        Run.Face before = face;
        face = Run.Face.STRONG;
        visitChildren(node);
        face = before;
    }

    @Override
    public void visit(Link to) {
        link = Optional.of(to.getDestination());
        visitChildren(to);
        link = Optional.empty();
    }

    private void add(String words, Run.Face how) {
        runs.add(new Run(words, how, link));
    }
}
