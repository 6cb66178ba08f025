package org.benchwright.engine.plan;

import java.util.List;

/**
 * A mode of the unit and the indications that show it.
 *
 * @param name  the mode's name
 * @param shows indications that are all present in this mode; may be empty
 */
public record Mode(String name, List<Signal> shows) {
    public Mode {
        shows = List.copyOf(shows);
    }
}
