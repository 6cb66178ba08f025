package org.benchwright.present.internal;

import java.text.FieldPosition;
import java.text.Format;
import java.text.MessageFormat;
import java.text.ParsePosition;
import java.util.Locale;

import org.benchwright.core.Texts;

/** The words of figures; looked up when they are shown. */
enum FigureWords {
    BASIS_TESTS, BASIS_FAMILY, BASIS_SERIAL, BASIS_ALL, BASIS_FROM_TO, BASIS_FROM, BASIS_TO, BASIS_ANY_TIME, BASIS_LEFT_OUT, BASIS_FAULTY, BASIS_VOID,
    BASIS_CONFIDENCE, TOO_FEW, YIELD, YIELD_ALL, YIELD_NONE, YIELD_SAYS, YIELD_UNDECIDED, YIELD_METHOD, YIELD_BY_PERSON, YIELD_BY_STATION,
    YIELD_BY_SAYS, YIELD_OF_ONE, YIELD_PART, YIELD_LOWER, YIELD_UPPER, WILSON_LOWER, WILSON_UPPER, PERSON, STATION, FIRST_TESTS, ACCEPTED,
    REJECTED, UNDECIDED, NONCONFORMITIES, FAULTS, NONCONFORMITIES_NONE, FAULTS_NONE, PARETO_SAYS, CAUSE, TESTS, SHARE,
    CUMULATIVE, SOAK, SOAK_NONE, SOAK_SAYS, SOAK_NO_STOP, SOAK_BOUND, SOAK_LOOKS, SOAK_TRUNCATED, SOAK_DAY, SOAK_DAY_NONE, SOAK_RATE,
    SOAK_EARLY, SOAK_CONSTANT, SOAK_HOURS, SOAK_WORKING, SOAK_CURVE, SOAK_WEIBULL, DAY, REACHED, STOPPED, PER_1000, LEAST, MOST,
    HOURS_EACH, REVIEW, REVIEW_NONE, REVIEW_ALL, REVIEW_SAYS, REVIEW_TABLE,
    REVIEW_QUALITY, REVIEW_SAMPLE, REVIEW_ACCEPTANCE, REVIEW_AT, REVIEW_FAULTY, REVIEW_CHANCE, REVIEW_CURVE, CAPACITY, CAPACITY_NONE,
    CAPACITY_SAYS, CAPACITY_SHORT, CAPACITY_WAIT, CAPACITY_BUSY, CAPACITY_ASSUMED, STATIONS, BUSY, WAIT, TURNED_AWAY, MOST_A_WEEK,
    SPREAD_MOVING, SPREAD_MEANS, SPREAD_RANGES, SPREAD_RANGE, SPREAD_SAYS, SPREAD_BEYOND, SPREAD_POINTS, SPREAD_OUT,
    RETURNS_DIFFER, RETURNS_ALIKE, RETURNS, RETURNS_NONE, RETURNS_SAYS, RETURNS_CENSORED, RETURNS_AGAIN, RETURNS_WITHIN,
    RETURNS_TOO_EARLY, RETURNS_ALL, RETURNS_DAYS, PROCEDURE, WITHIN_DAYS, WENT_OUT, OUT_SO_LONG, CAME_BACK, CONFIRMED, ESCAPED, READING, READING_SAYS, READING_LATEST, READING_IN_CONTROL, READING_SIGNALS, READING_DRIFT, READING_NO_DRIFT,
    READING_DIFFER, READING_ALIKE, READING_SPLIT, READING_SPLIT_TWO, READING_MORE, READING_READINGS, READING_CENTRE, READING_LIMIT, READING_SIGNAL, OPENED, VALUE, UNIT,
    INSTRUMENT, SIGNAL, RULE_1, RULE_2, RULE_3, RULE_4, BY_PERSON, BY_STATION, BY_INSTRUMENT, READING_TOO_ALIKE;

    private static final Texts TEXTS = Texts.beside(FigureWords.class, "figures");

    /** The text with its arguments put in. */
    String text(Object... arguments) {
        MessageFormat format = new MessageFormat(TEXTS.pattern(name()), Locale.ROOT);
        Format[] formats = format.getFormats();
        for (int i = 0; i < formats.length; i++) {
            // What has no format of its own, such as a choice, is printed as it is: no marks between thousands.
            format.setFormat(i, formats[i] == null ? new AsItIs() : formats[i]);
        }
        return format.format(arguments);
    }

    private static final class AsItIs extends Format {

        private static final long serialVersionUID = 1L;

        @Override
        public StringBuffer format(Object value, StringBuffer text, FieldPosition place) {
            return text.append(value);
        }

        @Override
        public Object parseObject(String text, ParsePosition place) {
            throw new UnsupportedOperationException("only printed");
        }
    }
}
