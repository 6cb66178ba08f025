package org.benchwright.engine.tests;

import java.util.List;
import java.util.function.Consumer;

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

    private static Arbitrary<List<Integer>> tape(int shortest, int longest) {
        return Arbitraries.integers().between(0, 9_999).withDistribution(RandomDistribution.uniform()).list().ofMinSize(shortest)
                .ofMaxSize(longest);
    }

    /** Walks to the end and lets everybody look after every fact. */
    static Walk walk(RandomPlan.Sample sample, List<Integer> answers, Consumer<Walk> look) {
        RandomWalk random = new RandomWalk(sample.plan(), new Choices(answers));
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
