package org.benchwright.present.internal;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.core.Role;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.WatchStanding;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;

/** What a watch told, in words; a simulated unit is said to be one each time. */
final class WatchWords {

    /** A watch writes down what it sees at least every 10 minutes; one that has been quiet for longer than this has ended unheard. */
    static final Duration OVERDUE = Duration.ofMinutes(12);

    private WatchWords() {
    }

    static String of(WatchFact fact, Times times) {
        return (fact.by().simulated() ? Message.WATCH_SIMULATED.text() + " " : "") + told(fact, times);
    }

    private static String told(WatchFact fact, Times times) {
        if (fact instanceof WatchFact.Sees f) {
            return Message.WATCH_SEES.text(f.source());
        } else if (fact instanceof WatchFact.Held f) {
            String read = f.conditions().stream().map(WatchWords::range).collect(Collectors.joining());
            return Message.WATCH_HELD.text(Durations.words(whole(f.to().offset().minus(f.from().offset()))), f.samples()) + read;
        } else if (fact instanceof WatchFact.Changed f) {
            return f.lastGood().map(good -> Message.WATCH_CHANGED.text(times.words(good.received()), times.words(f.firstBad().received()), f.shows(),
                    f.bad())).orElseGet(() -> Message.WATCH_FOUND.text(times.words(f.firstBad().received()), f.shows(), f.bad()));
        } else if (fact instanceof WatchFact.ConditionCrossed f) {
            return (f.inside() ? Message.WATCH_INSIDE : Message.WATCH_OUTSIDE).text(Questions.spaced(f.condition()), f.value().toString(),
                    f.before().map(b -> times.words(b.received())).orElse("-"), times.words(f.after().received()));
        }
        WatchFact.Silent f = (WatchFact.Silent) fact;
        return Message.WATCH_SILENT.text(f.lastSeen().map(last -> times.words(last.received())).orElse("-"), f.why());
    }

    /** What was read of a condition, behind a comma. */
    static String range(WatchFact.ConditionRange range) {
        return ", " + Questions.spaced(range.condition()) + " " + range.low().value() + " .. " + range.high();
    }

    private static Duration whole(Duration time) {
        return Duration.ofSeconds(time.toSeconds());
    }

    static boolean needsSomebody(WatchStanding standing, Instant now) {
        return !standing.seeing() || Duration.between(standing.toldAt(), now).compareTo(OVERDUE) > 0;
    }

    /** What a watch has led the test to, as long as nobody has come since. */
    static Optional<String> left(TestRun run) {
        TestEvent last = run.events().get(run.events().size() - 1);
        if (run.onSoak() || last.actor().role() != Role.WATCH) {
            return Optional.empty();
        }
        return run.events().stream().map(TestEvent::body).filter(Derived.SoakEnded.class::isInstance).map(Derived.SoakEnded.class::cast)
                .reduce((before, after) -> after)
                .map(ended -> (ended.outcome() == Derived.Outcome.CONFORMS ? Message.WATCH_STATE_DONE : Message.WATCH_STATE_ENDED).text(ended.words()));
    }

    /** Where the watch stands, for the list of units. */
    static String standing(WatchStanding standing, Instant now) {
        String words;
        if (!standing.seeing()) {
            words = Message.WATCH_STATE_SILENT.text(standing.why());
        } else if (needsSomebody(standing, now)) {
            words = Message.WATCH_STATE_UNHEARD.text(Durations.words(Durations.cutDown(Duration.between(standing.toldAt(), now))));
        } else {
            words = standing.why().isEmpty() ? Message.WATCH_STATE_SEES.text() : Message.WATCH_STATE_DOUBTS.text(standing.why());
        }
        return (standing.simulated() ? Message.WATCH_SIMULATED.text() + " " : "") + words;
    }
}
