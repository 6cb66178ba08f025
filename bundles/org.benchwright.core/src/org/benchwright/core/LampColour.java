package org.benchwright.core;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.internal.Message;

/**
 * The colours of indicator lamps and what they mean by IEC 60073. A lamp is never told by its colour alone: its label
 * and its pattern are always shown beside it.
 */
public enum LampColour {
    /** Danger; emergency; faulty. */
    RED(Message.COLOUR_RED, Message.MEANING_DANGER, Message.MEANING_EMERGENCY, Message.MEANING_FAULTY),
    /** Warning; abnormal; abnormal. */
    YELLOW(Message.COLOUR_YELLOW, Message.MEANING_WARNING, Message.MEANING_ABNORMAL, Message.MEANING_ABNORMAL),
    /** Safe; normal; normal. */
    GREEN(Message.COLOUR_GREEN, Message.MEANING_SAFE, Message.MEANING_NORMAL, Message.MEANING_NORMAL),
    /** Mandatory action, whatever is looked at. */
    BLUE(Message.COLOUR_BLUE, Message.MEANING_MANDATORY, Message.MEANING_MANDATORY, Message.MEANING_MANDATORY),
    /** No specific meaning. */
    WHITE(Message.COLOUR_WHITE, Message.MEANING_NONE, Message.MEANING_NONE, Message.MEANING_NONE);

    /** What an indication tells about. */
    public enum Aspect {
        /** The safety of persons or surroundings. */
        SAFETY,
        /** The condition of the process. */
        PROCESS,
        /** The state of the equipment. */
        EQUIPMENT
    }

    private final Message label;
    private final Message safety;
    private final Message process;
    private final Message equipment;

    LampColour(Message label, Message safety, Message process, Message equipment) {
        this.label = label;
        this.safety = safety;
        this.process = process;
        this.equipment = equipment;
    }

    /**
     * The word of the procedure language, the same in every language of the screen.
     *
     * @return {@code red}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The colour as shown to people.
     *
     * @return the colour in their language
     */
    public String label() {
        return label.text();
    }

    /**
     * What the colour means.
     *
     * @param aspect what the indication tells about
     * @return the meaning in words
     */
    public String meaning(Aspect aspect) {
        return switch (aspect) {
            case SAFETY -> safety.text();
            case PROCESS -> process.text();
            case EQUIPMENT -> equipment.text();
        };
    }

    /**
     * Finds a colour by its word.
     *
     * @param word as {@link #word()} gives it
     * @return the colour, or nothing
     */
    public static Optional<LampColour> find(String word) {
        return Arrays.stream(values()).filter(colour -> colour.word().equals(word)).findFirst();
    }
}
