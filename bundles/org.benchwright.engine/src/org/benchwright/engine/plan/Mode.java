package org.benchwright.engine.plan;

import java.util.List;
import java.util.Optional;

/**
 * A mode of the unit and the indications that show it.
 *
 * @param name  the mode's name
 * @param shows indications that are all present in this mode; may be empty
 * @param title what it is called, where that is not its name
 */
public record Mode(String name, List<Signal> shows, Optional<String> title) {

    public Mode {
        shows = List.copyOf(shows);
    }
}
