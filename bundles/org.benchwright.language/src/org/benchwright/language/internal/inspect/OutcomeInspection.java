package org.benchwright.language.internal.inspect;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.core.Verdict;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.BeginAgain;
import org.benchwright.model.Branch;
import org.benchwright.model.Check;
import org.benchwright.model.Conclude;
import org.benchwright.model.Gap;
import org.benchwright.model.GoTo;
import org.benchwright.model.Grid;
import org.benchwright.model.MakeSafe;
import org.benchwright.model.Outcome;
import org.benchwright.model.Precondition;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Release;
import org.benchwright.model.Soak;
import org.benchwright.model.Statement;
import org.benchwright.model.Step;
import org.eclipse.emf.common.util.TreeIterator;
import org.eclipse.emf.ecore.EObject;

/** Nothing goes on in silence: everything that can fail says what follows. */
final class OutcomeInspection implements Inspection {

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        procedure.getPreconditions().stream().findFirst().ifPresent(first -> unmet(first, Optional.ofNullable(procedure.getOtherwise()), remarks));
        procedure.getBlocks().stream().filter(Soak.class::isInstance).map(Soak.class::cast).forEach(soak -> soak(soak, remarks));
        for (TreeIterator<EObject> all = procedure.eAllContents(); all.hasNext();) {
            EObject each = all.next();
            written(each, remarks);
            if (each instanceof Step) {
                all.prune();
            }
        }
    }

    /** Before the first stage there is nothing to go on with, and nowhere to go. */
    private static void unmet(Precondition precondition, Optional<Outcome> otherwise, Remarks remarks) {
        if (otherwise.isEmpty()) {
            remarks.on(precondition, RemarkCode.NO_OUTCOME);
        } else if (!(otherwise.get() instanceof Conclude)) {
            remarks.on(otherwise.get(), RemarkCode.PRECONDITION_NOT_CONCLUDED, String.valueOf(precondition.getName()));
        }
    }

    private static void written(EObject each, Remarks remarks) {
        if (each instanceof GoTo goTo && goTo.getTimes() != null && goTo.getTimes() < 1) {
            remarks.on(goTo, Literals.GO_TO__TIMES, RemarkCode.COUNT_NOT_POSITIVE);
        } else if (each instanceof BeginAgain again && again.getTimes() < 1) {
            remarks.on(again, Literals.BEGIN_AGAIN__TIMES, RemarkCode.COUNT_NOT_POSITIVE);
        } else if (each instanceof Conclude end) {
            reason(end, remarks);
            accepted(end, remarks);
        }
    }

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        step.eAllContents().forEachRemaining(each -> written(each, remarks));
        if (step.eContainer() instanceof MakeSafe makeSafe) {
            safe(step, makeSafe, remarks);
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
    private static void safe(Step step, MakeSafe makeSafe, Remarks remarks) {
        Procedures.statements(step, Check.class)
                .filter(check -> Procedures.outcome(check).filter(outcome -> isLeftWithoutRelease(makeSafe, outcome)).isPresent())
                .forEach(check -> remarks.on(check, RemarkCode.MAKE_SAFE_NEEDS_RELEASE));
        Stream.concat(Procedures.isConfirmedAsDone(step) ? Stream.of(step) : Stream.empty(),
                step.getStatements().stream().filter(Procedures::canBeRefused))
                .filter(statement -> Procedures.enclosingOtherwise(statement).filter(outcome -> leads(makeSafe, outcome)).isPresent())
                .forEach(statement -> remarks.on(statement, RemarkCode.MAKE_SAFE_NEEDS_RELEASE));
        step.getStatements().stream().filter(Conclude.class::isInstance)
                .forEach(end -> remarks.on(end, RemarkCode.CONCLUDED_IN_MAKE_SAFE));
    }

    private static boolean isLeftWithoutRelease(MakeSafe makeSafe, Outcome outcome) {
        return outcome instanceof Conclude || leads(makeSafe, outcome)
                || outcome instanceof GoTo goTo && goTo.getExhausted() != null && isLeftWithoutRelease(makeSafe, goTo.getExhausted());
    }

    /** Whether an outcome that holds for all of the procedure leads out of make safe. */
    private static boolean leads(MakeSafe makeSafe, Outcome outcome) {
        return outcome instanceof GoTo goTo && Written.thing(goTo.getTarget()).filter(target -> target.eContainer() != makeSafe).isPresent();
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
        Set<Outcome> outcomes = new LinkedHashSet<>();
        soak.getStops().forEach(stop -> outcomes(Optional.ofNullable(stop.getOutcome()), otherwise, outcomes, remarks));
        if (gap != null) {
            outcomes(Optional.ofNullable(gap.getOutcome()), otherwise, outcomes, remarks);
        }
        if (!stopHandled) {
            outcomes(Optional.empty(), otherwise, outcomes, remarks);
        }
        outcomes.stream().filter(Release.class::isInstance).forEach(release -> remarks.on(release, RemarkCode.SOAK_RELEASED));
    }

    /** All that can follow, in the end too, when something has been done as often as it may. */
    private static void outcomes(Optional<Outcome> written, Optional<Outcome> otherwise, Set<Outcome> outcomes, Remarks remarks) {
        Optional<Outcome> outcome = written.or(() -> otherwise);
        if (outcome.isEmpty() || !outcomes.add(outcome.get())) {
            return;
        }
        if (outcome.get() instanceof BeginAgain again) {
            if (again.getExhausted() == null && otherwise.isEmpty()) {
                remarks.on(again, RemarkCode.NO_OUTCOME);
            }
            outcomes(Optional.ofNullable(again.getExhausted()), otherwise, outcomes, remarks);
        } else if (outcome.get() instanceof GoTo goTo && goTo.getExhausted() != null) {
            outcomes(Optional.of(goTo.getExhausted()), otherwise, outcomes, remarks);
        }
    }

    /** What follows where a check fails; a way that somebody chose, or that was gone often enough, fails nothing. */
    private static void accepted(Conclude end, Remarks remarks) {
        EObject outcome = end;
        while (outcome.eContainer() instanceof Outcome) {
            outcome = outcome.eContainer();
        }
        boolean chosen = outcome.eContainer() instanceof Branch || outcome.eContainmentFeature() == Literals.STEP__STATEMENTS
                || outcome.eContainmentFeature() == Literals.PROCEDURE__CONCLUSION;
        if (end.getVerdict() == Verdict.ACCEPTED && !chosen) {
            remarks.on(end, RemarkCode.FAILURE_ACCEPTED);
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
