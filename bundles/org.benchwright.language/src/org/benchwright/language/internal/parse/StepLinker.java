package org.benchwright.language.internal.parse;

import java.util.List;

import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.emf.ecore.util.InternalEList;
import org.eclipse.xtext.linking.lazy.LazyLinker;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.resource.impl.ListBasedDiagnosticConsumer;

/** Links parts of a text, beside all of it. */
public class StepLinker extends LazyLinker {

    /** Makes every name in a part of a text lead to what it means, once somebody follows it; the rest of the text stays linked as it is. */
    void linkPart(EObject part) {
        doLinkModel(part, new ListBasedDiagnosticConsumer());
    }

    /** Makes one name be looked up again once somebody follows it. */
    @SuppressWarnings("unchecked") // a reference to many holds a list
    void lookUpAgain(EObject holder, EReference reference, INode name) {
        EObject open = createProxy(holder, name, reference);
        if (reference.isMany()) {
            List<INode> names = NodeModelUtils.findNodesForFeature(holder, reference);
            ((InternalEList<EObject>) holder.eGet(reference, false)).setUnique(names.indexOf(name), open);
        } else {
            holder.eSet(reference, open);
        }
    }
}
