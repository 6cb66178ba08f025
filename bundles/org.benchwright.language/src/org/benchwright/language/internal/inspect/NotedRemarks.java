package org.benchwright.language.internal.inspect;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.language.RemarkCode;
import org.benchwright.model.Named;
import org.benchwright.model.ProcedurePackage.Literals;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** Finds the place in the text that a remark is about: a name, a part, or the first line of a thing. */
final class NotedRemarks implements Remarks {

    private final List<Noted> noted;
    /** Where in this file things of another one are remarked on; empty for those of this file. */
    private final Optional<EObject> instead;

    NotedRemarks() {
        this(new ArrayList<>(), Optional.empty());
    }

    private NotedRemarks(List<Noted> noted, Optional<EObject> instead) {
        this.noted = noted;
        this.instead = instead;
    }

    /** What was said so far. */
    List<Noted> all() {
        return List.copyOf(noted);
    }

    @Override
    public Remarks insteadAt(EObject place) {
        return new NotedRemarks(noted, Optional.of(place));
    }

    @Override
    public void on(EObject thing, RemarkCode code, String... arguments) {
        note(thing, node(thing), code, arguments);
    }

    @Override
    public void on(EObject thing, EStructuralFeature part, RemarkCode code, String... arguments) {
        on(thing, part, 0, code, arguments);
    }

    @Override
    public void on(EObject thing, EStructuralFeature part, int index, RemarkCode code, String... arguments) {
        List<INode> nodes = NodeModelUtils.findNodesForFeature(thing, part);
        if (nodes.isEmpty()) {
            on(thing, code, arguments);
        } else {
            note(thing, Optional.of(nodes.get(Math.min(index, nodes.size() - 1))), code, arguments);
        }
    }

    @Override
    public String where(EObject thing, EObject from) {
        Optional<String> line = node(thing).map(node -> String.valueOf(node.getStartLine()));
        boolean same = thing.eResource() == from.eResource();
        return line.map(number -> same ? ElsewhereText.IN_LINE.text(number) : ElsewhereText.IN_LINE_OF.text(number, file(thing))).orElse("");
    }

    private static Optional<INode> node(EObject thing) {
        List<INode> name = thing instanceof Named ? NodeModelUtils.findNodesForFeature(thing, Literals.NAMED__NAME) : List.of();
        return name.isEmpty() ? Optional.ofNullable(NodeModelUtils.findActualNodeFor(thing)) : Optional.of(name.get(0));
    }

    private void note(EObject thing, Optional<INode> node, RemarkCode code, String... arguments) {
        String words = code.text(arguments);
        if (instead.isPresent()) {
            Optional<INode> place = node(instead.get());
            noted.add(new Noted(instead.get(), place, length(place), code, elsewhere(words, thing, node), thing, node));
        } else {
            noted.add(new Noted(thing, node, length(node), code, words, thing, node));
        }
    }

    private static String elsewhere(String words, EObject thing, Optional<INode> node) {
        String file = file(thing);
        return node.isEmpty() || file.isEmpty() ? words : ElsewhereText.IN_FILE.text(words, file, String.valueOf(node.get().getStartLine()));
    }

    private static String file(EObject thing) {
        return thing.eResource() == null ? "" : URI.decode(thing.eResource().getURI().lastSegment());
    }

    private static int length(Optional<INode> node) {
        return node.map(NotedRemarks::firstLine).orElse(0);
    }

    private static int firstLine(INode node) {
        int hidden = node.getOffset() - node.getTotalOffset();
        String text = node.getText().substring(hidden, hidden + node.getLength());
        int end = text.indexOf('\n');
        return end < 0 ? text.length() : text.substring(0, end).stripTrailing().length();
    }
}
