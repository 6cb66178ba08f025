package org.benchwright.engine.tests;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.core.SignalWord;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;

/**
 * A random plan that a careful engineer could have written: no step that assumes something live is reached with it switched off, except
 * through a loss of power.
 */
final class RandomPlan {

    private static final List<String> ITEMS = List.of("supply", "load");
    private static final List<String> HAZARDS = List.of("mains", "static");

    private final Choices choices;
    private final List<Sketch> sketches = new ArrayList<>();
    private final Map<String, Set<String>> assumed = new HashMap<>();
    /** What is live after each place. */
    private final List<Set<String>> after = new ArrayList<>();
    private Set<String> live = new LinkedHashSet<>();
    private int names;

    /** A place of the plan before its moves are known. */
    private record Sketch(String stage, String name, boolean soak, boolean onDemand, Set<String> entry, Set<String> lowest) {
    }

    private RandomPlan(Choices choices) {
        this.choices = choices;
    }

    /**
     * A plan with what each place takes for granted.
     *
     * @param plan    the plan
     * @param assumed what is live when a step or soak of that name is reached as the engineer meant it
     */
    record Sample(Plan plan, Map<String, Set<String>> assumed) {
    }

    static Sample of(Choices choices) {
        return new RandomPlan(choices).sample();
    }

    private Sample sample() {
        sketch();
        PlanDraft draft = PlanDraft.plan();
        for (String hazard : HAZARDS) {
            draft.hazard(hazard, choices.of(List.of(SignalWord.NOTICE, SignalWord.DANGER, SignalWord.WARNING, SignalWord.CAUTION)));
        }
        preconditions(draft);
        List<String> stages = sketches.stream().map(Sketch::stage).distinct().toList();
        for (String stage : stages) {
            draft.stage(stage(sketches.stream().filter(s -> s.stage().equals(stage)).toList()));
        }
        if (choices.oneIn(3)) {
            draft.restartsByItself();
        }
        makeSafe(draft);
        if (choices.oneIn(3)) {
            draft.needsBenchProved(choices.of(List.of("12 h", "10 min", "1 s")));
        }
        return new Sample(draft.build(), Map.copyOf(assumed));
    }

    // ---- first the places, so that moves have targets

    private void sketch() {
        boolean soak = choices.oneIn(2);
        int stages = 1 + choices.below(2);
        for (int i = 0; i < stages; i++) {
            sketchStage("stage" + i, false, soak && i == stages - 1);
        }
        if (soak) {
            add(new Sketch("endurance", "endurance", true, false, Set.copyOf(live), Set.copyOf(live)));
            sketchStage("after", false, false);
        }
        if (choices.oneIn(2)) {
            live = new LinkedHashSet<>(choices.oneIn(2) ? Set.of("supply") : Set.of());
            sketchStage("log", true, false);
        }
    }

    private void sketchStage(String stage, boolean onDemand, boolean leavesSupplyOn) {
        int steps = 1 + choices.below(3);
        for (int i = 0; i < steps; i++) {
            Set<String> entry = Set.copyOf(live);
            Set<String> lowest = new HashSet<>(live);
            for (String item : ITEMS) {
                boolean needed = leavesSupplyOn && i == steps - 1 && item.equals("supply");
                if (needed ? !live.contains(item) : choices.oneIn(3)) {
                    if (live.remove(item)) {
                        lowest.remove(item);
                    } else {
                        live.add(item);
                    }
                }
            }
            add(new Sketch(stage, "step" + names++, false, onDemand, entry, Set.copyOf(lowest)));
            after.add(Set.copyOf(live));
        }
    }

    private void add(Sketch sketch) {
        sketches.add(sketch);
        assumed.put(sketch.name(), sketch.entry());
        if (sketch.soak()) {
            after.add(sketch.entry());
        }
    }

    private void preconditions(PlanDraft draft) {
        if (choices.oneIn(2)) {
            draft.precondition("strap", choices.of(List.of("12 h", "1 h", "1 min")));
        }
        if (choices.oneIn(3)) {
            draft.readingPrecondition("ambient", Parts.room());
        }
    }

