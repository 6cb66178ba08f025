package org.benchwright.present;

import java.time.Instant;

/**
 * One line of what happened in a test.
 *
 * @param sequence the event's number; the last one's where the line stands for several
 * @param instant  wall time
 * @param who      who told it; empty for what follows from it
 * @param words    what happened
 * @param struck   true if the entry was struck as a slip or amended later; it stays readable
 * @param begins   true where a step begins: what follows belongs to it
 */
public record TimelineLine(long sequence, Instant instant, String who, String words, boolean struck, boolean begins) {

    /** The same in other words. */
    public TimelineLine saying(String other) {
        return new TimelineLine(sequence, instant, who, other, struck, begins);
    }

    /** The same, struck. */
    public TimelineLine asStruck() {
        return new TimelineLine(sequence, instant, who, words, true, begins);
    }
}
