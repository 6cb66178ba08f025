package org.benchwright.language.internal.inspect;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.language.RemarkCode;
import org.benchwright.model.Named;
import org.benchwright.model.ProcedurePackage.Literals;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** Finds the place in the text that a remark is about: a name, a part, or the first line of a thing. */
final class NotedRemarks implements Remarks {

    private final List<Noted> noted = new ArrayList<>();

    /** What was said so far. */
    List<Noted> all() {
        return List.copyOf(noted);
    }

    @Override
    public void on(EObject thing, RemarkCode code, String... arguments) {
        List<INode> name = thing instanceof Named ? NodeModelUtils.findNodesForFeature(thing, Literals.NAMED__NAME) : List.of();
        note(thing, name.isEmpty() ? NodeModelUtils.findActualNodeFor(thing) : name.get(0), code, arguments);
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
            note(thing, nodes.get(Math.min(index, nodes.size() - 1)), code, arguments);
        }
    }

    private void note(EObject thing, INode node, RemarkCode code, String... arguments) {
        noted.add(new Noted(thing, Optional.ofNullable(node), node == null ? 0 : firstLine(node), code, code.text(arguments)));
    }

    private static int firstLine(INode node) {
        int hidden = node.getOffset() - node.getTotalOffset();
        String text = node.getText().substring(hidden, hidden + node.getLength());
        int end = text.indexOf('\n');
        return end < 0 ? text.length() : text.substring(0, end).stripTrailing().length();
    }
}
