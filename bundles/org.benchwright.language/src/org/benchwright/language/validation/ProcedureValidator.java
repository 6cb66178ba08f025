package org.benchwright.language.validation;

import java.util.List;

import org.benchwright.model.ProcedurePackage;
import org.eclipse.emf.ecore.EPackage;

/** All remarks beyond syntax and names. */
public class ProcedureValidator extends AbstractProcedureValidator {

    @Override
    protected List<EPackage> getEPackages() {
        return List.of(ProcedurePackage.eINSTANCE);
    }
}
