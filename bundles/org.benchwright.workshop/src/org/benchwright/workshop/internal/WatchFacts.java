package org.benchwright.workshop.internal;

import java.util.Map;
import java.util.Optional;

import org.benchwright.engine.event.Fact;
import org.benchwright.watch.Observed;
import org.benchwright.watch.Sample;

/** What a watch observed, as the engine takes it. */
public final class WatchFacts {

    private WatchFacts() {
    }

    /**
     * The fact.
     *
     * @param stage  the soak's name
     * @param source what is watched, in words
     */
    public static Fact.Watched of(Observed observed, String stage, Fact.Watcher by, String source) {
        if (observed instanceof Observed.Sees o) {
            return new Fact.WatchSees(stage, by, source, sampled(o.at()));
        } else if (observed instanceof Observed.Held o) {
            return new Fact.WatchHeld(stage, by, sampled(o.from()), sampled(o.to()), o.samples(), o.missed(),
                    o.conditions().entrySet().stream().sorted(Map.Entry.comparingByKey())
                            .map(e -> new Fact.ConditionRange(e.getKey(), e.getValue().low(), e.getValue().high())).toList());
        } else if (observed instanceof Observed.Changed o) {
            return new Fact.WatchChanged(stage, by, sampled(o.lastGood()), sampled(o.firstBad()), o.bad(), o.shows());
        } else if (observed instanceof Observed.Crossed o) {
            return new Fact.WatchCondition(stage, by, o.condition(), o.inside(), sampled(o.before()), sampled(o.after()), o.value());
        }
        Observed.Silent o = (Observed.Silent) observed;
        return new Fact.WatchSilent(stage, by, sampled(o.lastSeen()), o.why());
    }

    private static Optional<Fact.Sampled> sampled(Optional<Sample> sample) {
        return sample.map(WatchFacts::sampled);
    }

    private static Fact.Sampled sampled(Sample sample) {
        return new Fact.Sampled(sample.received(), sample.offset(), sample.source());
    }
}
