package org.benchwright.engine.plan;

import java.math.BigDecimal;
import java.util.Optional;

import org.benchwright.core.Quantity;

/**
 * An instrument as the procedure demands it; which one it is, and its uncertainty, is known at the bench only.
 *
 * @param name           its name in the procedure
 * @param title          what it is
 * @param range          the largest value it has to read, where stated
 * @param maxUncertainty the largest expanded uncertainty that the procedure tolerates, where stated
 * @param coverage       the coverage factor that {@code maxUncertainty} is meant at
 * @param means          what it reads or gives, such as {@code reads V dc}
 * @param pastDue        what happens with one whose calibration is past due; where nothing is said, a departure is noted
 */
public record InstrumentSpec(String name, String title, Optional<Quantity> range, Optional<Quantity> maxUncertainty,
        BigDecimal coverage, Optional<String> means, Optional<PastDue> pastDue) {

    /** What a procedure can choose to happen with an instrument past its calibration. */
    public enum PastDue {
        /** It is used, and an auditor decides about the departure. */
        DEPARTURE,
        /** It is not taken. */
        REFUSED
    }

    /** The coverage factor where nothing else is said: that for about 95 % (JCGM 100:2008, 6.3.3). */
    public static final BigDecimal USUAL_COVERAGE = BigDecimal.valueOf(2);

    /** An instrument of which nothing is said about what it reads or gives. */
    public InstrumentSpec(String name, String title, Optional<Quantity> range, Optional<Quantity> maxUncertainty, BigDecimal coverage) {
        this(name, title, range, maxUncertainty, coverage, Optional.empty(), Optional.empty());
    }

    /** Whether one past its due date is not taken. */
    public boolean refusedPastDue() {
        return pastDue.filter(PastDue.REFUSED::equals).isPresent();
    }
}
