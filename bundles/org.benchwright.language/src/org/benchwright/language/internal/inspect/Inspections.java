package org.benchwright.language.internal.inspect;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.expand.Expanded;
import org.benchwright.language.internal.expand.Expansion;
import org.benchwright.model.ProcedureFile;
import org.eclipse.emf.ecore.EObject;

import com.google.inject.Inject;

/** Everything that a text is looked through for. */
public final class Inspections {

    private final List<Inspection> all;

    /** @param risks those that are known already */
    @Inject
    public Inspections(KnownRisks risks) {
        all = List.of(new AmountInspection(), new NameInspection(), new ImportInspection(), new ListInspection(), new FamilyInspection(),
                new SharedInspection(), new IndicationInspection(), new ExpectationInspection(), new MeasurementInspection(),
                new RiskInspection(risks), new GridInspection(), new OutcomeInspection(), new SoakInspection(), new ProtectionInspection(),
                new CompletenessInspection(), new RetestInspection(), new FlowInspection());
    }

    /**
     * Looks a file through. An inspection that fails is itself a remark, and the others go on.
     *
     * @param file    what the file says
     * @param remarks where to leave what there is to say
     */
    public void inspect(ProcedureFile file, Remarks remarks) {
        List<Expanded> procedures = file.getProcedures().stream().map(Expansion::of).toList();
        List<EObject> pieces = new ArrayList<>();
        file.eAllContents().forEachRemaining(pieces::add);
        for (Inspection inspection : all) {
            try {
                inspection.file(file, remarks);
                pieces.forEach(each -> inspection.piece(each, remarks));
                file.getFamilies().forEach(family -> inspection.family(family, remarks));
                procedures.forEach(each -> inspection.procedure(each.procedure(), new WrittenRemarks(each, remarks)));
            } catch (RuntimeException mistake) {
                remarks.on(file, RemarkCode.INSPECTION_FAILED, inspection.getClass().getSimpleName(), mistake.toString());
            }
        }
    }
}
