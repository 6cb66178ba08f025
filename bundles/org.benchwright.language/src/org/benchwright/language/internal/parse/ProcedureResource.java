package org.benchwright.language.internal.parse;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.emf.ecore.InternalEObject;
import org.eclipse.xtext.linking.lazy.LazyLinkingResource;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.util.Triple;

/** A file, parsed and linked, of which a part can be replaced. After that only the names of that part are followed anew. */
public class ProcedureResource extends LazyLinkingResource {

    /** Links up to this one were followed; 0 if that has to be done for the whole file. */
    private int followed;
    private final Set<Triple<EObject, EReference, INode>> leadNowhere = new LinkedHashSet<>();

    /** How many names were linked since the file was last read as a whole. */
    int links() {
        return getLazyProxyInformation().size();
    }

    /** Takes note that a part was replaced: what was looked up before, and what was wrong with names, has to be found out again. */
    void partReplaced(IParseResult result) {
        setParseResult(result);
        getCache().clear(this);
        clearErrorsAndWarnings();
        addSyntaxErrors();
    }

    @Override
    protected void doLinking() {
        followed = 0;
        leadNowhere.clear();
        super.doLinking();
    }

    @Override
    public void resolveLazyCrossReferences(CancelIndicator cancelled) {
        if (followed == 0) {
            super.resolveLazyCrossReferences(cancelled);
        } else {
            leadNowhere.removeIf(link -> link.getFirst().eResource() != this);
            // A name that leads nowhere is followed every time, so that it is said every time.
            List<Triple<EObject, EReference, INode>> open = new ArrayList<>(leadNowhere);
            for (int number = followed; number < links(); number++) {
                if (hasLazyProxyInformation(number)) {
                    open.add(getLazyProxyInformation(number));
                }
            }
            open.forEach(link -> resolveLazyCrossReference((InternalEObject) link.getFirst(), link.getSecond()));
        }
        followed = links();
    }

    @Override
    protected void createAndAddDiagnostic(Triple<EObject, EReference, INode> link) {
        leadNowhere.add(link);
        super.createAndAddDiagnostic(link);
    }
}
