package org.benchwright.engine.tests;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

import org.benchwright.core.SignalWord;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Step;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.RandomDistribution;

/** Tapes for random plans and random walks. */
final class RandomSamples {

    /** More facts than any plan of {@link RandomPlan} can ask for: whoever needs more goes round for ever. */
    static final int MOST_FACTS = 1_500;

    private RandomSamples() {
    }

    static Arbitrary<List<Integer>> plans() {
        return tape(20, 260);
    }

    static Arbitrary<List<Integer>> answers() {
        return tape(0, 160);
    }

    static Arbitrary<List<Integer>> longWatches() {
        return tape(60, 400);
    }

    private static Arbitrary<List<Integer>> tape(int shortest, int longest) {
        return Arbitraries.integers().between(0, 9_999).withDistribution(RandomDistribution.uniform()).list().ofMinSize(shortest)
                .ofMaxSize(longest);
    }

    /** A plan that is little more than a watched soak, so that random walks get far in it. */
    static Plan watchedSoak(Choices choices) {
        Optional<SoakStage.Gap> gap = choices.oneIn(2)
                ? Optional.of(new SoakStage.Gap(Duration.ofHours(2), Parts.beginAgain(1, Parts.undecided("Too long unseen.")))) : Optional.empty();
        SoakStage looked = PlanDraft.soakStage("endurance", Duration.ofHours(72), List.of(), gap, Parts.goTo("read_log", "log"),
                Parts.beginAgain(2, Parts.undecided("Stopped outside conditions again.")));
        PlanDraft draft = PlanDraft.plan().stage("power_up", Parts.step("on", Parts.energise("supply"), Parts.confirm("lit")))
                .stage(PlanDraft.watched(looked, RandomWatch.asked(choices)))
                .onDemand("read_log", Parts.step("log", Parts.faultLog("lines"), Parts.end("stop", Parts.rejected("Stopped by itself."))));
        return (choices.oneIn(2) ? draft.restartsByItself() : draft).build();
    }

    /** A plan that does little more than switch on, on a bench that has to be proved, so that random walks often stand at the switch. */
    static Plan switchingOn(Choices choices) {
        PlanDraft draft = PlanDraft.plan().hazard("mains", choices.of(List.of(SignalWord.DANGER, SignalWord.WARNING)))
                .needsBenchProved(choices.of(List.of("12 h", "10 min", "1 s")));
        for (String item : List.of("supply", "load")) {
            List<Action> actions = new ArrayList<>();
            if (choices.oneIn(2)) {
                actions.add(Parts.confirm("whole"));
            }
            actions.add(Parts.energise(item));
            if (choices.oneIn(2)) {
                actions.add(Parts.mark("closed"));
            }
            actions.add(Parts.confirm("lit"));
            List<String> hazards = choices.oneIn(2) ? List.of("mains") : List.of();
            draft.stage(PlanDraft.work(item + "_on", false, Optional.empty(), choices.oneIn(2) ? List.of("mains") : List.of(),
                    new Step(item, "Switch on.", Optional.empty(), hazards, List.of(), actions)));
        }
        return draft.makeSafe(Parts.step("off", Parts.isolate("load"), Parts.isolate("supply"))).build();
    }

    /** Walks to the end and lets everybody look after every fact. */
    static Walk walk(RandomPlan.Sample sample, List<Integer> answers, Consumer<Walk> look) {
        return walk(new RandomWalk(sample.plan(), new Choices(answers)), look);
    }

    /** Goes on to the end and lets everybody look after every fact. */
    static Walk walk(RandomWalk random, Consumer<Walk> look) {
        look.accept(random.walk());
        for (int facts = 0; !random.ended(); facts++) {
            if (facts > MOST_FACTS) {
                throw new AssertionError("no end after " + facts + " facts; asked for " + random.walk().key());
            }
            random.next();
            look.accept(random.walk());
        }
        return random.walk();
    }

    static RandomPlan.Sample plan(List<Integer> tape) {
        return RandomPlan.of(new Choices(tape));
    }
}
