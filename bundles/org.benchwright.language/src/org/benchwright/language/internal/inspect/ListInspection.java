package org.benchwright.language.internal.inspect;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

import org.benchwright.language.RemarkCode;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** Lists of names name each thing once. */
final class ListInspection implements Inspection {

    @Override
    public void piece(EObject piece, Remarks remarks) {
        for (EReference list : piece.eClass().getEAllReferences()) {
            // One name is there once; to find where it stands takes longer than to count.
            if (list.isMany() && !list.isContainment() && piece.eIsSet(list) && ((List<?>) piece.eGet(list, false)).size() > 1) {
                once(piece, list, remarks);
            }
        }
    }

    private static void once(EObject thing, EReference list, Remarks remarks) {
        List<INode> names = NodeModelUtils.findNodesForFeature(thing, list);
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < names.size(); i++) {
            String name = NodeModelUtils.getTokenText(names.get(i));
            if (!seen.add(name)) {
                remarks.on(thing, list, i, RemarkCode.LISTED_TWICE, name);
            }
        }
    }
}
