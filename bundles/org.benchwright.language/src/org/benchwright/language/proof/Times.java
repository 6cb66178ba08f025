package org.benchwright.language.proof;

import java.time.Duration;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

import org.benchwright.core.Verdict;

/**
 * How long a test takes by what its text says, making safe included. A step takes what its {@code takes} says, and no less than the waits,
 * settling times and deadlines in it; begun is counted as done. A soak that is stopped ends somewhere between its beginning and its
 * length. What is written nowhere is not counted, so all times are "at least": preconditions, looks, releases, measuring again, steps
 * without {@code takes}.
 *
 * @param typical   of the test in which all conforms, each condition applies and no question leads elsewhere; empty where paths can't be told
 * @param verdict   how that one ends; empty where paths can't be told
 * @param byVerdict shortest and longest for each verdict that some path reaches, in their order; bench and attended time may be of different paths
 * @param stages    of each stage and soak, in order, make safe last
 * @param without   names of the steps that don't say how long they take, in order
 */
public record Times(Optional<TimeSpan> typical, Optional<Verdict> verdict, Map<Verdict, Range> byVerdict, List<StageTime> stages,
        List<String> without) {

    /**
     * From the shortest to the longest.
     *
     * @param shortest the shortest bench and the shortest attended time
     * @param longest  the longest ones
     */
    public record Range(TimeSpan shortest, TimeSpan longest) {
        public Range {
            Objects.requireNonNull(shortest);
            Objects.requireNonNull(longest);
        }

        /** From the shorter to the longer of both. */
        public Range with(Range other) {
            return new Range(shortest.shorter(other.shortest), longest.longer(other.longest));
        }
    }

    /**
     * A stage, all of its steps done once, or a soak.
     *
     * @param title  its title
     * @param time   how long it takes
     * @param atMost how long it may take; a longer one is a departure
     * @param looks  for a soak how often somebody looks, the first look included; 0 for stages
     */
    public record StageTime(String title, TimeSpan time, Optional<Duration> atMost, int looks) {
    }

    public Times {
        byVerdict = byVerdict.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(byVerdict));
        stages = List.copyOf(stages);
        without = List.copyOf(without);
    }

    /** Over all verdicts; empty where paths can't be told. */
    public Optional<Range> overall() {
        return byVerdict.values().stream().reduce(Range::with);
    }
}
