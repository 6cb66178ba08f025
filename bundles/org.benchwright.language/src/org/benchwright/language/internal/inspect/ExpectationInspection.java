package org.benchwright.language.internal.inspect;

import java.time.Duration;
import java.util.Optional;

import org.benchwright.language.RemarkCode;
import org.benchwright.model.Expectation;
import org.benchwright.model.Mark;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Stage;
import org.benchwright.model.Step;
import org.benchwright.model.Timing;

/** Every expectation has a time that can be kept. */
final class ExpectationInspection implements Inspection {

    /**
     * A mark is pressed and a lamp judged by a person: pressing and looking are each off by 0.2 s to 0.3 s (simple reaction time of
     * adults; common practice). Below one second that is more than half of the deadline.
     */
    private static final Duration SHORTEST_BY_HAND = Duration.ofSeconds(1);

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        Procedures.statements(step, Expectation.class).forEach(expectation -> expectation(expectation, step, remarks));
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
        Written.duration(timing.getWithin()).filter(deadline -> deadline.compareTo(SHORTEST_BY_HAND) < 0)
                .ifPresent(deadline -> remarks.on(timing, Literals.TIMING__WITHIN, RemarkCode.DEADLINE_TOO_SHORT_FOR_HAND));
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

    private static Duration end(Timing timing) {
        Duration begin = Written.duration(timing.getWithin()).or(() -> Written.duration(timing.getFrom())).orElse(Duration.ZERO);
        return begin.plus(Written.duration(timing.getLasting()).orElse(Duration.ZERO));
    }
}
