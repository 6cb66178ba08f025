package org.benchwright.language.validation;

import java.util.List;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.inspect.Remarks;
import org.benchwright.model.Named;
import org.benchwright.model.ProcedurePackage.Literals;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.validation.ValidationMessageAcceptor;

/** Finds the place in the text that a remark is about: a name, a part, or the first line of a thing. */
final class PlacedRemarks implements Remarks {

    private final ValidationMessageAcceptor acceptor;

    PlacedRemarks(ValidationMessageAcceptor acceptor) {
        this.acceptor = acceptor;
    }

    @Override
    public void on(EObject thing, RemarkCode code, String... arguments) {
        List<INode> name = thing instanceof Named ? NodeModelUtils.findNodesForFeature(thing, Literals.NAMED__NAME) : List.of();
        INode node = name.isEmpty() ? NodeModelUtils.findActualNodeFor(thing) : name.get(0);
        accept(thing, node, code, arguments);
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
            accept(thing, nodes.get(Math.min(index, nodes.size() - 1)), code, arguments);
        }
    }

    private void accept(EObject thing, INode node, RemarkCode code, String... arguments) {
        int offset = node == null ? 0 : node.getOffset();
        int length = node == null ? 0 : firstLine(node);
        String words = code.text(arguments);
        switch (code.severity()) {
            case ERROR -> acceptor.acceptError(words, thing, offset, length, code.word());
            case WARNING -> acceptor.acceptWarning(words, thing, offset, length, code.word());
            case INFO -> acceptor.acceptInfo(words, thing, offset, length, code.word());
        }
    }

    private static int firstLine(INode node) {
        int hidden = node.getOffset() - node.getTotalOffset();
        String text = node.getText().substring(hidden, hidden + node.getLength());
        int end = text.indexOf('\n');
        return end < 0 ? text.length() : text.substring(0, end).stripTrailing().length();
    }
}
