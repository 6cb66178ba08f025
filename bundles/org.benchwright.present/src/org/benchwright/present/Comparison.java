package org.benchwright.present;

import java.util.List;

/**
 * Two tests of one unit side by side.
 *
 * @param then  the earlier test
 * @param now   the later one
 * @param lines what was seen and measured, what differs first
 */
public record Comparison(RecordRow then, RecordRow now, List<Line> lines) {

    public Comparison {
        lines = List.copyOf(lines);
    }

    /** How two entries differ, what matters most first. */
    public enum Difference {
        /** It was decided otherwise, or stands in one of the two only. */
        OUTCOME,
        /** Something else was read or seen, and it was decided alike. */
        VALUE,
        /** Both are alike. */
        NONE
    }

    /**
     * One thing that was seen, measured or entered.
     *
     * @param step       in which step
     * @param what       what it is
     * @param then       in the earlier test, with its outcome; empty where it is not there
     * @param now        in the later one
     * @param difference how the two differ
     */
    public record Line(String step, String what, String then, String now, Difference difference) {
    }

    /** How many lines differ. */
    public long differences() {
        return lines.stream().filter(line -> line.difference() != Difference.NONE).count();
    }
}