    // ---- then what they ask

    private Stage stage(List<Sketch> places) {
        Sketch first = places.get(0);
        List<String> hazards = choices.oneIn(4) ? List.of(choices.of(HAZARDS)) : List.of();
        if (first.soak()) {
            Optional<SoakStage.Gap> gap = choices.oneIn(2)
                    ? Optional.of(new SoakStage.Gap(Duration.ofHours(2), soakMove(first, 2)))
                    : Optional.empty();
            SoakStage looked = PlanDraft.soakStage(first.stage(), Duration.ofHours(72), hazards, gap, soakMove(first, 2), soakMove(first, 2));
            return choices.oneIn(2) ? PlanDraft.watched(looked, RandomWatch.asked(choices)) : looked;
        }
        Optional<Duration> atMost = choices.oneIn(3) ? Optional.of(Duration.ofMinutes(10)) : Optional.empty();
        List<Step> steps = places.stream().map(this::step).toList();
        return new WorkStage(first.stage(), "Stage " + first.stage(), first.onDemand(), atMost, hazards, steps);
    }

    private Step step(Sketch place) {
        Set<String> left = after.get(sketches.indexOf(place));
        List<Action> actions = new ArrayList<>();
        asks(actions, place, choices.below(2), false);
        for (String item : ITEMS) {
            if (left.contains(item) && !place.entry().contains(item)) {
                actions.add(Parts.energise(item));
            } else if (!left.contains(item) && place.entry().contains(item)) {
                actions.add(Parts.isolate(item));
            }
        }
        asks(actions, place, 1 + choices.below(3), true);
        if (choices.oneIn(12)) {
            actions.add(Parts.end("end", conclusion()));
        } else if (choices.oneIn(8)) {
            actions.add(goTo(place, 1).map(g -> Parts.go("go", g)).orElse(Parts.text("more")));
        }
        return new Step(place.name(), "Carry out " + place.name() + ".", Optional.empty(),
                choices.oneIn(3) ? List.of(choices.of(HAZARDS)) : List.of(), List.of(), actions);
    }

    /** @param switched whether the step has switched all that it switches; only then may the rest be passed over */
    private void asks(List<Action> actions, Sketch place, int count, boolean switched) {
        for (int i = 0; i < count; i++) {
            String id = "c" + actions.size();
            switch (choices.below(14)) {
                case 0 -> actions.add(Parts.confirm(id, move(place, 2)));
                case 1 -> actions.add(Parts.text(id));
                case 2 -> timed(actions, place, id);
                case 3 -> actions.add(Parts.measure(id, choices.of(List.of(DecisionRule.values())), move(place, 2), move(place, 2)));
                case 4 -> actions.add(Parts.measureAgain(id, 1 + choices.below(2), choices.of(List.of(Combination.values())), move(place, 2),
                        move(place, 2)));
                case 5 -> actions.add(Parts.compare(id, move(place, 2)));
                case 6 -> actions.add(Parts.choose(id, List.of(Parts.item("log")), List.of(Parts.protectedItem("program")), move(place, 2)));
                case 7 -> actions.add(Parts.release(id, choices.of(List.of(Role.SECOND_PERSON, Role.SUPERVISOR)), move(place, 2)));
                case 8 -> actions.add(Parts.pause(id, "5 min"));
                case 9 -> actions.add(choices.oneIn(2) ? Parts.apply(id, "calibrator") : Parts.attach(id));
                case 10 -> actions.add(Parts.faultLog(id));
                case 11 -> {
                    DecisionRule rule = choices.of(List.of(DecisionRule.values()));
                    actions.add(Parts.measure(id, rule, move(place, 2), move(place, 2)));
                    actions.add(Parts.derive(id + "d", place.name() + "." + id, rule, move(place, 2), move(place, 2)));
                }
                case 12 -> {
                    Optional<Move.GoTo> to = choices.oneIn(2) || !switched ? goTo(place, 1) : Optional.empty();
                    if (to.isPresent() || switched) {
                        actions.add(Parts.branch(id, choices.oneIn(2), to, choices.oneIn(2) ? Optional.of("fan") : Optional.empty()));
                    }
                }
                default -> actions.add(Parts.grid(id, move(place, 2), move(place, 2)));
            }
        }
    }

