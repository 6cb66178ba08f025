package org.benchwright.testkit.tests;

import org.benchwright.testkit.PropertyTest;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** A property class as the other bundles write theirs. */
class PropertyTestTest implements PropertyTest {

    @Property
    boolean aTextReversedTwiceIsItself(@ForAll String text) {
        String reversed = new StringBuilder(text).reverse().toString();
        return new StringBuilder(reversed).reverse().toString().equals(text);
    }
}
