package org.benchwright.watch;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.PointAddress;

/**
 * What the points of a unit read.
 *
 * @param values the raw value of each; of a bit 1 is on and 0 is off
 * @param source the unit's own time, where it tells one
 */
public record PointValues(Map<PointAddress, BigDecimal> values, Optional<Instant> source) {
    public PointValues {
        values = Map.copyOf(values);
    }

    /** Values without a time of the unit. */
    public PointValues(Map<PointAddress, BigDecimal> values) {
        this(values, Optional.empty());
    }
}
