package org.benchwright.language.internal.text;

import java.util.Map;

import org.benchwright.language.RemarkCode;
import org.benchwright.model.ProcedurePackage.Literals;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.xtext.diagnostics.DiagnosticMessage;
import org.eclipse.xtext.diagnostics.Severity;
import org.eclipse.xtext.linking.impl.LinkingDiagnosticMessageProvider;

/** A code and plain words of its own for each kind of name that leads nowhere. */
public class UnknownNameMessages extends LinkingDiagnosticMessageProvider {

    private static final Map<EClass, RemarkCode> CODES = Map.ofEntries(
            Map.entry(Literals.FAMILY, RemarkCode.UNKNOWN_FAMILY), Map.entry(Literals.PROCEDURE, RemarkCode.UNKNOWN_PROCEDURE),
            Map.entry(Literals.LAMP, RemarkCode.UNKNOWN_LAMP), Map.entry(Literals.DISPLAY, RemarkCode.UNKNOWN_DISPLAY),
            Map.entry(Literals.MODE, RemarkCode.UNKNOWN_MODE), Map.entry(Literals.KEPT_ITEM, RemarkCode.UNKNOWN_PROTECTED_ITEM),
            Map.entry(Literals.LOAD_ITEM, RemarkCode.UNKNOWN_LOAD_ITEM), Map.entry(Literals.FAULT, RemarkCode.UNKNOWN_FAULT),
            Map.entry(Literals.HAZARD, RemarkCode.UNKNOWN_HAZARD), Map.entry(Literals.INSTRUMENT, RemarkCode.UNKNOWN_INSTRUMENT),
            Map.entry(Literals.MARK, RemarkCode.UNKNOWN_MARK), Map.entry(Literals.DESTINATION, RemarkCode.UNKNOWN_STEP_OR_STAGE),
            Map.entry(Literals.BLOCK, RemarkCode.UNKNOWN_STEP_OR_STAGE), Map.entry(Literals.VALUE, RemarkCode.UNKNOWN_VALUE));

    @Override
    public DiagnosticMessage getUnresolvedProxyMessage(ILinkingDiagnosticContext context) {
        RemarkCode code = CODES.getOrDefault(context.getReference().getEReferenceType(), RemarkCode.UNKNOWN_NAME);
        return new DiagnosticMessage(code.text(context.getLinkText()), Severity.ERROR, code.word(), context.getLinkText());
    }

    @Override
    public DiagnosticMessage getViolatedUniqueConstraintMessage(ILinkingDiagnosticContext context) {
        String name = context.getLinkText();
        return new DiagnosticMessage(RemarkCode.LISTED_TWICE.text(name), Severity.ERROR, RemarkCode.LISTED_TWICE.word(), name);
    }
}
