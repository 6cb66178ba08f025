package org.benchwright.language.internal.inspect;

import java.util.List;

import org.benchwright.language.RemarkCode;
import org.benchwright.model.ProcedureFile;

/** Everything that a text is looked through for. */
public final class Inspections {

    private static final List<Inspection> ALL = List.of(new AmountInspection(), new NameInspection(), new ListInspection(), new FamilyInspection(),
            new IndicationInspection(), new ExpectationInspection(), new MeasurementInspection(), new GridInspection(),
            new OutcomeInspection(), new SoakInspection(), new ProtectionInspection(), new CompletenessInspection(),
            new RetestInspection(), new FlowInspection());

    private Inspections() {
    }

    /**
     * Looks a file through. An inspection that fails is itself a remark, and the others go on.
     *
     * @param file    what the file says
     * @param remarks where to leave what there is to say
     */
    public static void inspect(ProcedureFile file, Remarks remarks) {
        for (Inspection inspection : ALL) {
            try {
                inspection.file(file, remarks);
                file.getFamilies().forEach(family -> inspection.family(family, remarks));
                file.getProcedures().forEach(procedure -> inspection.procedure(procedure, remarks));
            } catch (RuntimeException mistake) {
                remarks.on(file, RemarkCode.INSPECTION_FAILED, inspection.getClass().getSimpleName(), mistake.toString());
            }
        }
    }
}
