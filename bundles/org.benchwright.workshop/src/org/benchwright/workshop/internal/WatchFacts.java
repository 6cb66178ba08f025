package org.benchwright.workshop.internal;

import java.util.Map;
import java.util.Optional;

import org.benchwright.engine.event.WatchFact;
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
    public static WatchFact of(Observed observed, String stage, WatchFact.Watcher by, String source) {
        if (observed instanceof Observed.Sees o) {
            return new WatchFact.Sees(stage, by, source, sampled(o.at()));
        } else if (observed instanceof Observed.Held o) {
            return new WatchFact.Held(stage, by, sampled(o.from()), sampled(o.to()), o.samples(), o.missed(),
                    o.conditions().entrySet().stream().sorted(Map.Entry.comparingByKey())
                            .map(e -> new WatchFact.ConditionRange(e.getKey(), e.getValue().low(), e.getValue().high())).toList());
        } else if (observed instanceof Observed.Changed o) {
            return new WatchFact.Changed(stage, by, sampled(o.lastGood()), sampled(o.firstBad()), o.bad(), o.shows());
        } else if (observed instanceof Observed.Crossed o) {
            return new WatchFact.ConditionCrossed(stage, by, o.condition(), o.inside(), sampled(o.before()), sampled(o.after()), o.value());
        }
        Observed.Silent o = (Observed.Silent) observed;
        return new WatchFact.Silent(stage, by, sampled(o.lastSeen()), o.why());
    }

    private static Optional<WatchFact.Sampled> sampled(Optional<Sample> sample) {
        return sample.map(WatchFacts::sampled);
    }

    private static WatchFact.Sampled sampled(Sample sample) {
        return new WatchFact.Sampled(sample.received(), sample.offset(), sample.source());
    }
}
