package org.benchwright.language.internal.proof;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;

import org.benchwright.core.Cancellation;
import org.benchwright.language.internal.proof.Walk.Hop;
import org.benchwright.language.internal.proof.Walk.State;

/**
 * All states that a walk can be in, each behind those that it leads to. Every circle of a sound plan uses up a bound, so that no state
 * comes again; where one does, or there are too many of them, the exploration says so and has nothing.
 */
final class Exploration {

    /** More are not kept at once; a procedure of a thousand steps has about as many as steps. */
    static final int MOST_STATES = 100_000;

    private final Map<State, List<Hop>> hops = new HashMap<>();
    private final List<State> order = new ArrayList<>();
    private boolean endless;
    private boolean tooMany;

    private record Open(State state, Iterator<Hop> left) {
    }

    /**
     * Explores.
     *
     * @throws CancellationException if cancelled
     */
    Exploration(Walk walk, Cancellation cancellation) {
        Deque<Open> open = new ArrayDeque<>();
        Map<State, Boolean> done = new HashMap<>();
        open.push(opened(walk, walk.start(), done));
        while (!open.isEmpty() && !endless && !tooMany) {
            if (cancellation.requested()) {
                throw new CancellationException();
            }
            Open here = open.peek();
            if (here.left().hasNext()) {
                here.left().next().to().ifPresent(to -> {
                    Boolean known = done.get(to);
                    if (known == null) {
                        open.push(opened(walk, to, done));
                    }
                    endless |= known != null && !known;
                });
            } else {
                open.pop();
                done.put(here.state(), true);
                order.add(here.state());
            }
            tooMany = hops.size() > MOST_STATES;
        }
    }

    private Open opened(Walk walk, State state, Map<State, Boolean> done) {
        List<Hop> from = walk.hops(state);
        hops.put(state, from);
        done.put(state, false);
        return new Open(state, from.iterator());
    }

    /** Whether a test can go round without an end. */
    boolean isEndless() {
        return endless;
    }

    /** Whether everything was explored. */
    boolean isComplete() {
        return !endless && !tooMany;
    }

    /** The states, each behind all that it leads to; the start is the last. */
    List<State> order() {
        return order;
    }

    List<Hop> from(State state) {
        return hops.get(state);
    }
}
