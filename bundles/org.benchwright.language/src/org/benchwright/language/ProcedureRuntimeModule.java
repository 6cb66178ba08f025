package org.benchwright.language;

import org.benchwright.language.internal.parse.ProcedureResource;
import org.benchwright.language.internal.parse.StepLinker;
import org.benchwright.language.internal.parse.StepwiseParser;
import org.benchwright.language.internal.text.PlainSyntaxMessages;
import org.benchwright.language.internal.text.ProcedureValueConverters;
import org.benchwright.language.internal.text.UnknownNameMessages;
import org.benchwright.language.scoping.ExportedNames;
import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.linking.ILinker;
import org.eclipse.xtext.linking.ILinkingDiagnosticMessageProvider;
import org.eclipse.xtext.parser.IParser;
import org.eclipse.xtext.parser.antlr.ISyntaxErrorMessageProvider;
import org.eclipse.xtext.resource.IDefaultResourceDescriptionStrategy;
import org.eclipse.xtext.resource.XtextResource;

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

    /** A mistake in one step costs that step only. */
    @Override
    public Class<? extends IParser> bindIParser() {
        return StepwiseParser.class;
    }

    /** Files of which a part can be replaced. */
    @Override
    public Class<? extends XtextResource> bindXtextResource() {
        return ProcedureResource.class;
    }

    /** Links a part of a text beside all of it. */
    @Override
    public Class<? extends ILinker> bindILinker() {
        return StepLinker.class;
    }

    /** What other files can refer to. */
    public Class<? extends IDefaultResourceDescriptionStrategy> bindIDefaultResourceDescriptionStrategy() {
        return ExportedNames.class;
    }
}
