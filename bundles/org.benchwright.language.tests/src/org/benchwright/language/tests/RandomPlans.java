package org.benchwright.language.tests;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.engine.plan.WorkStage;

/** Small plans with checks, questions, ends, repeats and soaks, each sound enough to be carried out. */
final class RandomPlans {

    /** How a release begins that is asked for because something failed. */
    static final String AFTER_FAILURE = "failed";
    private static final Move.Conclude UNDECIDED = new Move.Conclude(Verdict.UNDECIDED, "no");

    private final Random random;
    private final int stages;
    private int steps;

    private RandomPlans(long seed) {
        random = new Random(seed);
        stages = 1 + random.nextInt(3);
    }

    static Plan of(long seed) {
        return new RandomPlans(seed).plan();
    }

    private Plan plan() {
        boolean latches = random.nextInt(4) > 0;
        UnitFamily family = new UnitFamily("jay", "Jay", Optional.empty(), Optional.empty(), List.of(), List.of(),
                List.of(), latches);
        List<Precondition> preconditions = random.nextBoolean() ? List.of()
                : List.of(new Precondition("ready", "Ready.", Optional.empty(), Optional.empty(), Optional.empty()));
        List<Stage> all = new ArrayList<>();
        for (int i = 0; i < stages; i++) {
            all.add(i > 0 && random.nextInt(4) == 0 ? soak(i) : stage(i));
        }
        WorkStage safe = new WorkStage("make_safe", "Make safe", false, Optional.empty(), List.of(),
                List.of(new Step("off", "Off.", Optional.of(Duration.ofMinutes(1)), List.of(), List.of(),
                        List.of(new Action.EnterText("text", "Note")))));
        return new Plan(Plan.CURRENT_FORMAT, "p", "P", 1, "", Optional.empty(), Optional.empty(), family, Optional.empty(),
                List.of(), List.of(),
                List.of(), preconditions, UNDECIDED, all, safe, new Move.Conclude(Verdict.ACCEPTED, ""));
    }

    private Stage soak(int stage) {
        return new SoakStage(name(stage), "Soak", List.of(), Duration.ofHours(24), new Signal.ModeShows("run", List.of()),
                List.of(),
                Duration.ofHours(24), Duration.ZERO, Optional.empty(), random.nextBoolean() ? end()
                        : again(), UNDECIDED, Optional.empty());
    }

    private Move again() {
        return new Move.BeginAgain(new Move.Bound(1 + random.nextInt(2), end()));
    }

    private static String name(int stage) {
        return "st" + stage;
    }

    private Stage stage(int stage) {
        boolean onDemand = stage > 0 && random.nextInt(4) == 0;
        List<Step> all = new ArrayList<>();
        int many = 1 + random.nextInt(2);
        for (int i = 0; i < many; i++) {
            all.add(step(stage, i, onDemand && i + 1 == many));
        }
        return new WorkStage(name(stage), "Stage", onDemand, Optional.empty(), List.of(), all);
    }

    private Step step(int stage, int number, boolean ends) {
        List<Action> actions = new ArrayList<>(List.of(confirm(stage, 0)));
        int more = random.nextInt(3);
        for (int i = 1; i <= more; i++) {
            actions.add(action(stage, i));
        }
        if (ends) {
            actions.add(new Action.End("end", end()));
        }
        Optional<Duration> takes = random.nextBoolean() ? Optional.empty()
                : Optional.of(Duration.ofMinutes(1 + random.nextInt(9)));
        return new Step(name(stage) + "_" + number, "Step " + steps++, takes, List.of(), List.of(), actions);
    }

    private Action confirm(int stage, int id) {
        return new Action.Confirm("confirm" + id, "Is " + id + " so?", move(stage));
    }

    private Action action(int stage, int id) {
        return switch (random.nextInt(6)) {
            case 0 -> new Action.Compare("compare" + id, "Left " + id, "Right " + id, move(stage));
            case 1 -> new Action.Branch("branch" + id, "Is " + id
                    + " fitted?", random.nextBoolean(), Optional.empty(), Optional.of("fitted." + random.nextInt(2)));
            case 2 -> new Action.Branch("seen" + id, "Is " + id + " seen?", random.nextBoolean(),
                    stage + 1 < stages ? Optional.of(new Move.GoTo(name(stages - 1), "", Optional.empty()))
                            : Optional.empty(), Optional.empty());
            case 3 -> new Action.Release("release" + id, Role.SECOND_PERSON, "Released " + id + ".", move(stage));
            case 4 -> stage + 1 < stages && random.nextInt(3) == 0
                    ? new Action.Go("go" + id, new Move.GoTo(name(stage + 1), "", Optional.empty()))
                    : confirm(stage, id);
            default -> confirm(stage, id);
        };
    }

    private Move.Conclude end() {
        return random.nextBoolean() ? new Move.Conclude(Verdict.REJECTED, "bad") : UNDECIDED;
    }

    /** Forward freely, anywhere with a bound. */
    private Move move(int stage) {
        return switch (random.nextInt(5)) {
            case 0 -> stage + 1 < stages ? new Move.GoTo(name(stage + 1), "", Optional.empty()) : end();
            case 1, 2 -> {
                Move instead = random.nextInt(3) == 0 ? new Move.ReleaseBy(Role.SECOND_PERSON, AFTER_FAILURE) : end();
                yield new Move.GoTo(name(random.nextInt(stages)), "",
                        Optional.of(new Move.Bound(1 + random.nextInt(2), instead)));
            }
            case 3 -> new Move.ReleaseBy(Role.SECOND_PERSON, AFTER_FAILURE);
            default -> end();
        };
    }
}
