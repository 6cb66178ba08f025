package org.benchwright.engine.event;

import java.util.List;

/** What was replaced or mended in a unit since the test before. */
public record Mended(List<RepairDone> repairs) {
    public Mended {
        repairs = List.copyOf(repairs);
    }
}
