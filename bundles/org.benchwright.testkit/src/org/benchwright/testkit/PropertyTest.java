package org.benchwright.testkit;

import java.util.List;

import org.benchwright.testkit.internal.PropertyRunner;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Makes the jqwik properties of a test class run as JUnit Jupiter tests: a class with {@code @Property} methods implements
 * this interface, and nothing else is needed.
 * <p>
 * The test runtime inside OSGi carries a JUnit platform of its own, to which no engine of the target can be added; so the
 * properties are run by a second platform, and each appears as one dynamic test.
 */
public interface PropertyTest {

    /**
     * The properties of the implementing class, each as one test.
     *
     * @throws IllegalStateException if the class has no property, so that a class that lost its annotations can't pass
     */
    @TestFactory
    default List<DynamicTest> properties() {
        return PropertyRunner.testsOf(getClass());
    }
}
