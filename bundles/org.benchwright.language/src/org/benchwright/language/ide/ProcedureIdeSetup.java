package org.benchwright.language.ide;

import org.benchwright.language.ProcedureRuntimeModule;
import org.benchwright.language.ProcedureStandaloneSetup;
import org.eclipse.xtext.util.Modules2;

import com.google.inject.Guice;
import com.google.inject.Injector;

/** Makes the injector of the services for editors. */
public class ProcedureIdeSetup extends ProcedureStandaloneSetup {

    @Override
    public Injector createInjector() {
        return Guice.createInjector(Modules2.mixin(new ProcedureRuntimeModule(), new ProcedureIdeModule()));
    }
}
