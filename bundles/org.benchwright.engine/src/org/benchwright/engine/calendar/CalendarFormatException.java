package org.benchwright.engine.calendar;

/** A text that is no calendar of a shop. */
public final class CalendarFormatException extends Exception {

    private static final long serialVersionUID = 1L;

    private final int line;

    /**
     * @param line  which line, from 1; 0 for the text as a whole
     * @param words what is wrong with it, and what to write
     */
    public CalendarFormatException(int line, String words) {
        super(words);
        this.line = line;
    }

    /** Which line, from 1; 0 for the text as a whole. */
    public int line() {
        return line;
    }
}
