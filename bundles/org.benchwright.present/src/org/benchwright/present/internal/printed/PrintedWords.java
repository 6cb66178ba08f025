package org.benchwright.present.internal.printed;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The words of a printed procedure that no step card has. */
public enum PrintedWords {
    BELOW, HEADER, RETEST, PROVES_BENCH, NEEDS_BENCH, CLAIM, DEFERS, HAZARDS, HAZARDS_HOW, HAZARD_CAN, HAZARD_SO, PROTECTED, INSTRUMENTS,
    INSTRUMENTS_HOW, INSTRUMENT_MEANS, INSTRUMENT_MEANS_RANGE, INSTRUMENT_RANGE, INSTRUMENT_PAST_DUE, BEFORE, BEFORE_HOW, VALID, UNMET, STAGE, STEP, ON_DEMAND, AT_MOST, TAKES, REVEALS,
    HOW, OTHERWISE, OTHERWISE_ANY, MARK_SWITCHES, MARK_COUNTS, RUN_ALONE, RUN_TOGETHER, READINGS, BLIND, RULE_SIMPLE, RULE_GUARDED, RULE_BOTH_WAYS, AGAIN,
    COMBINE_MEAN, COMBINE_BOTH_INSIDE, COMBINE_LAST, REJECTED, UNDECIDED, NOT_RECKONED, DERIVE, SUM, DIFFERENCE, BRANCH_YES, BRANCH_NO,
    BRANCH_ONCE, PASS_OVER, GRID_CELLS, GRID_AXIS, GRID_AXIS_WITH, GRID_JUDGED, GRID_WITH, END, GO, MOVE_CONCLUDE, MOVE_CONCLUDE_WHY,
    MOVE_GO, MOVE_BOUND, MOVE_AGAIN, MOVE_POWER_UP_AGAIN, MOVE_RELEASE, PLACE, SOAK_LASTING, SOAK_CONDITIONS, SOAK_LOOKS,
    SOAK_GAP, SOAK_POWER_LOST, SOAK_STOPPED, SOAK_STOPPED_OUTSIDE, SOAK_WATCH, SOAK_WATCH_INSTEAD, MAKE_SAFE_HOW, ENDS, ENDS_HOW, FAMILY, FAMILY_SERIAL,
    FAMILY_SUPPLY, FAMILY_SUPPLY_LIMITS, FAMILY_STOP_STAYS, FAMILY_STOP_UNTIL, FAMILY_RESTARTS, LAMPS_LEGEND, LAMPS_COLOURS, LAMPS_TELLS,
    LAMPS_OR, MODE, MODE_CALLED, MODE_SHOWS, FAULTS, FAULT, FAULT_SHOWS, FAULT_MEANS, FAULT_OFTEN, FAULT_NEXT;

    private static final String BUNDLE = "org.benchwright.present.internal.printed.words";

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for: texts, and numbers where the words depend on how many there are
     */
    public String text(Object... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), PrintedWords.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
