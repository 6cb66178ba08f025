package org.benchwright.language.internal.flow;

import java.util.AbstractSet;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Things that get a number each, so that sets of them are sets of bits: thousands of sets that differ in one thing cost little.
 *
 * @param <T> the things
 */
final class Numbered<T> {

    private final List<T> things = new ArrayList<>();
    private final Map<T, Integer> numbers = new HashMap<>();

    /** The number of a thing; a new one if it has none yet. */
    int number(T thing) {
        return numbers.computeIfAbsent(thing, added -> {
            things.add(added);
            return things.size() - 1;
        });
    }

    boolean contains(Object thing) {
        return numbers.containsKey(thing);
    }

    /** The things of which the bits are set; the bits must not change any more. */
    Set<T> of(BitSet bits) {
        return new AbstractSet<>() {
            @Override
            public boolean contains(Object thing) {
                Integer number = numbers.get(thing);
                return number != null && bits.get(number);
            }

            @Override
            public Iterator<T> iterator() {
                return bits.stream().mapToObj(things::get).iterator();
            }

            @Override
            public int size() {
                return bits.cardinality();
            }
        };
    }
}
