package org.benchwright.language.validation;

import java.util.List;

import org.benchwright.language.internal.inspect.Inspections;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.ProcedurePackage;
import org.eclipse.emf.ecore.EPackage;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.validation.Check;

import com.google.inject.Inject;

/** All remarks beyond syntax and names. */
public class ProcedureValidator extends AbstractProcedureValidator {

    @Inject
    private Inspections inspections;

    @Override
    protected List<EPackage> getEPackages() {
        return List.of(ProcedurePackage.eINSTANCE);
    }

    /** Looks a file through, unless parts of it could not be read: what is missing then would only be the parser's doing. */
    @Check
    public void inspect(ProcedureFile file) {
        boolean readable = file.eResource() instanceof XtextResource resource && resource.getParseResult() != null
                && !resource.getParseResult().hasSyntaxErrors();
        if (readable) {
            inspections.inspect(file, new PlacedRemarks(getMessageAcceptor()));
        }
    }
}
