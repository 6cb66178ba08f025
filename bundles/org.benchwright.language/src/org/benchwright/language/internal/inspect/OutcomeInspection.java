package org.benchwright.language.internal.inspect;

import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.BeginAgain;
import org.benchwright.model.Check;
import org.benchwright.model.Conclude;
import org.benchwright.model.Gap;
import org.benchwright.model.GoTo;
import org.benchwright.model.Grid;
import org.benchwright.model.MakeSafe;
import org.benchwright.model.Outcome;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Soak;
import org.benchwright.model.Statement;
import org.benchwright.model.Step;
import org.benchwright.model.WhenStopped;
import org.eclipse.emf.common.util.TreeIterator;
import org.eclipse.emf.ecore.EObject;

/** Nothing goes on in silence: everything that can fail says what follows. */
final class OutcomeInspection implements Inspection {

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        if (!procedure.getPreconditions().isEmpty() && procedure.getOtherwise() == null) {
            remarks.on(procedure.getPreconditions().get(0), RemarkCode.NO_OUTCOME);
        }
        procedure.getBlocks().stream().filter(Soak.class::isInstance).map(Soak.class::cast).forEach(soak -> soak(soak, remarks));
        for (TreeIterator<EObject> all = procedure.eAllContents(); all.hasNext();) {
            EObject each = all.next();
            written(each, remarks);
            if (each instanceof Step) {
                all.prune();
            }
        }
    }

    private static void written(EObject each, Remarks remarks) {
        if (each instanceof GoTo goTo && goTo.getTimes() != null && goTo.getTimes() < 1) {
            remarks.on(goTo, Literals.GO_TO__TIMES, RemarkCode.COUNT_NOT_POSITIVE);
        } else if (each instanceof BeginAgain again && again.getTimes() < 1) {
            remarks.on(again, Literals.BEGIN_AGAIN__TIMES, RemarkCode.COUNT_NOT_POSITIVE);
        } else if (each instanceof Conclude end) {
            reason(end, remarks);
        }
    }

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        step.eAllContents().forEachRemaining(each -> written(each, remarks));
        if (step.eContainer() instanceof MakeSafe) {
            safe(step, remarks);
        }
        for (Statement statement : step.getStatements()) {
            if (statement instanceof Grid grid) {
                Optional.ofNullable(grid.getJudgement()).ifPresent(judgement -> outcome(judgement, remarks));
            } else if (statement instanceof Check check) {
                outcome(check, remarks);
            } else if (Procedures.canBeRefused(statement) && Procedures.enclosingOtherwise(statement).isEmpty()) {
                remarks.on(statement, RemarkCode.NO_OUTCOME);
            }
        }
    }

    /** Nobody walks away from a unit that could not be made safe: only a person's release ends that. */
    private static void safe(Step step, Remarks remarks) {
        Procedures.statements(step, Check.class)
                .filter(check -> Procedures.outcome(check).filter(OutcomeInspection::endsWithoutRelease).isPresent())
                .forEach(check -> remarks.on(check, RemarkCode.MAKE_SAFE_NEEDS_RELEASE));
    }

    private static boolean endsWithoutRelease(Outcome outcome) {
        return outcome instanceof Conclude
                || outcome instanceof GoTo goTo && goTo.getExhausted() != null && endsWithoutRelease(goTo.getExhausted());
    }

    private static void outcome(Check check, Remarks remarks) {
        if (Procedures.outcome(check).isEmpty()) {
            remarks.on(check, RemarkCode.NO_OUTCOME);
        }
    }

    private static void soak(Soak soak, Remarks remarks) {
        Optional<Outcome> otherwise = Procedures.enclosingOtherwise(soak);
        boolean stopHandled = soak.getStops().stream().anyMatch(stop -> !stop.isOutsideConditions());
        if (!stopHandled && otherwise.isEmpty()) {
            remarks.on(soak, RemarkCode.NO_OUTCOME);
        }
        Gap gap = soak.getGap();
        if (gap != null && gap.getOutcome() == null && otherwise.isEmpty()) {
            remarks.on(gap, RemarkCode.NO_OUTCOME);
        }
        for (WhenStopped stop : soak.getStops()) {
            exhausted(stop.getOutcome(), otherwise, remarks);
        }
        if (gap != null) {
            exhausted(gap.getOutcome(), otherwise, remarks);
        }
    }

    private static void exhausted(Outcome outcome, Optional<Outcome> otherwise, Remarks remarks) {
        if (outcome instanceof BeginAgain again && again.getExhausted() == null && otherwise.isEmpty()) {
            remarks.on(again, RemarkCode.NO_OUTCOME);
        }
    }

    /** A unit that goes back or stays here wants to know why. */
    private static void reason(Conclude end, Remarks remarks) {
        boolean wanted = end.getVerdict() == Verdict.REJECTED || end.getVerdict() == Verdict.UNDECIDED;
        if (wanted && (end.getReason() == null || end.getReason().isBlank())) {
            remarks.on(end, RemarkCode.CONCLUSION_WITHOUT_REASON);
        }
    }
}
