package org.benchwright.language.ide;

import org.benchwright.model.Named;
import org.benchwright.model.ProcedurePackage.Literals;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.ide.editor.syntaxcoloring.DefaultSemanticHighlightingCalculator;
import org.eclipse.xtext.ide.editor.syntaxcoloring.IHighlightedPositionAcceptor;
import org.eclipse.xtext.util.CancelIndicator;

/** Sets names apart: where they are declared, and where they are referred to. A keyword that is a name looks like a name. */
public class ProcedureHighlighting extends DefaultSemanticHighlightingCalculator {

    /** The style of a name where it is declared. */
    public static final String DEFINITION_ID = "definition";
    /** The style of a name where it is referred to. */
    public static final String REFERENCE_ID = "reference";

    @Override
    protected boolean highlightElement(EObject element, IHighlightedPositionAcceptor acceptor, CancelIndicator cancelled) {
        if (element instanceof Named) {
            highlightFeature(acceptor, element, Literals.NAMED__NAME, DEFINITION_ID);
        }
        for (EReference reference : element.eClass().getEAllReferences()) {
            if (!reference.isContainment() && !reference.isContainer()) {
                highlightFeature(acceptor, element, reference, REFERENCE_ID);
            }
        }
        return false;
    }
}
