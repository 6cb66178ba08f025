package org.benchwright.present.internal;

import java.util.HashMap;
import java.util.Map;
import java.util.function.UnaryOperator;

import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Step;

/**
 * What readers of a record know a check by: its label where the procedure gives it one, else its name; and what was to be done to an item that was
 * chosen or spared, since its name alone would not tell which. Follows the events in order.
 */
final class CheckNames implements UnaryOperator<String> {

    private final Map<String, Map<String, String>> labelsByStep = new HashMap<>();
    private Map<String, String> labels = Map.of();

    CheckNames(Plan plan) {
        plan.steps().forEach(step -> labelsByStep.put(step.name(), labels(step)));
    }

    private static Map<String, String> labels(Step step) {
        Map<String, String> labels = new HashMap<>();
        for (Action action : step.actions()) {
            if (action instanceof Action.EnterText text) {
                labels.put(text.id(), text.label());
            } else if (action instanceof Action.Attach attach) {
                labels.put(attach.id(), attach.label());
            } else if (action instanceof Action.Choose choose) {
                boolean erase = choose.verb() == Action.Choose.Verb.ERASE;
                choose.only().forEach(item -> labels.put(place(choose.id(), item.name()), (erase ? Message.ITEM_ERASED : Message.ITEM_LOADED).text(item.title())));
                choose.spare().forEach(item -> labels.put(place(choose.id(), item.name()), (erase ? Message.ITEM_SPARED : Message.ITEM_LEFT_OUT).text(item.title())));
            }
        }
        return labels;
    }

    /** From here on names are those of the step that this event opens, if it does. */
    void follow(EventBody body) {
        if (body instanceof Derived.StepOpened opened) {
            labels = labelsByStep.getOrDefault(opened.step(), Map.of());
        }
    }

    @Override
    public String apply(String check) {
        return labels.getOrDefault(check, Questions.spaced(check));
    }

    /**
     * What readers know a part of a check by.
     *
     * @param check the check's name
     * @param part  the name of an item of it, or the number of a cell
     */
    String part(String check, String part) {
        return labels.getOrDefault(place(check, part), apply(check) + " " + Questions.spaced(part));
    }

    private static String place(String check, String part) {
        return check + " " + part;
    }
}
