package org.benchwright.engine.tests;

import java.util.List;

import org.benchwright.testkit.PropertyTest;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.Provide;

/** Laws that are tried on random plans, carried out in random ways. */
abstract class WithRandomWalks implements PropertyTest {

    /** Tapes for {@link RandomSamples#plan}. */
    @Provide
    Arbitrary<List<Integer>> plans() {
        return RandomSamples.plans();
    }

    /** Tapes for {@link RandomSamples#walk}. */
    @Provide
    Arbitrary<List<Integer>> answers() {
        return RandomSamples.answers();
    }
}
