package org.benchwright.watch;

import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Quantity;

/** Something worth writing down about a unit that is watched. */
public sealed interface Observed {

    /** The unit is seen, for the first time or again, and is as it must be. */
    record Sees(Sample at) implements Observed {
    }

    /**
     * A run of equal samples that were all as they must be.
     *
     * @param samples    how many, both ends included
     * @param missed     how many between them did not arrive
     * @param conditions the range of each condition that these samples read
     */
    record Held(Sample from, Sample to, long samples, long missed, Map<String, Range> conditions) implements Observed {
        public Held {
            conditions = Map.copyOf(conditions);
        }
    }

    /** The lowest and the highest reading of a condition. */
    record Range(Quantity low, Quantity high) {
        Range with(Quantity value) {
            return new Range(value.compareTo(low) < 0 ? value : low, value.compareTo(high) > 0 ? value : high);
        }
    }

    /**
     * The unit was not as it must be.
     *
     * @param lastGood empty where it was not seen good since the watch began or was silent
     * @param bad      how many bad samples in a row
     * @param stop     true if they are as many as make a stop
     */
    record Changed(Optional<Sample> lastGood, Sample firstBad, int bad, boolean stop, String shows) implements Observed {
    }

    /** A condition went out of its limits or came back. */
    record Crossed(String condition, boolean inside, Optional<Sample> before, Sample after, Quantity value) implements Observed {
    }

    /** The unit cannot be seen. */
    record Silent(Optional<Sample> lastSeen, String why) implements Observed {
    }
}
