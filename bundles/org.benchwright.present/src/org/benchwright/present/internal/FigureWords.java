package org.benchwright.present.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The words of figures; looked up when they are shown. */
enum FigureWords {
    BASIS_TESTS, BASIS_FAMILY, BASIS_SERIAL, BASIS_ALL, BASIS_FROM_TO, BASIS_FROM, BASIS_TO, BASIS_ANY_TIME, BASIS_LEFT_OUT, BASIS_FAULTY,
    BASIS_CONFIDENCE, TOO_FEW, YIELD, YIELD_ALL, YIELD_NONE, YIELD_SAYS, YIELD_UNDECIDED, YIELD_METHOD, YIELD_BY_PERSON, YIELD_BY_STATION,
    YIELD_BY_SAYS, YIELD_OF_ONE, YIELD_PART, YIELD_LOWER, YIELD_UPPER, WILSON_LOWER, WILSON_UPPER, PERSON, STATION, FIRST_TESTS, ACCEPTED,
    REJECTED, UNDECIDED, NONCONFORMITIES, FAULTS, NONCONFORMITIES_NONE, FAULTS_NONE, PARETO_SAYS, PARETO_AXIS, CAUSE, TESTS, SHARE,
    CUMULATIVE, SOAK, SOAK_NONE, SOAK_SAYS, SOAK_NO_STOP, SOAK_BOUND, SOAK_LOOKS, SOAK_TRUNCATED, SOAK_DAY, SOAK_DAY_NONE, SOAK_RATE,
    SOAK_EARLY, SOAK_CONSTANT, SOAK_HOURS, SOAK_WORKING, SOAK_CURVE, SOAK_WEIBULL, DAY, REACHED, STOPPED, PER_1000, LEAST, MOST,
    HOURS_EACH, READING, READING_SAYS, READING_LATEST, READING_IN_CONTROL, READING_SIGNALS, READING_DRIFT, READING_NO_DRIFT,
    READING_DIFFER, READING_ALIKE, READING_SPLIT, READING_SPLIT_TWO, READING_MORE, READING_READINGS, READING_CENTRE, READING_LIMIT, READING_SIGNAL, OPENED, VALUE, UNIT,
    INSTRUMENT, SIGNAL, RULE_1, RULE_2, RULE_3, RULE_4, BY_PERSON, BY_STATION, BY_INSTRUMENT, READING_TOO_ALIKE;

    private static final String BUNDLE = "org.benchwright.present.internal.figures";

    /** The text with its arguments put in. */
    String text(Object... arguments) {
        Object[] printed = new Object[arguments.length];
        for (int i = 0; i < arguments.length; i++) {
            printed[i] = String.valueOf(arguments[i]);
        }
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), FigureWords.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(printed);
    }
}
