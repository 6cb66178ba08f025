package org.benchwright.ui.internal.bench;

import java.util.ArrayList;
import java.util.List;

/** Taps along with a lamp as they are typed: each shows as a dot. */
final class Taps {

    private static final String DOT = "\u00b7";

    private final List<Long> at = new ArrayList<>();

    /** True if the next space is a tap: nothing else was typed. */
    boolean takes(String typed) {
        return typed.equals(shown());
    }

    /** One more tap, at that time in ns; what the field shows then. */
    String add(long nanos) {
        at.add(nanos);
        return shown();
    }

    /** The taps, if what is typed is nothing but them; none otherwise. */
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
