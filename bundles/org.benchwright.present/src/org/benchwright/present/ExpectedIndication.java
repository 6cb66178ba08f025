package org.benchwright.present;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;

/**
 * An expected indication for a face that draws it. Colour and pattern are also in {@code words}: never by colour alone.
 *
 * @param words    what is expected and when
 * @param sequence what shows, one after the other; mostly a single element
 * @param asked    true if the question is about this one
 */
public record ExpectedIndication(String words, List<Alternatives> sequence, boolean asked) {

    public ExpectedIndication {
        sequence = List.copyOf(sequence);
    }

    /** One or another of these. */
    public record Alternatives(List<Shown> any) {
        public Alternatives {
            any = List.copyOf(any);
        }
    }

    /** One thing that the unit can show. */
    public sealed interface Shown {
    }

    /**
     * A lamp.
     *
     * @param legend  printed beside it on the unit
     * @param colour  its colour; empty if it is expected off
     * @param pattern how it is lit
     * @param words   colour and pattern in words
     */
    public record Lamp(String legend, Optional<LampColour> colour, LampPattern pattern, String words) implements Shown {
    }

    /**
     * A display.
     *
     * @param title its title
     * @param text  the text that it shows
     */
    public record Display(String title, String text) implements Shown {
    }

    /**
     * A mode.
     *
     * @param words its name
     * @param shows what shows it, all together; may be empty
     */
    public record Mode(String words, List<Shown> shows) implements Shown {
        public Mode {
            shows = List.copyOf(shows);
        }
    }
}
