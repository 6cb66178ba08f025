package org.benchwright.language.internal.proof;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

import org.benchwright.evidence.RepeatRisk;
import org.benchwright.language.proof.MeasurementProof.Risks;

/** Risks that were reckoned already: after a change of the text nearly all are what they were. Keeps those that were asked for last; any thread. */
public final class RiskMemory {

    private static final int MOST = 500;

    private final Map<Key, Risks> known = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Risks> eldest) {
            return size() > MOST;
        }
    };

    private record Key(RepeatRisk reading, boolean twoOutcomes) {
    }

    Risks of(RepeatRisk reading, boolean twoOutcomes, Supplier<Risks> reckoning) {
        Key key = new Key(reading, twoOutcomes);
        synchronized (known) {
            if (known.containsKey(key)) {
                return known.get(key);
            }
        }
        Risks risks = reckoning.get();
        synchronized (known) {
            known.put(key, risks);
        }
        return risks;
    }
}
