package org.benchwright.language.ide;

import org.eclipse.xtext.ide.LexerIdeBindings;
import org.eclipse.xtext.ide.editor.syntaxcoloring.ISemanticHighlightingCalculator;
import org.eclipse.xtext.parser.antlr.AntlrTokenDefProvider;
import org.eclipse.xtext.parser.antlr.ITokenDefProvider;

import com.google.inject.Binder;
import com.google.inject.name.Names;

/** What the services for editors put in place of the framework's defaults. */
public class ProcedureIdeModule extends AbstractProcedureIdeModule {

    /** Names apart from keywords. */
    public Class<? extends ISemanticHighlightingCalculator> bindISemanticHighlightingCalculator() {
        return ProcedureHighlighting.class;
    }

    /** Token definitions for colouring, which nobody else binds outside a workbench. */
    public void configureHighlightingTokenDefProvider(Binder binder) {
        binder.bind(ITokenDefProvider.class).annotatedWith(Names.named(LexerIdeBindings.HIGHLIGHTING))
                .to(AntlrTokenDefProvider.class);
    }
}