    /** One or two marks, and one to three expectations that run together. */
    private void timed(List<Action> actions, Sketch place, String id) {
        actions.add(Parts.mark(id + "m"));
        boolean second = choices.oneIn(3);
        if (second) {
            actions.add(Parts.mark(id + "n"));
        }
        int count = 1 + choices.below(3);
        for (int i = 0; i < count; i++) {
            String mark = second && choices.oneIn(2) ? id + "n" : id + "m";
            String opens = choices.of(List.of("2 s", "5 s", "10 s"));
            Action.Window window = choices.oneIn(3) ? Parts.from(opens, mark, "5 s") : Parts.within(opens, mark);
            actions.add(Parts.expect(id + "e" + i, window, move(place, 2)));
        }
    }

    private void makeSafe(PlanDraft draft) {
        List<Action> off = new ArrayList<>(List.of(Parts.isolate("supply")));
        if (choices.oneIn(2)) {
            off.add(Parts.isolate("load"));
        }
        Move unsafe = choices.of(List.of(Parts.undecided("unsafe"), Parts.releaseBy(Role.SUPERVISOR),
                Parts.goTo("make_safe", "off", 1, Parts.undecided("unsafe twice"))));
        List<Step> steps = new ArrayList<>(List.of(new Step("off", "Switch off.", Optional.empty(),
                choices.oneIn(3) ? List.of("mains") : List.of(), List.of(), off)));
        if (choices.oneIn(2)) {
            steps.add(Parts.step("drain", Parts.pause("wait", "5 min"),
                    Parts.measure("residual", DecisionRule.GUARDED_BOTH_WAYS, unsafe, unsafe), Parts.confirm("dead", unsafe)));
        }
        if (choices.oneIn(4)) {
            steps.add(0, Parts.step("plug", Parts.confirm("reach", Parts.goTo("make_safe", steps.get(steps.size() - 1).name()))));
        }
        draft.makeSafe(steps.toArray(Step[]::new));
    }

    // ---- moves

    private Move.Conclude conclusion() {
        return choices.of(List.of(Parts.rejected("not as it should be"), Parts.undecided("nobody can tell"), Parts.accepted()));
    }

    private Move move(Sketch from, int depth) {
        return switch (choices.below(5)) {
            case 0 -> conclusion();
            case 1, 2 -> Parts.releaseBy(choices.of(List.of(Role.SUPERVISOR, Role.SECOND_PERSON)));
            default -> goTo(from, depth).map(Move.class::cast).orElseGet(this::conclusion);
        };
    }

    private Move soakMove(Sketch from, int depth) {
        return switch (choices.below(3)) {
            case 0 -> conclusion();
            case 1 -> depth == 0 ? conclusion() : Parts.beginAgain(1 + choices.below(2), soakMove(from, depth - 1));
            default -> goToFrom(from, depth, true).map(Move.class::cast).orElseGet(this::conclusion);
        };
    }

    private Optional<Move.GoTo> goTo(Sketch from, int depth) {
        return goToFrom(from, depth, false);
    }

    private Optional<Move.GoTo> goToFrom(Sketch from, int depth, boolean soak) {
        List<Sketch> targets = sketches.stream().filter(t -> from.lowest().containsAll(t.entry())).toList();
        if (targets.isEmpty()) {
            return Optional.empty();
        }
        Sketch to = choices.of(targets);
        String step = to.soak() ? "" : to.name();
        boolean forward = sketches.indexOf(to) > sketches.indexOf(from);
        if (forward && choices.oneIn(2)) {
            return Optional.of(Parts.goTo(to.stage(), step));
        }
        Move instead = depth == 0 ? conclusion() : soak ? soakMove(from, depth - 1) : move(from, depth - 1);
        return Optional.of(Parts.goTo(to.stage(), step, 1 + choices.below(2), instead));
    }
}
