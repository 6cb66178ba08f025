package org.benchwright.language;

import org.benchwright.language.internal.text.PlainSyntaxMessages;
import org.benchwright.language.internal.text.ProcedureValueConverters;
import org.benchwright.language.internal.text.UnknownNameMessages;
import org.benchwright.language.scoping.ExportedNames;
import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.linking.ILinkingDiagnosticMessageProvider;
import org.eclipse.xtext.parser.antlr.ISyntaxErrorMessageProvider;
import org.eclipse.xtext.resource.IDefaultResourceDescriptionStrategy;

/** What the language puts in place of the framework's defaults. */
public class ProcedureRuntimeModule extends AbstractProcedureRuntimeModule {

    @Override
    public Class<? extends IValueConverterService> bindIValueConverterService() {
        return ProcedureValueConverters.class;
    }

    /** Plain words for what does not fit. */
    public Class<? extends ISyntaxErrorMessageProvider> bindISyntaxErrorMessageProvider() {
        return PlainSyntaxMessages.class;
    }

    /** Plain words and a code of its own for each kind of name that leads nowhere. */
    public Class<? extends ILinkingDiagnosticMessageProvider.Extended> bindILinkingDiagnosticMessageProvider() {
        return UnknownNameMessages.class;
    }

    /** What other files can refer to. */
    public Class<? extends IDefaultResourceDescriptionStrategy> bindIDefaultResourceDescriptionStrategy() {
        return ExportedNames.class;
    }
}
