package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Plan;
import org.benchwright.testkit.PropertyTest;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** The engine against the {@link ObviousModel}: after every fact both ask for the same and tell the same story. */
class AgainstTheModelTest implements PropertyTest {

    @Provide
    Arbitrary<List<Integer>> plans() {
        return RandomSamples.plans();
    }

    @Provide
    Arbitrary<List<Integer>> answers() {
        return RandomSamples.answers();
    }

    @Provide
    Arbitrary<List<Integer>> longWatches() {
        return RandomSamples.longWatches();
    }

    @Property(tries = 400)
    void bothComeToTheSameAfterEveryFact(@ForAll("plans") List<Integer> plan, @ForAll("answers") List<Integer> answers) {
        RandomPlan.Sample sample = RandomSamples.plan(plan);
        RandomSamples.walk(sample, answers, walk -> compare(ObviousModel.of(sample.plan(), walk.run().events()), walk));
    }

    @Property(tries = 800)
    void bothComeToTheSameOfWhatAWatchTells(@ForAll("longWatches") List<Integer> tape) {
        Choices choices = new Choices(tape);
        Plan plan = RandomSamples.watchedSoak(choices);
        RandomSamples.walk(new RandomWalk(plan, choices), walk -> compare(ObviousModel.of(plan, walk.run().events()), walk));
    }

    private static void compare(ObviousModel model, Walk walk) {
        String at = "after " + walk.run().events().get(walk.run().events().size() - 1);
        assertEquals(sorted(model.story), sorted(Story.of(walk.run().events())), at);
        assertEquals(ObviousDemand.of(model), walk.key(), at);
        assertEquals(model.live, walk.run().live(), at);
        assertEquals(model.soak.underWay(), walk.run().onSoak(), at);
        assertEquals(model.soak.witnessed(), walk.run().witnessed(), at);
        assertEquals(model.ended, verdict(walk), at);
    }

    private static Optional<Verdict> verdict(Walk walk) {
        return walk.run().rehearsal() ? walk.run().wouldBe() : walk.run().verdict();
    }

    /** In which order several things follow from one fact is the engine's own affair. */
    private static List<String> sorted(List<String> story) {
        return story.stream().sorted().toList();
    }
}
