package org.benchwright.present.internal;

import java.util.Locale;

import org.benchwright.engine.JudgedValue;
import org.benchwright.evidence.ConformityDecision;
import org.benchwright.evidence.RepeatRisk;
import org.benchwright.report.TestReport.Certainty;

/** How sure a decision on a measured value is, in words. */
final class DecisionProof {

    private static final double MOST_SHOWN = 0.9999;

    private DecisionProof() {
    }

    /**
     * The certainty of a decision. Without an uncertainty nothing can be said of it.
     *
     * @param reading which reading it rests on, counted from 1
     */
    static Certainty of(JudgedValue judged, int reading) {
        ConformityDecision decision = ConformityDecision.decide(judged.value(), judged.limits(), judged.uncertainty(), judged.coverage(),
                judged.rule());
        String readings = EvidenceWords.SURE_READINGS.text(String.valueOf(reading), String.valueOf(Math.max(reading, judged.taken().most(judged.rule()))));
        if (judged.uncertainty().value().signum() <= 0) {
            String unknown = EvidenceWords.SURE_UNKNOWN.text();
            return new Certainty(decision.guardBand().toString(), unknown, unknown, readings);
        }
        RepeatRisk risk = RepeatRisk.of(judged.limits(), judged.uncertainty(), judged.coverage().doubleValue(), judged.rule(), judged.taken());
        return new Certainty(decision.guardBand().toString(), percent(decision.conformanceProbability()), percent(risk.worstFalseAccept()),
                readings);
    }

    /** A part as percent; nothing is rounded to certainty. */
    private static String percent(double part) {
        if (part > MOST_SHOWN) {
            return EvidenceWords.SURE_MOST.text();
        } else if (part < 1 - MOST_SHOWN) {
            return EvidenceWords.SURE_LEAST.text();
        }
        return EvidenceWords.SURE_PERCENT.text(String.format(Locale.ROOT, "%.2f", 100 * part));
    }
}
