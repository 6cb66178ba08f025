package org.benchwright.language.scoping;

import org.benchwright.model.Family;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.SharedStage;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.naming.QualifiedName;
import org.eclipse.xtext.resource.EObjectDescription;
import org.eclipse.xtext.resource.IEObjectDescription;
import org.eclipse.xtext.resource.impl.DefaultResourceDescriptionStrategy;
import org.eclipse.xtext.util.IAcceptor;

/** What other files can refer to: families, procedures and shared stages. */
public class ExportedNames extends DefaultResourceDescriptionStrategy {

    @Override
    public boolean createEObjectDescriptions(EObject element, IAcceptor<IEObjectDescription> acceptor) {
        if (element instanceof Family || element instanceof Procedure || element instanceof SharedStage) {
            String name = ((Named) element).getName();
            if (name != null) {
                acceptor.accept(EObjectDescription.create(QualifiedName.create(name), element));
            }
        }
        return element instanceof ProcedureFile;
    }
}
