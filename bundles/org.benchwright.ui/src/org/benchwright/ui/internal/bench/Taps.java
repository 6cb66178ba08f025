package org.benchwright.ui.internal.bench;

import java.util.ArrayList;
import java.util.List;

/** Taps along with a lamp as they are typed: each shows as a dot. */
final class Taps {

    private static final long NANOS_IN_MILLI = 1_000_000;
    private static final String DOT = "\u00b7";

    private final List<Long> at = new ArrayList<>();
    private int last;

    /** True if the next space is a tap: nothing else was typed. */
    boolean takes(String typed) {
        return typed.equals(shown());
    }

    /**
     * One more tap.
     *
     * @param millis when, in ms by the keyboard's clock, which begins anew when its number is full
     * @return what the field shows then
     */
    String add(int millis) {
        long since = at.isEmpty() ? 0 : at.get(at.size() - 1) + (millis - last) * NANOS_IN_MILLI;
        at.add(since);
        last = millis;
        return shown();
    }

    /** The taps, in ns behind the first, if what is typed is nothing but them; none otherwise. */
    List<Long> in(String typed) {
        return !at.isEmpty() && typed.equals(shown()) ? List.copyOf(at) : List.of();
    }

    void clear() {
        at.clear();
    }

    private String shown() {
        return DOT.repeat(at.size());
    }
}
