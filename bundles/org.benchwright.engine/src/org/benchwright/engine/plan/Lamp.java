package org.benchwright.engine.plan;

import java.util.List;

import org.benchwright.core.LampColour;

/**
 * A lamp of the family.
 *
 * @param name    its name in the procedure
 * @param marked  the legend printed beside it on the unit
 * @param colours one colour, or two where the lamp has two
 * @param title   what it tells
 */
public record Lamp(String name, String marked, List<LampColour> colours, String title) {
    public Lamp {
        colours = List.copyOf(colours);
    }
}
