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
 */
public record InstrumentSpec(String name, String title, Optional<Quantity> range, Optional<Quantity> maxUncertainty,
        BigDecimal coverage) {
}
