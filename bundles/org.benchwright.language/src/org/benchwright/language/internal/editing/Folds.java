package org.benchwright.language.internal.editing;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.language.editing.Fold;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.TextPlaces;
import org.benchwright.model.Family;
import org.benchwright.model.Fault;
import org.benchwright.model.Procedure;
import org.benchwright.model.Step;
import org.benchwright.model.StepList;
import org.benchwright.model.Soak;
import org.eclipse.emf.common.util.TreeIterator;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** What can be folded: everything between braces that has a name, and comments, where they have more than one line. */
final class Folds {

    private Folds() {
    }

    static List<Fold> of(ParsedFile file) {
        TextPlaces places = new TextPlaces(file.text().text());
        List<Fold> folds = new ArrayList<>();
        for (TreeIterator<EObject> all = file.content().eAllContents(); all.hasNext();) {
            EObject each = all.next();
            INode node = isBlock(each) ? NodeModelUtils.findActualNodeFor(each) : null;
            if (node != null) {
                add(node.getOffset(), node.getEndOffset(), places, folds);
            }
            if (each instanceof Step) {
                // Nothing in a step has braces of its own.
                all.prune();
            }
        }
        for (ILeafNode leaf : file.resource().getParseResult().getRootNode().getLeafNodes()) {
            if (leaf.isHidden() && leaf.getText().startsWith("/*")) {
                add(leaf.getOffset(), leaf.getEndOffset(), places, folds);
            }
        }
        folds.sort((one, other) -> Integer.compare(one.offset(), other.offset()));
        return folds;
    }

    private static boolean isBlock(EObject each) {
        return each instanceof Family || each instanceof Fault || each instanceof Procedure || each instanceof StepList
                || each instanceof Soak || each instanceof Step;
    }

    private static void add(int from, int end, TextPlaces places, List<Fold> folds) {
        if (places.line(end) > places.line(from)) {
            folds.add(new Fold(from, end - from));
        }
    }
}
