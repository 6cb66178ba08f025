package org.benchwright.present.internal.printed;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.Durations;
import org.benchwright.core.PrintedText;
import org.benchwright.core.PrintedText.Heading;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.PrintedText.Sentence;
import org.benchwright.core.PrintedText.Title;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.ProtectedItem;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.present.internal.Questions;

/** A whole procedure, from its title to what its family shows. */
public final class PlanText {

    private final Plan plan;
    private final Questions questions;
    private final Numbering numbering;
    private final HazardText hazards;
    private final MoveText moves;
    private final StepText steps;
    private final List<Part> parts = new ArrayList<>();

    private PlanText(Plan plan) {
        this.plan = plan;
        questions = new Questions(plan);
        numbering = new Numbering(plan);
        hazards = new HazardText(plan);
        moves = new MoveText(numbering);
        steps = new StepText(plan, numbering, hazards);
    }

    /**
     * The text: what was said once further up is only named again below.
     *
     * @param plan the compiled procedure
     */
    public static PrintedText of(Plan plan) {
        return new PlanText(plan).text();
    }

    private PrintedText text() {
        head();
        dangers();
        instruments();
        preconditions();
        plan.stages().forEach(this::stage);
        heading(plan.makeSafe());
        sentence(PrintedWords.MAKE_SAFE_HOW.text());
        plan.makeSafe().steps().forEach(step -> parts.addAll(steps.of(plan.makeSafe(), step, true)));
        parts.add(new Heading(1, PrintedWords.ENDS.text(), ""));
        sentence(PrintedWords.ENDS_HOW.text(moves.of(plan.end())));
        parts.addAll(new FamilyText(plan.family()).parts());
        return new PrintedText(plan.title(), PrintedWords.HEADER.text(plan.name(), plan.title(), String.valueOf(plan.revision())), parts);
    }

    private void head() {
        parts.add(new Title(plan.title(), PrintedWords.BELOW.text(plan.name(), String.valueOf(plan.revision()), plan.family().title()), ""));
        if (!plan.purpose().isBlank()) {
            sentence(plan.purpose());
        }
        plan.retestOf().ifPresent(of -> sentence(PrintedWords.RETEST.text(of)));
        plan.provesBenchFor().ifPresent(time -> sentence(PrintedWords.PROVES_BENCH.text(Durations.words(time))));
        plan.needsBenchProvedWithin().ifPresent(time -> sentence(PrintedWords.NEEDS_BENCH.text(Durations.words(time))));
        plan.claim().ifPresent(claim -> sentence(PrintedWords.CLAIM.text(Durations.words(claim.meanInterval()), percent(claim.probability()))));
        if (!plan.protectedItems().isEmpty()) {
            sentence(PrintedWords.PROTECTED.text(plan.protectedItems().stream().map(ProtectedItem::title).collect(Collectors.joining(", "))));
        }
    }

    private static String percent(BigDecimal share) {
        return share.movePointRight(2).stripTrailingZeros().toPlainString();
    }

    private void dangers() {
        if (plan.hazards().isEmpty()) {
            return;
        }
        parts.add(new Heading(1, PrintedWords.HAZARDS.text(), ""));
        sentence(PrintedWords.DEFERS.text());
        sentence(PrintedWords.HAZARDS_HOW.text());
        plan.hazards().forEach(hazard -> parts.add(HazardText.reminder(hazard, "hazard." + hazard.name())));
    }

    private void instruments() {
        if (plan.instruments().isEmpty()) {
            return;
        }
        parts.add(new Heading(1, PrintedWords.INSTRUMENTS.text(), ""));
        sentence(PrintedWords.INSTRUMENTS_HOW.text());
        plan.instruments().forEach(spec -> parts.add(ActionText.asked(questions.instrument(spec),
                Stream.concat(means(spec).stream(), pastDue(spec)).toList(), "instrument." + spec.name())));
    }

    private static Stream<String> pastDue(InstrumentSpec spec) {
        return spec.refusedPastDue() ? Stream.of(PrintedWords.INSTRUMENT_PAST_DUE.text()) : Stream.empty();
    }

    private static Optional<String> means(InstrumentSpec spec) {
        Optional<String> range = spec.range().map(Object::toString);
        return spec.means().map(means -> range.map(upTo -> PrintedWords.INSTRUMENT_MEANS_RANGE.text(means, upTo))
                .orElseGet(() -> PrintedWords.INSTRUMENT_MEANS.text(means))).or(() -> range.map(PrintedWords.INSTRUMENT_RANGE::text));
    }

    private void preconditions() {
        if (plan.preconditions().isEmpty()) {
            return;
        }
        parts.add(new Heading(1, PrintedWords.BEFORE.text(), ""));
        sentence(PrintedWords.BEFORE_HOW.text());
        for (Precondition precondition : plan.preconditions()) {
            List<String> notes = precondition.valid().map(Durations::words).map(time -> List.of(PrintedWords.VALID.text(time))).orElse(List.of());
            parts.add(ActionText.asked(questions.precondition(precondition), notes, "precondition." + precondition.name()));
        }
        sentence(PrintedWords.UNMET.text(moves.of(plan.preconditionUnmet())));
    }

    private void stage(Stage stage) {
        heading(stage);
        if (stage instanceof SoakStage soak) {
            parts.addAll(hazards.before(soak.hazards()));
            parts.addAll(new SoakText(plan, moves).of(soak));
        } else if (stage instanceof WorkStage work) {
            if (work.onDemand()) {
                sentence(PrintedWords.ON_DEMAND.text());
            }
            work.atMost().ifPresent(time -> sentence(PrintedWords.AT_MOST.text(Durations.words(time))));
            work.steps().forEach(step -> parts.addAll(steps.of(work, step, false)));
        } else {
            throw new IllegalStateException("no words for " + stage);
        }
    }

    private void heading(Stage stage) {
        parts.add(new Heading(1, PrintedWords.STAGE.text(numbering.of(stage), stage.title()), "stage." + stage.name()));
    }

    private void sentence(String words) {
        parts.add(new Sentence(words, ""));
    }
}
