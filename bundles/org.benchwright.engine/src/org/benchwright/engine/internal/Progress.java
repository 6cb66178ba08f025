package org.benchwright.engine.internal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;

/**
 * How far the current action has come.
 *
 * @param opened   expectations whose first tone was given
 * @param closed   expectations whose last tone was given
 * @param seen     answers by expectation
 * @param released failed expectations that were released
 * @param entries  readings of a measurement or grid, answers to the items of a choice
 * @param owed     true while the reason of a repeat is owed
 * @param waiting  when a waiting time began
 */
record Progress(Set<String> opened, Set<String> closed, Map<String, Observation.Seen> seen, Set<String> released, List<Fact> entries,
        boolean owed, Optional<Stamp> waiting) {

    static final Progress NONE = new Progress(Set.of(), Set.of(), Map.of(), Set.of(), List.of(), false, Optional.empty());

    Progress opened(String check) {
        return new Progress(plus(opened, check), closed, seen, released, entries, owed, waiting);
    }

    Progress closed(String check) {
        return new Progress(opened, plus(closed, check), seen, released, entries, owed, waiting);
    }

    Progress answered(Observation.Seen answer) {
        Map<String, Observation.Seen> more = new LinkedHashMap<>(seen);
        more.put(answer.check(), answer);
        return new Progress(opened, closed, more, released, entries, owed, waiting);
    }

    Progress released(String check) {
        return new Progress(opened, closed, seen, plus(released, check), entries, owed, waiting);
    }

    Progress entered(Fact entry) {
        List<Fact> more = new ArrayList<>(entries);
        more.add(entry);
        return new Progress(opened, closed, seen, released, List.copyOf(more), owed, waiting);
    }

    Progress owing(boolean reason) {
        return new Progress(opened, closed, seen, released, entries, reason, waiting);
    }

    Progress waitingSince(Stamp began) {
        return new Progress(opened, closed, seen, released, entries, owed, Optional.of(began));
    }

    Progress notWaitingSinceLaterThan(Stamp now) {
        return waiting.filter(began -> began.age().compareTo(now.age()) > 0).isPresent() ? waitingSince(now) : this;
    }

    private static Set<String> plus(Set<String> set, String element) {
        Set<String> more = new HashSet<>(set);
        more.add(element);
        return more;
    }
}
