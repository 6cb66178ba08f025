package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.plan.Plan;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** The engine against the {@link ObviousModel}: after every fact both ask for the same, tell the same story,
 * and take the same proofs of the bench. */
class AgainstTheModelTest extends WithRandomWalks {

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

    @Property(tries = 300)
    void bothComeToTheSameAtASwitchThatWaitsForTheProofOfTheBench(@ForAll("plans") List<Integer> tape) {
        Choices choices = new Choices(tape);
        Plan plan = RandomSamples.switchingOn(choices);
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
        compareProofs(model, walk, at);
    }

    private static void compareProofs(ObviousModel model, Walk walk, String at) {
        Instant now = walk.moment().instant();
        Optional<Duration> owed = ObviousProof.owed(model, now);
        assertEquals(owed, walk.run().benchProofOwed(now), at);
        if (owed.isPresent()) {
            assertFalse(taken(walk, Answers.good(walk.demand())), at);
        }
        Duration within = model.plan.needsBenchProvedWithin().orElse(Duration.ofHours(1));
        for (Duration ago : List.of(Duration.ofMillis(-1), Duration.ZERO, within, within.plusMillis(1))) {
            for (Duration lasting : List.of(Duration.ofMillis(-1), Duration.ZERO)) {
                Fact.BenchProved proof = Answers.proof(now, ago, lasting);
                assertEquals(ObviousProof.taken(model, proof, now), taken(walk, proof), () -> proof + " " + at);
            }
        }
    }

    private static boolean taken(Walk walk, Fact fact) {
        try {
            walk.run().record(fact, Walk.teller(fact), walk.moment());
            return true;
        } catch (RefusedException refused) {
            return false;
        }
    }

    private static Optional<Verdict> verdict(Walk walk) {
        return walk.run().rehearsal() ? walk.run().wouldBe() : walk.run().verdict();
    }

    /** In which order several things follow from one fact is the engine's own affair. */
    private static List<String> sorted(List<String> story) {
        return story.stream().sorted().toList();
    }
}
