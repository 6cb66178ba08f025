package org.benchwright.present.internal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.benchwright.engine.Demand;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;

/** Which keys were answered in a test, and how often: found by folding it once more and asking before each fact what was asked. */
public final class AnsweredKeys {

    private AnsweredKeys() {
    }

    /** Times answered by key. */
    public static Map<String, Integer> of(TestRun run) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        List<TestEvent> events = run.events();
        int from = factAfter(events, 0);
        try {
            TestRun fold = TestRun.fold(run.plan(), events.subList(0, from));
            while (from < events.size()) {
                int to = factAfter(events, from);
                if (answers(events.get(from).body(), fold.demand())) {
                    counts.merge(fold.demand().key(), 1, Integer::sum);
                }
                fold = fold.with(events.subList(from, to));
                from = to;
            }
        } catch (DoesNotFollowException e) {
            throw new IllegalStateException("a test that was folded once does not fold again", e);
        }
        return counts;
    }

    /** The index of the first fact behind the one at {@code index}. */
    private static int factAfter(List<TestEvent> events, int index) {
        int next = index + 1;
        while (next < events.size() && events.get(next).body() instanceof Derived) {
            next++;
        }
        return next;
    }

    private static boolean answers(EventBody fact, Demand demand) {
        boolean beside = fact instanceof Fact.Noted || fact instanceof Fact.Struck || fact instanceof Fact.Abandoned
                || fact instanceof Fact.Interrupted || fact instanceof Fact.ClockChanged || fact instanceof Fact.TakenOver
                || fact instanceof Fact.Identified || fact instanceof Fact.Placed || fact instanceof Fact.Questioned;
        boolean byTime = demand instanceof Demand.AwaitTone || demand instanceof Demand.AwaitTime;
        return !beside && !byTime;
    }
}
