package org.benchwright.language.internal.fix;

import java.util.List;
import java.util.Optional;

import org.benchwright.language.Remark;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Fix;
import org.benchwright.language.editing.Place;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.TextPlaces;
import org.benchwright.model.Procedures;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/**
 * The place of a remark, and the edits that can be made around it.
 *
 * @param file   the file
 * @param remark the remark
 * @param leaf   the word that it begins at
 * @param object what that word belongs to
 */
record Spot(ParsedFile file, Remark remark, ILeafNode leaf, EObject object) {

    /** The place of a remark; nothing where there is no text. */
    static Optional<Spot> of(ParsedFile file, Remark remark) {
        INode root = file.resource().getParseResult().getRootNode();
        ILeafNode leaf = NodeModelUtils.findLeafNodeAtOffset(root, remark.offset());
        EObject object = leaf == null ? null : NodeModelUtils.findActualSemanticObjectFor(leaf);
        return object == null ? Optional.empty() : Optional.of(new Spot(file, remark, leaf, object));
    }

    /** The nearest thing of a kind around the place. */
    <T extends EObject> Optional<T> around(Class<T> kind) {
        return Procedures.around(object, kind);
    }

    /** The characters of a part of a thing. */
    static Optional<INode> node(EObject thing, EStructuralFeature part) {
        return nodes(thing, part).stream().findFirst();
    }

    static List<INode> nodes(EObject thing, EStructuralFeature part) {
        return NodeModelUtils.findNodesForFeature(thing, part);
    }

    static INode node(EObject thing) {
        return NodeModelUtils.findActualNodeFor(thing);
    }

    static String text(INode node) {
        return NodeModelUtils.getTokenText(node);
    }

    /** The characters that the remark is about. */
    String remarked() {
        String text = file.text().text();
        return text.substring(remark.offset(), Math.min(text.length(), remark.offset() + remark.length()));
    }

    // ---- edits

    Edit edit(int offset, int length, String text) {
        return new Edit(new Place(file.text().path(), offset, length), text);
    }

    Edit replace(INode node, String text) {
        return edit(node.getOffset(), node.getLength(), text);
    }

    Edit before(INode node, String text) {
        return edit(node.getOffset(), 0, text);
    }

    Edit after(INode node, String text) {
        return edit(node.getEndOffset(), 0, text);
    }

    /** A line of its own before something, indented like it. */
    Edit lineBefore(INode node, String line) {
        return before(node, line + "\n" + indentation(node.getOffset()));
    }

    /** The last brace of a thing that ends with one. */
    Edit beforeClosing(EObject thing, String text) {
        INode node = node(thing);
        int brace = file.text().text().lastIndexOf('}', node.getEndOffset() - 1);
        return edit(brace, 0, text);
    }

    /** A passage taken out, with its line where nothing else stands in it. */
    Edit remove(int offset, int end) {
        String text = file.text().text();
        int from = offset;
        while (from > 0 && (text.charAt(from - 1) == ' ' || text.charAt(from - 1) == '\t')) {
            from--;
        }
        boolean beginsLine = from == 0 || text.charAt(from - 1) == '\n';
        int lineEnd = text.startsWith("\r\n", end) ? 2 : text.startsWith("\n", end) ? 1 : 0;
        return edit(from, end - from + (beginsLine ? lineEnd : 0), "");
    }

    Edit remove(INode node) {
        return remove(node.getOffset(), node.getEndOffset());
    }

    /** One item of a list taken out, with a comma beside it. */
    Edit removeItem(List<INode> items, int index) {
        String text = file.text().text();
        INode item = items.get(index);
        if (index > 0) {
            int from = text.lastIndexOf(',', item.getOffset());
            return edit(from, item.getEndOffset() - from, "");
        }
        return edit(item.getOffset(), items.get(1).getOffset() - item.getOffset(), "");
    }

    /** The blanks that a place's line begins with. */
    String indentation(int offset) {
        return new TextPlaces(file.text().text()).indentation(offset);
    }

    static List<Fix> one(FixText label, String what, Edit... edits) {
        return List.of(new Fix(label.text(what), List.of(edits)));
    }

    static List<Fix> one(FixText label, Edit... edits) {
        return List.of(new Fix(label.text(), List.of(edits)));
    }
}
