package org.benchwright.present.internal;

import java.time.Duration;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;

/**
 * What one watch saw again and again, entry after entry, with nothing between them but how much of the soak that witnessed.
 *
 * @param held   the entries, in order; none where there is no such thing
 * @param first  number of the first
 * @param last   number of the last
 * @param events how many events of the test they span; 1 where there are none
 */
record WatchRuns(List<WatchFact.Held> held, long first, long last, int events) {

    /** Those that begin at a place in the list of a test's events. */
    static WatchRuns at(List<TestEvent> events, int index, Set<Long> struck) {
        List<WatchFact.Held> held = new ArrayList<>();
        int end = index;
        for (int i = index; i < events.size(); i++) {
            TestEvent event = events.get(i);
            boolean next = event.body() instanceof WatchFact.Held f && !struck.contains(event.sequence())
                    && (held.isEmpty() || held.get(0).by().equals(f.by()) && held.get(0).stage().equals(f.stage()));
            if (next) {
                held.add((WatchFact.Held) event.body());
                end = i;
            } else if (held.isEmpty() || !(event.body() instanceof Derived.SoakWitnessed)) {
                break;
            }
        }
        return new WatchRuns(List.copyOf(held), events.get(index).sequence(), events.get(end).sequence(), end - index + 1);
    }

    /** All of them in one sentence. Its time is what they witnessed, not what lies between the first and the last sample. */
    String words(Times times) {
        WatchFact.Held begin = held.get(0);
        WatchFact.Held end = held.get(held.size() - 1);
        Duration time = held.stream().map(each -> each.to().offset().minus(each.from().offset())).reduce(Duration.ZERO, Duration::plus);
        Map<String, WatchFact.ConditionRange> read = new LinkedHashMap<>();
        held.stream().flatMap(each -> each.conditions().stream()).forEach(range -> read.merge(range.condition(), range, WatchRuns::both));
        return (begin.by().simulated() ? Message.WATCH_SIMULATED.text() + " " : "") + Message.WATCH_HELD_RUNS.text(times.words(begin.from().received()), times.words(end.to().received()),
                Durations.words(time.truncatedTo(ChronoUnit.SECONDS)), held.stream().mapToLong(WatchFact.Held::samples).sum(),
                String.valueOf(first), String.valueOf(last)) + read.values().stream().map(WatchWords::range).collect(Collectors.joining());
    }

    private static WatchFact.ConditionRange both(WatchFact.ConditionRange one, WatchFact.ConditionRange other) {
        return new WatchFact.ConditionRange(one.condition(), one.low().compareTo(other.low()) <= 0 ? one.low() : other.low(),
                one.high().compareTo(other.high()) >= 0 ? one.high() : other.high());
    }
}
