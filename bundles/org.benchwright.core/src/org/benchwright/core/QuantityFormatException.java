package org.benchwright.core;

import org.benchwright.core.internal.Message;

/** A text is not a quantity. The message says what is wrong with it and gives an example that would work. */
public final class QuantityFormatException extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    /** What is wrong: stable names for callers and records, whatever the language of the message. */
    public enum Problem {
        /** No text. */
        EMPTY,
        /** More characters than any quantity needs. */
        TOO_LONG,
        /** No number at the beginning. */
        NOT_A_NUMBER,
        /** More than one decimal separator. */
        TWO_SEPARATORS,
        /** Digits grouped by blanks or apostrophes. */
        GROUPED_DIGITS,
        /** A decimal separator without a digit on either side. */
        BARE_SEPARATOR,
        /** A power of ten, such as {@code 1e3}. */
        POWER_OF_TEN,
        /** A unit in the place of the decimal point, such as {@code 4k7}. */
        UNIT_FOR_POINT,
        /** What a display shows that can't show the reading, such as {@code OL}. */
        OUT_OF_RANGE,
        /** A number without a unit of measure. */
        NO_UNIT,
        /** A unit of measure that is not in the catalogue. */
        UNKNOWN_UNIT,
        /** A unit of measure of another dimension than the one asked for. */
        OTHER_DIMENSION
    }

    private final Problem problem;
    private final String example;

    QuantityFormatException(Problem problem, String words, String example) {
        super(Message.QUANTITY_EXAMPLE.text(words, example));
        this.problem = problem;
        this.example = example;
    }

    /**
     * What is wrong.
     *
     * @return a stable name
     */
    public Problem problem() {
        return problem;
    }

    /**
     * A text that would work.
     *
     * @return as near to what was entered as can be told
     */
    public String example() {
        return example;
    }
}
