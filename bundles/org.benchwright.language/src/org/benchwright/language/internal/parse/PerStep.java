package org.benchwright.language.internal.parse;

import java.util.IdentityHashMap;
import java.util.Map;
import java.util.function.Function;

import org.benchwright.model.Step;

/**
 * Something that is found out about each step of a file by looking at the step, at what it refers to and at what is around it. It is
 * not found out again before one of those changes. Used by one thread at a time.
 *
 * @param <T> what is found out
 */
public final class PerStep<T> {

    private final Map<Step, T> known = new IdentityHashMap<>();

    /** What is known of a step, or what a look at it finds. */
    public T of(Step step, Function<Step, T> look) {
        T found = known.get(step);
        if (found == null) {
            found = look.apply(step);
            known.put(step, found);
        }
        return found;
    }

    /** Takes note of something newer about a step. */
    public void put(Step step, T found) {
        known.put(step, found);
    }

    /** These steps say, or may mean, something else now. */
    public void forget(Iterable<Step> steps) {
        steps.forEach(known::remove);
    }

    /** Any step may mean something else now. */
    public void forgetAll() {
        known.clear();
    }
}
