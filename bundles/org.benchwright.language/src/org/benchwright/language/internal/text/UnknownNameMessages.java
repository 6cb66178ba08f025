package org.benchwright.language.internal.text;

import java.util.Map;
import java.util.Set;

import org.benchwright.language.RemarkCode;
import org.benchwright.model.Argument;
import org.benchwright.model.CarryOut;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Retest;
import org.benchwright.model.SharedStage;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.diagnostics.DiagnosticMessage;
import org.eclipse.xtext.diagnostics.Severity;
import org.eclipse.xtext.linking.impl.LinkingDiagnosticMessageProvider;

/** A code and plain words of its own for each kind of name that leads nowhere. */
public class UnknownNameMessages extends LinkingDiagnosticMessageProvider {

    private static final Map<EClass, RemarkCode> CODES = Map.ofEntries(
            Map.entry(Literals.FAMILY, RemarkCode.UNKNOWN_FAMILY), Map.entry(Literals.PROCEDURE, RemarkCode.UNKNOWN_PROCEDURE),
            Map.entry(Literals.LAMP, RemarkCode.UNKNOWN_LAMP), Map.entry(Literals.DISPLAY, RemarkCode.UNKNOWN_DISPLAY),
            Map.entry(Literals.MODE, RemarkCode.UNKNOWN_MODE), Map.entry(Literals.KEPT_ITEM, RemarkCode.UNKNOWN_PROTECTED_ITEM),
            Map.entry(Literals.FAULT, RemarkCode.UNKNOWN_FAULT),
            Map.entry(Literals.HAZARD, RemarkCode.UNKNOWN_HAZARD), Map.entry(Literals.INSTRUMENT, RemarkCode.UNKNOWN_INSTRUMENT),
            Map.entry(Literals.MARK, RemarkCode.UNKNOWN_MARK), Map.entry(Literals.DESTINATION, RemarkCode.UNKNOWN_STEP_OR_STAGE),
            Map.entry(Literals.BLOCK, RemarkCode.UNKNOWN_STEP_OR_STAGE), Map.entry(Literals.VALUE, RemarkCode.UNKNOWN_VALUE),
            Map.entry(Literals.SHARED_STAGE, RemarkCode.UNKNOWN_SHARED_STAGE), Map.entry(Literals.PARAMETER, RemarkCode.UNKNOWN_PARAMETER),
            Map.entry(Literals.FITTED_OPTION, RemarkCode.UNKNOWN_OPTION));

    /** Where the family itself is unknown or not said, nothing of it can be known: one remark is enough. */
    private static final Set<EClass> OF_FAMILY = Set.of(Literals.LAMP, Literals.DISPLAY, Literals.MODE, Literals.KEPT_ITEM,
            Literals.FAULT, Literals.FITTED_OPTION);

    @Override
    public DiagnosticMessage getUnresolvedProxyMessage(ILinkingDiagnosticContext context) {
        EClass kind = context.getReference().getEReferenceType();
        if (kind == Literals.PARAMETER && isOfUnknown(context.getContext())) {
            return null;
        }
        if (kind == Literals.PARAMETER && !(context.getContext() instanceof Argument)
                && Procedures.around(context.getContext(), SharedStage.class).isEmpty()) {
            // Only a shared stage has parameters; elsewhere a number is missing.
            String words = SyntaxText.DOES_NOT_FIT_EXPECTED.text(context.getLinkText(), SyntaxText.A_NUMBER.text());
            return new DiagnosticMessage(words, Severity.ERROR, RemarkCode.SYNTAX.word(), context.getLinkText());
        }
        if (OF_FAMILY.contains(kind) && !hasFamily(context.getContext()) || kind == Literals.BLOCK && !hasProcedure(context.getContext())) {
            return null;
        }
        RemarkCode code = CODES.getOrDefault(kind, RemarkCode.UNKNOWN_NAME);
        return new DiagnosticMessage(code.text(context.getLinkText()), Severity.ERROR, code.word(), context.getLinkText());
    }

    private static boolean hasFamily(EObject inside) {
        return Procedures.around(inside, Family.class).or(() -> Procedures.around(inside, SharedStage.class).map(SharedStage::getFamily))
                .or(() -> Procedures.around(inside, Procedure.class).map(Procedure::getFamily))
                .filter(family -> !family.eIsProxy() && Families.lineage(family).stream().noneMatch(UnknownNameMessages::isCutOff))
                .isPresent();
    }

    /** The shared stage itself is unknown; one remark is enough. */
    private static boolean isOfUnknown(EObject inside) {
        return inside.eContainer() instanceof CarryOut carryOut && (carryOut.getShared() == null || carryOut.getShared().eIsProxy());
    }

    private static boolean isCutOff(Family family) {
        return family.getBase() != null && family.getBase().eIsProxy();
    }

    private static boolean hasProcedure(EObject inside) {
        return inside instanceof Retest retest && retest.getProcedure() != null && !retest.getProcedure().eIsProxy();
    }
}
