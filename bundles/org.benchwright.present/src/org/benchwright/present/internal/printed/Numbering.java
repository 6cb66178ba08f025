package org.benchwright.present.internal.printed;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;

/** Stages as 1, 2, 3 and their steps as 1.1, 1.2, 1.3, in the order written, make safe last. */
final class Numbering {

    private final Map<String, String> stages = new HashMap<>();
    private final Map<String, String> titles = new HashMap<>();
    private final Map<String, String> steps = new HashMap<>();

    Numbering(Plan plan) {
        for (int i = 0; i < plan.stages().size(); i++) {
            number(plan.stages().get(i), i + 1);
        }
        number(plan.makeSafe(), plan.stages().size() + 1);
    }

    private void number(Stage stage, int number) {
        stages.put(stage.name(), String.valueOf(number));
        titles.put(stage.name(), stage.title());
        List<Step> inside = stage instanceof WorkStage work ? work.steps() : List.of();
        for (int i = 0; i < inside.size(); i++) {
            steps.put(inside.get(i).name(), number + "." + (i + 1));
        }
    }

    String of(Stage stage) {
        return stages.get(stage.name());
    }

    String of(Step step) {
        return steps.get(step.name());
    }

    /** Where a move leads, by number and title. */
    String of(Move.GoTo target) {
        String title = titles.getOrDefault(target.stage(), target.stage());
        return PrintedWords.PLACE.text(steps.getOrDefault(target.step(), stages.getOrDefault(target.stage(), "")), title);
    }
}
