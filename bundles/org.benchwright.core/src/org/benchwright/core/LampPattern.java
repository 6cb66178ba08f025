package org.benchwright.core;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.internal.Message;

/** What a lamp does: off, steady or flashing. */
public sealed interface LampPattern {

    /**
     * The pattern as the procedure language writes it, readable by {@link #parse(String)}.
     *
     * @return {@code off}, {@code steady}, {@code flashing}, {@code flashing slow}, {@code flashing 1 Hz tolerance 20 %}
     */
    String words();

    /** Not lit. */
    record Off() implements LampPattern {
        @Override
        public String words() {
            return "off";
        }
    }

    /** Lit without a break. */
    record Steady() implements LampPattern {
        @Override
        public String words() {
            return "steady";
        }
    }

    /**
     * Lit on and off.
     *
     * @param rate how fast
     */
    record Flashing(FlashRate rate) implements LampPattern {

        /** Checks that there is a rate; {@link FlashRate.Any} says that it does not matter. */
        public Flashing {
            Objects.requireNonNull(rate);
        }

        @Override
        public String words() {
            return ("flashing " + rate.words()).strip();
        }
    }

    /**
     * Reads a pattern back.
     *
     * @param words as {@link #words()} gives them
     * @return the pattern
     * @throws IllegalArgumentException when the words are no pattern
     */
    static LampPattern parse(String words) {
        return switch (words) {
            case "off" -> new Off();
            case "steady" -> new Steady();
            case "flashing" -> new Flashing(new FlashRate.Any());
            case "flashing slow" -> new Flashing(new FlashRate.Slow());
            case "flashing normal" -> new Flashing(new FlashRate.Normal());
            default -> new Flashing(around(words));
        };
    }

    private static FlashRate around(String words) {
        Matcher matcher = Pattern.compile("flashing (.+) tolerance ([0-9]+(?:\\.[0-9]+)?) %").matcher(words);
        if (!matcher.matches()) {
            throw new IllegalArgumentException(Message.PATTERN_UNKNOWN.text(words));
        }
        return new FlashRate.Around(Quantity.parse(matcher.group(1)), new BigDecimal(matcher.group(2)));
    }
}
