package org.benchwright.language.internal.proof;

import java.util.function.Supplier;

import org.benchwright.evidence.RepeatRisk;
import org.benchwright.language.internal.Remembered;
import org.benchwright.language.proof.MeasurementProof.Risks;

/** Risks that were reckoned already: after a change of the text nearly all are what they were. Keeps those that were asked for last; any thread. */
public final class RiskMemory {

    private static final int MOST = 500;

    private final Remembered<Key, Risks> known = new Remembered<>(MOST);

    private record Key(RepeatRisk reading, boolean twoOutcomes) {
    }

    Risks of(RepeatRisk reading, boolean twoOutcomes, Supplier<Risks> reckoning) {
        return known.of(new Key(reading, twoOutcomes), reckoning);
    }
}
