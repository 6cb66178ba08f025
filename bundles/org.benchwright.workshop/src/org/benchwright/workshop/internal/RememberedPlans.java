package org.benchwright.workshop.internal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Digest;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.plan.Plan;

/** The plans that were read last, with the texts that were found beside them. For any thread. */
final class RememberedPlans {

    private static final int MOST = 32;

    private final Map<List<Digest>, Plan> plans = new LinkedHashMap<>(MOST, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<List<Digest>, Plan> eldest) {
            return size() > MOST;
        }
    };

    synchronized Optional<Plan> of(Fact.Opened opened) {
        return Optional.ofNullable(plans.get(key(opened)));
    }

    synchronized void remember(Fact.Opened opened, Plan plan) {
        plans.put(key(opened), plan);
    }

    private static List<Digest> key(Fact.Opened opened) {
        return List.of(opened.plan(), opened.text());
    }
}
