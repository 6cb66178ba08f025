package org.benchwright.present.internal.printed;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.PrintedText.Sentence;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.present.internal.Questions;

/** A soak: how long, what is kept, who looks when, and what a stop or a gap leads to. */
final class SoakText {

    private static final Moment NO_MOMENT = new Moment(Instant.EPOCH, 1, Duration.ZERO);

    private final Questions questions;
    private final MoveText moves;
    private final boolean latches;

    SoakText(Plan plan, MoveText moves) {
        latches = plan.family().stopStays();
        questions = new Questions(plan);
        this.moves = moves;
    }

    List<Part> of(SoakStage soak) {
        List<Part> parts = new ArrayList<>();
        sentence(parts, PrintedWords.SOAK_LASTING.text(Durations.words(soak.lasting())));
        sentence(parts, PrintedWords.SOAK_LOOKS.text(Durations.words(soak.lookEvery()), Durations.words(soak.lookTolerance())));
        parts.add(ActionText.asked(look(soak, true), List.of(), ""));
        parts.add(ActionText.asked(look(soak, false), List.of(), ""));
        if (!soak.conditions().isEmpty()) {
            sentence(parts, PrintedWords.SOAK_CONDITIONS.text(soak.conditions().stream()
                    .map(condition -> Questions.spaced(condition.name()) + " " + condition.limits()).collect(Collectors.joining(", "))));
        }
        soak.watch().ifPresent(watch -> {
            sentence(parts, PrintedWords.SOAK_WATCH.text(Durations.words(watch.every()), watch.stopAfterBad(), watch.silentAfter()));
            watch.instead().ifPresent(what -> sentence(parts, PrintedWords.SOAK_WATCH_INSTEAD.text(what)));
        });
        if (!latches) {
            soak.gap().ifPresent(gap -> sentence(parts, PrintedWords.SOAK_GAP.text(Durations.words(gap.atMost()), moves.of(gap.instead()))));
        }
        sentence(parts, PrintedWords.SOAK_POWER_LOST.text(moves.afterPowerLost(soak.onPowerLost())));
        sentence(parts, PrintedWords.SOAK_STOPPED.text(moves.of(soak.stopped())));
        if (!soak.conditions().isEmpty()) {
            sentence(parts, PrintedWords.SOAK_STOPPED_OUTSIDE.text(moves.of(soak.stoppedOutside())));
        }
        return parts;
    }

    private Questions.Question look(SoakStage soak, boolean begins) {
        return questions.of(new Demand.Look(soak, begins, NO_MOMENT, begins ? Duration.ZERO : soak.lookEvery(), Duration.ZERO));
    }

    private static void sentence(List<Part> parts, String words) {
        parts.add(new Sentence(words, ""));
    }
}
