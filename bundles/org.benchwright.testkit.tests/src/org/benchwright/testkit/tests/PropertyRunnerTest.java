package org.benchwright.testkit.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.testkit.internal.PropertyRunner;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.opentest4j.AssertionFailedError;
import org.opentest4j.TestAbortedException;

import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class PropertyRunnerTest {

    @Test
    void aPropertyThatHoldsPasses() throws Throwable {
        only(PropertyRunner.testsOf(Holds.class)).getExecutable().execute();
    }

    @Test
    void aPropertyThatDoesNotHoldFailsWithItsSmallestSample() {
        DynamicTest test = only(PropertyRunner.testsOf(DoesNotHold.class));
        AssertionFailedError error = assertThrows(AssertionFailedError.class, test.getExecutable()::execute);
        assertTrue(error.getMessage().contains("number: 50"), error.getMessage());
        assertTrue(error.getMessage().contains("seed"), error.getMessage());
    }

    /** One whose assumptions throw every sample away has shown nothing: it is no test that was passed, and none that was skipped. */
    @Test
    void aPropertyThatTriesNothingFails() {
        DynamicTest test = only(PropertyRunner.testsOf(TriesNothing.class));
        AssertionFailedError error = assertThrows(AssertionFailedError.class, test.getExecutable()::execute);
        assertTrue(error.getMessage().contains("exhausted"), error.getMessage());
    }

    @Test
    void aPropertyThatIsGivenUpBeforeItBeginsFails() {
        assertThrows(AssertionFailedError.class, only(PropertyRunner.testsOf(GivenUp.class)).getExecutable()::execute);
    }

    @Test
    void everyPropertyIsATestOfItsOwn() {
        assertEquals(List.of("first", "second"),
                PropertyRunner.testsOf(TwoProperties.class).stream().map(DynamicTest::getDisplayName).sorted().toList());
    }

    @Test
    void aClassWithoutPropertiesIsRefused() {
        assertThrows(IllegalStateException.class, () -> PropertyRunner.testsOf(NoProperty.class));
    }

    private static DynamicTest only(List<DynamicTest> tests) {
        assertEquals(1, tests.size());
        return tests.get(0);
    }

    static final class Holds {
        @Property
        boolean belowHundred(@ForAll @IntRange(min = 0, max = 99) int number) {
            return number < 100;
        }
    }

    static final class DoesNotHold {
        @Property
        boolean belowFifty(@ForAll @IntRange(min = 0, max = 99) int number) {
            return number < 50;
        }
    }

    static final class TriesNothing {
        @Property
        void neverBelowZero(@ForAll @IntRange(min = 0, max = 99) int number) {
            Assume.that(number < 0);
        }
    }

    static final class GivenUp {
        GivenUp() {
            throw new TestAbortedException("nothing to try it on");
        }

        @Property
        void never(@ForAll int number) {
            assertEquals(number, number + 1);
        }
    }

    static final class TwoProperties {
        @Property
        void first(@ForAll int number) {
            assertEquals(number, Integer.parseInt(Integer.toString(number)));
        }

        @Property
        void second(@ForAll int number) {
            assertEquals(-number, 0 - number);
        }
    }

    static final class NoProperty {
    }
}
