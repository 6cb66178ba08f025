package org.benchwright.language.internal.inspect;

import java.util.LinkedHashMap;
import java.util.Map;

import org.benchwright.evidence.RepeatRisk;

import com.google.inject.Singleton;

/**
 * Risks that were computed already. Many measurements of many procedures are decided alike, and after a change of the text nearly all are
 * what they were; each integral takes its time. Keeps those that were asked for last.
 */
@Singleton
public final class KnownRisks {

    private static final int MOST = 1000;

    private final Map<RepeatRisk, Double> worst = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<RepeatRisk, Double> eldest) {
            return size() > MOST;
        }
    };

    /** The largest probability of accepting what does not conform, from 0 to 1. */
    synchronized double worst(RepeatRisk risk) {
        Double known = worst.get(risk);
        if (known == null) {
            known = risk.worstFalseAccept();
            worst.put(risk, known);
        }
        return known;
    }
}
