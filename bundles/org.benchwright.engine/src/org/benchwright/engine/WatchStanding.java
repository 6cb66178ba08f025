package org.benchwright.engine;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;

/**
 * What the watch of a soak told last.
 *
 * @param seeing    true if it saw the unit as it must be
 * @param lastSeen  when it last saw it, in whichever state
 * @param toldAt    when it told that
 * @param why       what keeps it from seeing; empty while it sees
 * @param source    what it looks at; empty where that is not known, since it never saw it
 * @param simulated true if there is no unit behind it
 */
public record WatchStanding(boolean seeing, Instant lastSeen, Instant toldAt, String why, String source, boolean simulated) {

    /** The standing in the soak that is under way; empty where none is, or nothing has watched it yet. */
    public static Optional<WatchStanding> of(TestRun run) {
        Optional<WatchStanding> standing = Optional.empty();
        for (TestEvent event : run.onSoak() ? run.holding() : List.<TestEvent>of()) {
            if (event.body() instanceof Derived.SoakBegun) {
                standing = Optional.empty();
            } else if (event.body() instanceof WatchFact told) {
                standing = Optional.of(after(standing, told, event.moment().instant()));
            }
        }
        return standing;
    }

    private static WatchStanding after(Optional<WatchStanding> before, WatchFact told, Instant at) {
        String source = before.map(WatchStanding::source).orElse("");
        boolean seeing = before.map(WatchStanding::seeing).orElse(false);
        boolean simulated = told.by().simulated();
        if (told instanceof WatchFact.Sees sees) {
            return new WatchStanding(true, sees.at().received(), at, "", sees.source(), simulated);
        } else if (told instanceof WatchFact.Held held) {
            return new WatchStanding(true, held.to().received(), at, "", source, simulated);
        } else if (told instanceof WatchFact.Silent silent) {
            return new WatchStanding(false, silent.lastSeen().map(WatchFact.Sampled::received).or(() -> before.map(WatchStanding::lastSeen))
                    .orElse(at), at, silent.why(), source, simulated);
        } else if (told instanceof WatchFact.Changed changed) {
            return new WatchStanding(seeing, changed.firstBad().received(), at, changed.shows(), source, simulated);
        }
        Instant seen = ((WatchFact.ConditionCrossed) told).after().received();
        return new WatchStanding(seeing, seen, at, before.map(WatchStanding::why).orElse(""), source, simulated);
    }
}
