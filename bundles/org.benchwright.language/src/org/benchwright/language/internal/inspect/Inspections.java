package org.benchwright.language.internal.inspect;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.expand.Expanded;
import org.benchwright.language.internal.expand.Expansion;
import org.benchwright.language.internal.parse.PerStep;
import org.benchwright.model.Amount;
import org.benchwright.model.Parameter;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.Procedures;
import org.benchwright.model.SharedStage;
import org.benchwright.model.Step;
import org.eclipse.emf.common.util.TreeIterator;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.service.OperationCanceledManager;
import org.eclipse.xtext.util.CancelIndicator;

import com.google.inject.Inject;

/** Everything that a text is looked through for. */
public final class Inspections {

    private final List<Inspection> all;
    private final OperationCanceledManager cancelling = new OperationCanceledManager();

    /** @param risks those that are known already */
    @Inject
    public Inspections(KnownRisks risks) {
        all = List.of(new AmountInspection(), new NameInspection(), new ImportInspection(), new ListInspection(), new FamilyInspection(),
                new SharedInspection(), new IndicationInspection(), new ExpectationInspection(), new MeasurementInspection(),
                new RiskInspection(risks), new GridInspection(), new OutcomeInspection(), new SoakInspection(), new WatchInspection(),
                new ProtectionInspection(),
                new CompletenessInspection(), new RetestInspection(), new FlowInspection());
    }

    /**
     * Looks a file through. An inspection that fails is itself a remark, and the others go on.
     *
     * @param file      what the file says
     * @param known     what was found in its steps before; takes up what is found in the others
     * @param cancelled stops the work with the framework's own exception
     * @return what there is to say, in no particular order
     */
    public List<Noted> inspect(ProcedureFile file, PerStep<List<Noted>> known, CancelIndicator cancelled) {
        List<Noted> found = new ArrayList<>(noted(file, remarks -> around(file, remarks)));
        for (Procedure procedure : file.getProcedures()) {
            cancelling.checkCanceled(cancelled);
            Expanded expanded = Expansion.of(procedure);
            found.addAll(noted(file, remarks -> each(file, remarks,
                    each -> each.procedure(expanded.procedure(), new WrittenRemarks(expanded, remarks)))));
            for (Step step : Procedures.allSteps(expanded.procedure())) {
                cancelling.checkCanceled(cancelled);
                found.addAll(step(file, step, expanded, known));
            }
        }
        for (SharedStage shared : file.getSharedStages()) {
            shared.getSteps().forEach(step -> found.addAll(known.of(step, own -> noted(file, remarks -> pieces(file, own, remarks)))));
        }
        return once(found);
    }

    /**
     * A mistake in a shared stage is one, wherever and however often that is carried out; what the stage itself was told about it comes first,
     * and stays.
     */
    private static List<Noted> once(List<Noted> found) {
        Set<Mistake> told = new HashSet<>();
        return found.stream().filter(each -> EcoreUtil2.getContainerOfType(each.meant(), SharedStage.class) == null
                || told.add(new Mistake(each.meant().eResource(), each.wrong().map(INode::getOffset).orElse(0), each.code()))).toList();
    }

    private record Mistake(Resource file, int offset, RemarkCode code) {
    }

    private static List<Noted> noted(ProcedureFile file, Consumer<Remarks> look) {
        NotedRemarks remarks = new NotedRemarks();
        look.accept(remarks);
        return remarks.all();
    }

    private List<Noted> step(ProcedureFile file, Step step, Expanded expanded, PerStep<List<Noted>> known) {
        Consumer<Remarks> look = remarks -> each(file, remarks, each -> each.step(step, expanded.procedure(), new WrittenRemarks(expanded, remarks)));
        if (expanded.places().containsKey(step)) {
            // A shared stage's step: what it means here depends on what is put into it here.
            return noted(file, look.andThen(remarks -> filledIn(file, step, expanded, new WrittenRemarks(expanded, remarks))));
        }
        Step own = (Step) expanded.origins().getOrDefault(step, step);
        return known.of(own, any -> noted(file, look.andThen(remarks -> pieces(file, own, remarks))));
    }

    /** Everything but what is in steps, and what is said of procedures. */
    private void around(ProcedureFile file, Remarks remarks) {
        List<EObject> pieces = new ArrayList<>();
        for (TreeIterator<EObject> contents = file.eAllContents(); contents.hasNext();) {
            EObject piece = contents.next();
            if (piece instanceof Step) {
                contents.prune();
            } else {
                pieces.add(piece);
            }
        }
        each(file, remarks, each -> {
            each.file(file, remarks);
            pieces.forEach(piece -> each.piece(piece, remarks));
            file.getFamilies().forEach(family -> each.family(family, remarks));
        });
    }

    private void pieces(ProcedureFile file, Step step, Remarks remarks) {
        List<EObject> pieces = new ArrayList<>(List.of(step));
        step.eAllContents().forEachRemaining(pieces::add);
        each(file, remarks, each -> pieces.forEach(piece -> each.piece(piece, remarks)));
    }

    /** What makes sense or none by the values that were put into it: a rate, two limits. Amounts are judged where they are put in. */
    private void filledIn(ProcedureFile file, Step step, Expanded expanded, Remarks remarks) {
        List<EObject> pieces = new ArrayList<>();
        step.eAllContents().forEachRemaining(pieces::add);
        pieces.removeIf(piece -> piece instanceof Amount || !takesParameters(expanded.origin(piece)));
        each(file, remarks, each -> pieces.forEach(piece -> each.piece(piece, remarks)));
    }

    private static boolean takesParameters(EObject origin) {
        return Stream.concat(Stream.of(origin), origin.eContents().stream()).flatMap(each -> each.eCrossReferences().stream())
                .anyMatch(Parameter.class::isInstance);
    }

    private void each(ProcedureFile file, Remarks remarks, Consumer<Inspection> look) {
        for (Inspection inspection : all) {
            try {
                look.accept(inspection);
            } catch (RuntimeException mistake) {
                remarks.on(file, RemarkCode.INSPECTION_FAILED, inspection.getClass().getSimpleName(), mistake.toString());
            }
        }
    }
}
