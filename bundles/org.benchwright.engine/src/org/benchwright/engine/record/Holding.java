package org.benchwright.engine.record;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;

/** What holds of the events of a test: neither an entry that was struck as a slip, nor what had followed from it. */
public final class Holding {

    private Holding() {
    }

    /**
     * The events that hold.
     *
     * @param events all of a test, in order
     */
    public static List<TestEvent> of(List<TestEvent> events) {
        Set<Long> struck = new HashSet<>();
        events.stream().filter(event -> event.body() instanceof Fact.Struck).forEach(event -> struck.add(((Fact.Struck) event.body()).sequence()));
        List<TestEvent> holding = new ArrayList<>();
        boolean holds = true;
        for (TestEvent event : events) {
            // A derived event stands behind the fact that it follows from.
            holds = event.body() instanceof Fact ? !struck.contains(event.sequence()) : holds;
            if (holds) {
                holding.add(event);
            }
        }
        return holding;
    }
}
