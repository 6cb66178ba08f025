package org.benchwright.language.internal;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * What took its time to be reckoned; after a change of a text nearly all of it is what it was. Keeps what was asked for last. Any thread.
 *
 * @param <K> what it is reckoned from
 * @param <V> what comes out
 */
public final class Remembered<K, V> {

    private final Map<K, V> known;

    /** @param most how many are kept */
    public Remembered(int most) {
        known = new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > most;
            }
        };
    }

    /** What is known, or what the reckoning gives; nobody else waits for it meanwhile. */
    public V of(K from, Supplier<V> reckoning) {
        synchronized (known) {
            V found = known.get(from);
            if (found != null) {
                return found;
            }
        }
        V reckoned = reckoning.get();
        synchronized (known) {
            known.put(from, reckoned);
        }
        return reckoned;
    }
}
