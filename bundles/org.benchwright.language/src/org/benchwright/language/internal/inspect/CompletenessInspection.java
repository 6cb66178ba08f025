package org.benchwright.language.internal.inspect;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Durations;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.Expectation;
import org.benchwright.model.Hazard;
import org.benchwright.model.Instrument;
import org.benchwright.model.MakeSafe;
import org.benchwright.model.Mark;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Reveals;
import org.benchwright.model.Soak;
import org.benchwright.model.Stage;
import org.benchwright.model.Step;
import org.benchwright.model.Watch;
import org.eclipse.emf.ecore.EAttribute;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** Everything that a procedure needs is there, and everything that is there is used. */
final class CompletenessInspection implements Inspection {

    /** What somebody reads at the bench or afterwards. Hazards and conclusions have remarks of their own; a display may well show nothing. */
    private static final Map<EClass, List<EAttribute>> TEXTS = Map.ofEntries(Map.entry(Literals.STEP, List.of(Literals.STEP__TEXT)),
            Map.entry(Literals.MARK, List.of(Literals.MARK__PROMPT)), Map.entry(Literals.TEXT_ENTRY, List.of(Literals.TEXT_ENTRY__PROMPT)),
            Map.entry(Literals.CONFIRMATION, List.of(Literals.CONFIRMATION__TEXT)),
            Map.entry(Literals.ATTACHMENT, List.of(Literals.ATTACHMENT__LABEL)),
            Map.entry(Literals.COMPARISON, List.of(Literals.COMPARISON__LEFT, Literals.COMPARISON__RIGHT)),
            Map.entry(Literals.RELEASE, List.of(Literals.RELEASE__TEXT)), Map.entry(Literals.GUARD, List.of(Literals.GUARD__OBSERVATION)),
            Map.entry(Literals.PROCEDURE, List.of(Literals.PROCEDURE__LABEL, Literals.PROCEDURE__PURPOSE)),
            Map.entry(Literals.PRECONDITION, List.of(Literals.PRECONDITION__LABEL, Literals.PRECONDITION__TEXT_ENTRY)),
            Map.entry(Literals.STAGE, List.of(Literals.BLOCK__LABEL)), Map.entry(Literals.SOAK, List.of(Literals.BLOCK__LABEL)),
            Map.entry(Literals.MAKE_SAFE, List.of(Literals.MAKE_SAFE__LABEL)),
            Map.entry(Literals.SHARED_STAGE, List.of(Literals.SHARED_STAGE__LABEL)),
            Map.entry(Literals.INSTRUMENT, List.of(Literals.INSTRUMENT__LABEL)), Map.entry(Literals.FAMILY, List.of(Literals.FAMILY__LABEL)),
            Map.entry(Literals.LAMP, List.of(Literals.LAMP__LABEL)), Map.entry(Literals.LAMP_GROUP, List.of(Literals.LAMP__LABEL)),
            Map.entry(Literals.DISPLAY, List.of(Literals.DISPLAY__LABEL)), Map.entry(Literals.MODE, List.of(Literals.MODE__LABEL)),
            Map.entry(Literals.KEPT_ITEM, List.of(Literals.KEPT_ITEM__LABEL)), Map.entry(Literals.LOAD_ITEM, List.of(Literals.LOAD_ITEM__LABEL)),
            Map.entry(Literals.FITTED_OPTION, List.of(Literals.FITTED_OPTION__LABEL)), Map.entry(Literals.FAULT, List.of(Literals.FAULT__LABEL)),
            Map.entry(Literals.STOP_BEHAVIOUR, List.of(Literals.STOP_BEHAVIOUR__UNTIL)));

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        missing(procedure, remarks);
        procedure.getHazards().forEach(hazard -> hazard(hazard, remarks));
        procedure.getBlocks().forEach(block -> {
            if (block instanceof Stage stage) {
                stage(stage, remarks);
            } else if (block instanceof Soak soak && soak.getWatch() != null) {
                watch(soak.getWatch(), remarks);
            }
        });
        unused(procedure, remarks);
    }

    private static void missing(Procedure procedure, Remarks remarks) {
        if (procedure.getFamily() == null) {
            remarks.on(procedure, RemarkCode.MISSING_FAMILY);
        }
        if (procedure.getRevision() == null) {
            remarks.on(procedure, RemarkCode.MISSING_REVISION);
        } else if (procedure.getRevision() < 1) {
            remarks.on(procedure, Literals.PROCEDURE__REVISION, RemarkCode.COUNT_NOT_POSITIVE);
        }
        if (procedure.getBlocks().isEmpty()) {
            remarks.on(procedure, RemarkCode.NO_STAGE);
        }
        MakeSafe makeSafe = procedure.getMakeSafe();
        if (makeSafe == null) {
            remarks.on(procedure, RemarkCode.MISSING_MAKE_SAFE);
        } else if (makeSafe.getSteps().isEmpty()) {
            remarks.on(makeSafe, RemarkCode.STAGE_WITHOUT_STEPS);
        }
    }

    private static void hazard(Hazard hazard, Remarks remarks) {
        if (isBlank(hazard.getWhat()) || isBlank(hazard.getConsequence()) || isBlank(hazard.getAvoidance())) {
            remarks.on(hazard, RemarkCode.HAZARD_INCOMPLETE, String.valueOf(hazard.getName()));
        }
    }

    private static boolean isBlank(String text) {
        return text == null || text.isBlank();
    }

    private static void stage(Stage stage, Remarks remarks) {
        if (stage.getSteps().isEmpty()) {
            remarks.on(stage, RemarkCode.STAGE_WITHOUT_STEPS);
        }
        Optional<Duration> longest = Written.duration(stage.getLongest());
        Duration together = stage.getSteps().stream().map(Written::duration).reduce(Duration.ZERO, Duration::plus);
        if (longest.isPresent() && together.compareTo(longest.get()) > 0) {
            remarks.on(stage, Literals.STAGE__LONGEST, RemarkCode.STEPS_LONGER_THAN_STAGE, Durations.words(together),
                    Durations.words(longest.get()));
        }
    }

    private static void watch(Watch watch, Remarks remarks) {
        if (watch.getBadToStop() < 1 && isWritten(watch, Literals.WATCH__BAD_TO_STOP)) {
            remarks.on(watch, Literals.WATCH__BAD_TO_STOP, RemarkCode.COUNT_NOT_POSITIVE);
        } else if (watch.getBadToStop() < 1) {
            remarks.on(watch, RemarkCode.WATCH_INCOMPLETE);
        }
        if (watch.getMissedToSilent() < 1 && isWritten(watch, Literals.WATCH__MISSED_TO_SILENT)) {
            remarks.on(watch, Literals.WATCH__MISSED_TO_SILENT, RemarkCode.COUNT_NOT_POSITIVE);
        }
    }

    /** A count that is left out reads as 0, as one does that is written so. */
    private static boolean isWritten(Watch watch, EStructuralFeature count) {
        return !NodeModelUtils.findNodesForFeature(watch, count).isEmpty();
    }

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        if (step.getStatements().stream().allMatch(Reveals.class::isInstance)) {
            remarks.on(step, RemarkCode.STEP_WITHOUT_CHECK);
        }
    }

    @Override
    public void piece(EObject piece, Remarks remarks) {
        for (EAttribute text : TEXTS.getOrDefault(piece.eClass(), List.of())) {
            if (piece.eGet(text) instanceof String written && written.isBlank()) {
                remarks.on(piece, text, RemarkCode.EMPTY_TEXT);
            }
        }
    }

    private static void unused(Procedure procedure, Remarks remarks) {
        Set<EObject> used = Used.in(procedure);
        for (Instrument instrument : procedure.getInstruments()) {
            tell(instrument, used, RemarkCode.UNUSED_INSTRUMENT, instrument.getName(), remarks);
        }
        for (Hazard hazard : procedure.getHazards()) {
            tell(hazard, used, RemarkCode.UNUSED_HAZARD, hazard.getName(), remarks);
        }
        List<Mark> marks = Procedures.statements(procedure, Mark.class);
        marks.stream().filter(mark -> used.contains(mark) || !mayBeMeant(mark))
                .forEach(mark -> tell(mark, used, RemarkCode.UNUSED_MARK, mark.getName(), remarks));
    }

    /** A deadline of its step does not say from when it counts. */
    private static boolean mayBeMeant(Mark mark) {
        return mark.eContainer() instanceof Step step && Procedures.statements(step, Expectation.class)
                .anyMatch(expectation -> expectation.getTiming() != null && expectation.getTiming().getMark() == null);
    }

    private static void tell(EObject declared, Set<EObject> used, RemarkCode code, String name, Remarks remarks) {
        if (!used.contains(declared)) {
            remarks.on(declared, code, String.valueOf(name));
        }
    }
}
