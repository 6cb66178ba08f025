package org.benchwright.core;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.internal.Message;

/**
 * The signal word of a hazard, the most severe first. Danger, warning and caution grade an injury (ISO 3864-2, ANSI
 * Z535); notice is about property only (ANSI Z535).
 */
public enum SignalWord {
    /** Will result in death or serious injury if not avoided; red. */
    DANGER(true, Message.COLOUR_RED, Message.SIGNAL_DANGER),
    /** Could result in death or serious injury if not avoided; orange. */
    WARNING(true, Message.COLOUR_ORANGE, Message.SIGNAL_WARNING),
    /** Could result in minor or moderate injury if not avoided; yellow. */
    CAUTION(true, Message.COLOUR_YELLOW, Message.SIGNAL_CAUTION),
    /** Not about injury; blue. */
    NOTICE(false, Message.COLOUR_BLUE, Message.SIGNAL_NOTICE);

    private final boolean aboutInjury;
    private final Message colour;
    private final Message meaning;

    SignalWord(boolean aboutInjury, Message colour, Message meaning) {
        this.aboutInjury = aboutInjury;
        this.colour = colour;
        this.meaning = meaning;
    }

    /**
     * Whether somebody can be hurt.
     *
     * @return false for notice only
     */
    public boolean aboutInjury() {
        return aboutInjury;
    }

    /**
     * The word of the procedure language.
     *
     * @return {@code danger}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The colour of the panel that carries the word (ANSI Z535.4).
     *
     * @return red, orange, yellow or blue, in the reader's language
     */
    public String panelColour() {
        return colour.text();
    }

    /**
     * What the word says about the outcome.
     *
     * @return one sentence
     */
    public String meaning() {
        return meaning.text();
    }

    /**
     * Finds a signal word.
     *
     * @param word as {@link #word()} gives it
     * @return the signal word, or nothing
     */
    public static Optional<SignalWord> find(String word) {
        return Arrays.stream(values()).filter(signal -> signal.word().equals(word)).findFirst();
    }
}
