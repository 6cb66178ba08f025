package org.benchwright.engine.plan;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;

/** One thing that the unit can show. */
public sealed interface Signal {

    /** The name in the procedure of what shows it. */
    String source();

    /**
     * A lamp with its pattern.
     *
     * @param source the lamp's name
     * @param marked the legend beside it
     * @param colour the colour expected, always given unless the lamp is expected off
     * @param pattern how it is lit
     */
    record LampShows(String source, String marked, Optional<LampColour> colour, LampPattern pattern) implements Signal {
    }

    /**
     * A display with its text.
     *
     * @param source the display's name
     * @param title  the display's title
     * @param text   the text expected
     */
    record DisplayShows(String source, String title, String text) implements Signal {
    }

    /**
     * A mode, recognised by what shows it.
     *
     * @param source the mode's name
     * @param shows  its indications
     */
    record ModeShows(String source, List<Signal> shows) implements Signal {
        public ModeShows {
            shows = List.copyOf(shows);
        }
    }
}
