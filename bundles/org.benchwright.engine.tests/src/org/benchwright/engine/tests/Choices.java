package org.benchwright.engine.tests;

import java.util.List;

/**
 * A tape of numbers that stands for every choice of a generator. Where it ends, the simplest choice is made; so a shorter tape or smaller
 * numbers make a simpler sample, and a failing sample can be made smaller without knowing what it stands for.
 */
final class Choices {

    private final List<Integer> tape;
    private int next;

    Choices(List<Integer> tape) {
        this.tape = tape;
    }

    boolean exhausted() {
        return next >= tape.size();
    }

    /** A number from 0 to {@code count - 1}; 0 where the tape has ended. */
    int below(int count) {
        return exhausted() ? 0 : Math.floorMod(tape.get(next++), count);
    }

    /** True one time in {@code count}; never where the tape has ended. */
    boolean oneIn(int count) {
        return below(count) == count - 1;
    }

    <T> T of(List<T> options) {
        return options.get(below(options.size()));
    }
}
