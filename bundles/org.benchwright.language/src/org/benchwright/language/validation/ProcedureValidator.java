package org.benchwright.language.validation;

import java.util.List;

import org.benchwright.language.internal.inspect.Inspections;
import org.benchwright.language.internal.inspect.Noted;
import org.benchwright.language.internal.parse.PerStep;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.ProcedurePackage;
import org.eclipse.emf.ecore.EPackage;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.validation.Check;

import com.google.inject.Inject;

/** All remarks beyond syntax and names, for whoever asks the framework for them. */
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
            inspections.inspect(file, new PerStep<>(), CancelIndicator.NullImpl).forEach(this::accept);
        }
    }

    private void accept(Noted noted) {
        String code = noted.code().word();
        switch (noted.code().severity()) {
            case ERROR -> getMessageAcceptor().acceptError(noted.words(), noted.thing(), noted.offset(), noted.length(), code);
            case WARNING -> getMessageAcceptor().acceptWarning(noted.words(), noted.thing(), noted.offset(), noted.length(), code);
            case INFO -> getMessageAcceptor().acceptInfo(noted.words(), noted.thing(), noted.offset(), noted.length(), code);
        }
    }
}
