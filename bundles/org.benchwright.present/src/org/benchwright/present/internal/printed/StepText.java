package org.benchwright.present.internal.printed;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.core.Durations;
import org.benchwright.core.PrintedText.Heading;
import org.benchwright.core.PrintedText.Instruction;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.PrintedText.Sentence;
import org.benchwright.engine.Place;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.present.internal.Capitals;
import org.benchwright.present.internal.Questions;

/** One step: its hazards, what to do, what is asked, and where it leads if something is not so. */
final class StepText {

    private final Plan plan;
    private final Numbering numbering;
    private final HazardText hazards;
    private final MoveText moves;

    StepText(Plan plan, Numbering numbering, HazardText hazards) {
        this.plan = plan;
        this.numbering = numbering;
        this.hazards = hazards;
        moves = new MoveText(numbering);
    }

    List<Part> of(WorkStage stage, Step step, boolean makingSafe) {
        List<Part> parts = new ArrayList<>();
        parts.add(new Heading(2, PrintedWords.STEP.text(numbering.of(step), Questions.spaced(step.name())), "step." + step.name()));
        parts.addAll(hazards.before(Stream.concat(stage.hazards().stream(), step.hazards().stream()).distinct().toList()));
        parts.add(new Instruction(Capitals.of(step.instruction()), ""));
        step.takes().map(Durations::words).ifPresent(time -> parts.add(new Sentence(PrintedWords.TAKES.text(time), "")));
        Optional<Move> common = common(step);
        actions(new ActionText(plan, new Place(stage, step, makingSafe), moves, common), step.actions(), parts);
        common.ifPresent(move -> parts.add(new Sentence(PrintedWords.OTHERWISE_ANY.text(moves.of(move)), "")));
        if (!step.reveals().isEmpty()) {
            parts.add(new Sentence(PrintedWords.REVEALS.text(String.join(", ", step.reveals())), ""));
        }
        return parts;
    }

    private static void actions(ActionText text, List<Action> actions, List<Part> parts) {
        for (int i = 0; i < actions.size(); i++) {
            Optional<Action> next = i + 1 < actions.size() ? Optional.of(actions.get(i + 1)) : Optional.empty();
            if (actions.get(i) instanceof Action.Expect && (i == 0 || !(actions.get(i - 1) instanceof Action.Expect))) {
                boolean alone = next.filter(Action.Expect.class::isInstance).isEmpty();
                parts.add(new Sentence((alone ? PrintedWords.RUN_ALONE : PrintedWords.RUN_TOGETHER).text(), ""));
            }
            parts.addAll(text.of(actions.get(i), next.filter(Action.Mark.class::isInstance).isPresent()));
        }
    }

    /** Where each check leads that does not conform, if there are several and all lead to the same. */
    private static Optional<Move> common(Step step) {
        List<Move> all = step.actions().stream().flatMap(action -> ActionText.failed(action).stream()).toList();
        Set<Move> different = new LinkedHashSet<>(all);
        return all.size() > 1 && different.size() == 1 ? Optional.of(all.get(0)) : Optional.empty();
    }
}
