package org.benchwright.engine.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;

/** What holds of the events of a test: neither an entry that was struck as a slip, nor what had followed from it. */
public final class Holding {

    private Holding() {
    }

    /**
     * The events that hold.
     *
     * @param events the first of a test, in order; a strike that comes behind them is not known yet
     */
    public static List<TestEvent> of(List<TestEvent> events) {
        Map<Long, Long> struck = new HashMap<>();
        events.stream().filter(event -> event.body() instanceof Fact.Struck)
                .forEach(event -> struck.put(((Fact.Struck) event.body()).sequence(), event.sequence()));
        List<TestEvent> holding = new ArrayList<>();
        boolean factHolds = true;
        long takenBackUpTo = 0;
        for (TestEvent event : events) {
            if (event.body() instanceof Fact) {
                factHolds = !struck.containsKey(event.sequence());
                takenBackUpTo = struck.getOrDefault(event.sequence(), takenBackUpTo);
                if (factHolds) {
                    holding.add(event);
                }
            } else if (factHolds && (event.sequence() > takenBackUpTo || deviation(event.body()))) {
                // A derived event stands behind the fact that it follows from.
                holding.add(event);
            }
        }
        return List.copyOf(holding);
    }

    /**
     * The test went on from a slip until that was struck, such as into a step whose hazards were read meanwhile. Of what followed from facts
     * that hold, only deviations stay: a stepped clock departs from the procedure whatever was struck, and an auditor may have decided on any.
     */
    private static boolean deviation(EventBody body) {
        return body instanceof Derived.DepartureNoted || body instanceof Derived.NonconformityNoted;
    }
}
