package org.benchwright.watch;

import java.util.Map;

import org.benchwright.core.Quantity;

/**
 * What one sample says of the unit.
 *
 * @param good       true if the unit is as it must be
 * @param shows      what it shows, in plain words
 * @param conditions what was read of the conditions around it
 */
public record Judgement(boolean good, String shows, Map<String, Quantity> conditions) {
    public Judgement {
        conditions = Map.copyOf(conditions);
    }
}
