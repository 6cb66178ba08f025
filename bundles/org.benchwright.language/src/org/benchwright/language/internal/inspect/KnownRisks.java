package org.benchwright.language.internal.inspect;

import org.benchwright.evidence.RepeatRisk;
import org.benchwright.language.internal.Remembered;

import com.google.inject.Singleton;

/**
 * Risks that were computed already. Many measurements of many procedures are decided alike, and after a change of the text nearly all are
 * what they were; each integral takes its time. Keeps those that were asked for last.
 */
@Singleton
public final class KnownRisks {

    private static final int MOST = 1000;

    private final Remembered<RepeatRisk, Double> worst = new Remembered<>(MOST);

    /** The largest probability of accepting what does not conform, from 0 to 1. */
    double worst(RepeatRisk risk) {
        return worst.of(risk, risk::worstFalseAccept);
    }
}
