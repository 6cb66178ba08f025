package org.benchwright.language;

import org.benchwright.model.ProcedurePackage;
import org.eclipse.emf.ecore.EPackage;

import com.google.inject.Injector;

/** Registers the language where no workbench does it. */
public class ProcedureStandaloneSetup extends ProcedureStandaloneSetupGenerated {

    @Override
    public Injector createInjectorAndDoEMFRegistration() {
        // The grammar and the validator look the model's package up while the injector is made.
        EPackage.Registry.INSTANCE.put(ProcedurePackage.eNS_URI, ProcedurePackage.eINSTANCE);
        return super.createInjectorAndDoEMFRegistration();
    }
}
