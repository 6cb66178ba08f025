package org.benchwright.language.internal.inspect;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.language.RemarkCode;
import org.benchwright.model.Amount;
import org.benchwright.model.Expectation;
import org.benchwright.model.Family;
import org.benchwright.model.Indication;
import org.benchwright.model.Mark;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Soak;
import org.benchwright.model.Stage;
import org.benchwright.model.Statement;
import org.benchwright.model.Step;
import org.benchwright.model.Timing;
import org.eclipse.emf.ecore.EReference;

/** Every expectation has a time that can be kept, and a unit can meet it together with the others. */
final class ExpectationInspection implements Inspection {

    /**
     * A mark is pressed and a lamp judged by a person: pressing and looking are each off by 0.2 s to 0.3 s (simple reaction time of
     * adults; common practice). Below one second that is more than half of the deadline.
     */
    private static final Duration SHORTEST_BY_HAND = Duration.ofSeconds(1);

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        Procedures.statements(step, Expectation.class).forEach(expectation -> expectation(expectation, step, remarks));
        Written.thing(procedure.getFamily()).ifPresent(family -> together(step, family, remarks));
    }

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        Written.thing(procedure.getFamily()).ifPresent(family -> procedure.getBlocks().stream().filter(Soak.class::isInstance).map(Soak.class::cast)
                .forEach(soak -> kept(soak, family, remarks)));
    }

    /** Expectations one behind another run together; anything else between them ends the group. */
    private static void together(Step step, Family family, Remarks remarks) {
        List<Expectation> group = new ArrayList<>();
        for (Statement statement : step.getStatements()) {
            if (statement instanceof Expectation expectation) {
                Optional<Shown> own = Shown.last(expectation.getAlternatives(), family);
                group.stream().filter(other -> own.isPresent() && atOnce(other.getTiming(), expectation.getTiming()))
                        .flatMap(other -> Shown.last(other.getAlternatives(), family).stream()).filter(other -> other.excludes(own.get())).findFirst()
                        .ifPresent(other -> remarks.on(expectation, RemarkCode.EXPECTATIONS_CONTRADICT, other.name()));
                group.add(expectation);
            } else {
                group.clear();
            }
        }
    }

    /** Whether there is an instant at which both have to show, from the same mark. */
    private static boolean atOnce(Timing one, Timing other) {
        return one != null && other != null && one.getMark() == other.getMark() && begin(one).compareTo(end(other)) <= 0
                && begin(other).compareTo(end(one)) <= 0;
    }

    private static void kept(Soak soak, Family family, Remarks remarks) {
        List<Shown> before = new ArrayList<>();
        for (Indication kept : soak.getKeeps()) {
            Shown.last(List.of(kept), family).ifPresent(own -> {
                before.stream().filter(other -> other.excludes(own)).findFirst()
                        .ifPresent(other -> remarks.on(kept, RemarkCode.EXPECTATIONS_CONTRADICT, other.name()));
                before.add(own);
            });
        }
    }

    private static void expectation(Expectation expectation, Step step, Remarks remarks) {
        Timing timing = expectation.getTiming();
        if (timing == null) {
            remarks.on(expectation, RemarkCode.EXPECTATION_WITHOUT_TIME);
            return;
        }
        if (timing.getMark() == null) {
            remarks.on(timing, RemarkCode.MARK_NOT_SAID);
        }
        Written.thing(timing.getMark()).filter(mark -> !isBefore(mark, expectation, step))
                .ifPresent(mark -> remarks.on(timing, Literals.TIMING__MARK, RemarkCode.MARK_NOT_BEFORE, mark.getName()));
        for (EReference time : List.of(Literals.TIMING__WITHIN, Literals.TIMING__FROM, Literals.TIMING__LASTING)) {
            Written.duration((Amount) timing.eGet(time)).filter(each -> each.compareTo(SHORTEST_BY_HAND) < 0)
                    .ifPresent(tooShort -> remarks.on(timing, time, RemarkCode.DEADLINE_TOO_SHORT_FOR_HAND));
        }
        longest(step).filter(longest -> longest.compareTo(end(timing)) < 0)
                .ifPresent(longest -> remarks.on(timing, RemarkCode.DEADLINE_LONGER_THAN_STAGE));
    }

    private static boolean isBefore(Mark mark, Expectation expectation, Step step) {
        int at = step.getStatements().indexOf(mark);
        return at >= 0 && at < step.getStatements().indexOf(expectation);
    }

    private static Optional<Duration> longest(Step step) {
        return step.eContainer() instanceof Stage stage ? Written.duration(stage.getLongest()) : Optional.empty();
    }

    private static Duration begin(Timing timing) {
        return Written.duration(timing.getWithin()).or(() -> Written.duration(timing.getFrom())).orElse(Duration.ZERO);
    }

    private static Duration end(Timing timing) {
        return begin(timing).plus(Written.duration(timing.getLasting()).orElse(Duration.ZERO));
    }
}
